import { renameProject } from '#state/commands/project.ts'
import { useTyped } from '#ui/fields/useTyped.ts'
import { useDocument, useSession } from '#ui/session.ts'
import { ok } from '#units/result.ts'

/** The project's name, changed where it stands. */
export function ProjectName() {
  const { document } = useSession()
  const name = useDocument((state) => state.project.name)
  const typed = useTyped({
    value: name,
    show: (text) => text,
    read: (text) => ok(text),
    isSame: (a, b) => a === b,
    commit: (text) => {
      const outcome = document.run(renameProject(text))
      return outcome.ok ? null : outcome.error.message
    },
    step: null,
  })
  return (
    <h1 className="project-name">
      <label className="visually-hidden" htmlFor="project-name">
        Project name
      </label>
      <input
        id="project-name"
        type="text"
        autoComplete="off"
        spellCheck={false}
        size={Math.min(34, Math.max(12, typed.text.length))}
        value={typed.text}
        aria-invalid={typed.error !== null}
        onChange={(event) => typed.change(event.target.value)}
        onBlur={typed.leave}
        onKeyDown={(event) => {
          typed.press(event)
          if (event.key === 'Enter' || event.key === 'Escape') event.currentTarget.blur()
        }}
      />
    </h1>
  )
}
