import { useEffect, useState } from 'react'
import { z } from 'zod'
import type { Version } from '#state/autosave.ts'
import { openText } from '#ui/files.ts'
import { useSession } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'

const named = z.looseObject({ name: z.string() })

/** What this machine still keeps of earlier projects and hours; opening one is an undo step. */
export function EarlierVersions() {
  const session = useSession()
  const shell = useShell()
  const versions = useVersions()
  if (versions.length < 2) return null
  return (
    <>
      <h3>Earlier on this machine</h3>
      <ul className="samples">
        {versions.slice(1).map((version) => {
          const words = `${nameOf(version.text)}, ${dayAndHour(version.savedAt)}`
          return (
            <li key={version.savedAt}>
              <button
                type="button"
                className="action plain"
                onClick={() => void openText(session, shell, { name: words, text: version.text })}
              >
                {words}
              </button>
            </li>
          )
        })}
      </ul>
    </>
  )
}

/** Newest first; the newest is what is open. */
function useVersions(): readonly Version[] {
  const { autosave } = useShell()
  const [versions, setVersions] = useState<readonly Version[]>([])
  useEffect(() => {
    let isGone = false
    void autosave.flush().then(async () => {
      const found = await autosave.versions()
      if (!isGone) setVersions(found)
    })
    return () => {
      isGone = true
    }
  }, [autosave])
  return versions
}

function nameOf(text: string): string {
  try {
    return named.parse(JSON.parse(text)).name
  } catch {
    return 'a version that cannot be read'
  }
}

/** 2026-03-09 14:05, the same on every machine. */
function dayAndHour(savedAt: number): string {
  const at = new Date(savedAt)
  const two = (part: number) => String(part).padStart(2, '0')
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`
}
