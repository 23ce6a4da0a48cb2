import { useEffect, useState } from 'react'
import { openFile } from '#ui/openFile.ts'
import { useSession } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'

/** Opens a file dropped anywhere on the page, and a picture that is pasted; true while a file hangs over the page. */
export function useFileDrop(): boolean {
  const session = useSession()
  const shell = useShell()
  const [isOver, setOver] = useState(false)
  useEffect(() => {
    const ended = new AbortController()
    const { signal } = ended
    const carriesFile = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false
    const over = (event: DragEvent) => {
      if (!carriesFile(event)) return
      event.preventDefault()
      setOver(true)
    }
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false)
    }
    const drop = (event: DragEvent) => {
      if (!carriesFile(event)) return
      event.preventDefault()
      setOver(false)
      const file = event.dataTransfer?.files[0]
      if (file) void openFile(session, shell, file)
    }
    const paste = (event: ClipboardEvent) => {
      const file = event.clipboardData?.files[0]
      if (!file || !isToPaste(file)) return
      event.preventDefault()
      void openFile(session, shell, file)
    }
    window.addEventListener('paste', paste, { signal })
    window.addEventListener('dragover', over, { signal })
    window.addEventListener('dragleave', leave, { signal })
    window.addEventListener('drop', drop, { signal })
    return () => ended.abort()
  }, [session, shell])
  return isOver
}

/** A pasted text belongs to the field it is pasted into; a picture can only be meant for the plan. */
function isToPaste(file: File): boolean {
  return file.type.startsWith('image/') || file.type === 'application/pdf'
}
