import { isAssemblyFile } from '#project/assemblyFile.ts'
import { openAssemblyText } from '#ui/assemblyFiles.ts'
import { openText, refused, tell } from '#ui/files.ts'
import type { Session } from '#ui/session.ts'
import type { Shell } from '#ui/shell.ts'
import { loadPicture } from '#ui/trace/loadPicture.ts'
import { traceFileKind } from '#ui/trace/readPicture.ts'

/** A project is a few kilobytes and its pictures; more than this is some other file. @source our own choice */
const LARGEST_FILE_BYTES = 300_000_000

/**
 * Opens a file: a project takes the open one's place, a shared assembly comes into it, a picture or PDF lies under the plan.
 * One that cannot be read is refused with a sentence and the open project stays.
 * @param only  anything else is refused; absent: either may come
 */
export async function openFile(session: Session, shell: Shell, file: File, only?: 'assembly'): Promise<void> {
  if (only === undefined && (await isToTrace(file))) {
    await loadPicture(session, shell, file)
    return
  }
  if (file.size > LARGEST_FILE_BYTES) {
    const size = Math.round(file.size / 1e6)
    tell(shell, refused(file.name, `It is ${size} MB large and no Leafgap file; the open project was kept.`))
    return
  }
  try {
    const source = { name: file.name, text: await file.text() }
    if (only === 'assembly' || isAssemblyFile(source.text)) openAssemblyText(session, shell, source)
    else await openText(session, shell, source)
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : String(cause)
    tell(shell, refused(file.name, `The browser could not read it (${reason}); the open project was kept.`))
  }
}

/** A picture or a PDF by its first bytes, or one that only says so: loading it then says what is wrong. */
async function isToTrace(file: File): Promise<boolean> {
  if (file.type.startsWith('image/') || file.type === 'application/pdf') return true
  try {
    return (await traceFileKind(file)) !== 'neither'
  } catch {
    return false
  }
}
