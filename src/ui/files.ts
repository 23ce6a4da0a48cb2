import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import type { Session } from '#ui/session.ts'
import { type Notice, requestFit, type Shell } from '#ui/shell.ts'
import { placesOf } from '#ui/startSession.ts'

/** A project is a few kilobytes; more than this is some other file. */
const LARGEST_FILE_BYTES = 20_000_000
/** Problems listed before the rest is only counted. */
const LISTED_PROBLEMS = 5

/** Opens a project file; one that cannot be read is refused with a sentence and the open project stays. */
export async function openFile(session: Session, shell: Shell, file: File): Promise<void> {
  if (file.size > LARGEST_FILE_BYTES) {
    const size = Math.round(file.size / 1e6)
    tell(shell, refused(file.name, `It is ${size} MB large and no Leafgap project; the open project was kept.`))
    return
  }
  try {
    openText(session, shell, { name: file.name, text: await file.text() })
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : String(cause)
    tell(shell, refused(file.name, `The browser could not read it (${reason}); the open project was kept.`))
  }
}

/** Opens a project given as text; gives whether it was opened. */
export function openText(
  session: Session,
  shell: Shell,
  source: { readonly name: string; readonly text: string },
): boolean {
  const read = readProject(source.text, session.builtIn)
  if (!read.ok) {
    const lines = read.error.problems.slice(0, LISTED_PROBLEMS).map((problem) => problem.message)
    const notice = refused(source.name, `${read.error.message} The open project was kept.`)
    tell(shell, { ...notice, details: lines.length > 1 ? lines : [] })
    return false
  }
  openProject(session, shell, read.value.project, `open ${source.name}`)
  const { warnings } = read.value
  if (warnings.length > 0) tell(shell, { kind: 'told', text: `"${source.name}" was opened.`, details: warnings })
  return true
}

/** Puts a project on the page; one undo step brings the former one back. */
export function openProject(session: Session, shell: Shell, project: Project, label: string): void {
  session.document.open(project, label)
  session.view.setState({
    ...placesOf(project),
    surfaceIds: [],
    cornerId: null,
    tool: 'select',
    pointedAssembly: null,
    showsSheet: false,
  })
  shell.draw.clear()
  shell.state.setState({ drawer: null, notice: null, showsProjectVerbs: false })
  requestFit(shell)
}

/** Hands the project over as a file of its own. */
export function saveFile(project: Project): void {
  download(`${fileStem(project.name)}.leafgap.json`, writeProject(project), 'application/json')
}

/** A name that every file system takes. */
export function fileStem(name: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
  return plain.slice(0, 80) || 'room'
}

function download(name: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}

function refused(name: string, why: string): Notice {
  return { kind: 'refused', text: `"${name}" was not opened. ${why}`, details: [] }
}

function tell(shell: Shell, notice: Notice): void {
  shell.state.setState({ notice })
}
