import { useRef } from 'react'
import { useSession } from '#ui/session.ts'
import { useShell, useTrace } from '#ui/shell.ts'
import { loadPicture } from '#ui/trace/loadPicture.ts'

interface PickProps {
  readonly label: string
  /** The underlay whose missing picture it stands in for; null: a new one. */
  readonly replaces: string | null
  readonly className: string
}

/** A verb that asks for a file. */
export function PickPicture({ label, replaces, className }: PickProps) {
  const session = useSession()
  const shell = useShell()
  const picker = useRef<HTMLInputElement>(null)
  const isBusy = useTrace((state) => state.busy !== null)
  return (
    <>
      <button type="button" className={className} disabled={isBusy} onClick={() => picker.current?.click()}>
        {label}
      </button>
      <input
        ref={picker}
        type="file"
        accept=".png,.jpg,.jpeg,.pdf,image/png,image/jpeg,application/pdf"
        aria-label={replaces === null ? 'Load a picture to trace' : 'Load the missing picture'}
        tabIndex={-1}
        hidden
        onChange={(event) => {
          const file = event.target.files?.[0]
          event.target.value = ''
          if (file) void loadPicture(session, shell, file, replaces)
        }}
      />
    </>
  )
}
