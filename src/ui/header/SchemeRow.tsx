import { type RefObject, useEffect, useRef } from 'react'
import { copyName, copyScheme } from '#state/commands/schemes.ts'
import { DrawerVerb } from '#ui/header/DrawerVerb.tsx'
import { useDocument, useScheme, useSession, useShownProject } from '#ui/session.ts'

/** The schemes side by side; the one shown is pressed, and another starts as its copy. */
export function SchemeRow() {
  const { view } = useSession()
  const schemes = useShownProject().schemes
  const proposal = useDocument((state) => state.project.proposal)
  const shown = useScheme()
  const add = useAddScheme()
  const chips = useRef<HTMLDivElement>(null)
  useKeptInSight(chips, shown.id)
  return (
    <fieldset className="scheme-row">
      <legend className="visually-hidden">Schemes</legend>
      <div className="schemes" ref={chips}>
        {schemes.map((scheme) => (
          <button
            key={scheme.id}
            type="button"
            className="scheme"
            data-long={scheme.name.length > SHORT_NAME}
            aria-pressed={scheme.id === shown.id}
            title={scheme.id === proposal ? `${scheme.name}: put forward to the client` : scheme.name}
            onClick={() => view.setState({ schemeId: scheme.id })}
          >
            {scheme.name}
            {scheme.id === proposal && <span className="scheme-mark"> · put forward</span>}
          </button>
        ))}
      </div>
      <button type="button" className="verb" onClick={add}>
        + scheme
      </button>
      <DrawerVerb drawer="scheme">Rename or delete</DrawerVerb>
    </fieldset>
  )
}

/** Names no longer than this are always shown whole. */
const SHORT_NAME = 12

/** The scheme shown is never half hidden at the end of its row; only the row moves, not the page. */
function useKeptInSight(chips: RefObject<HTMLDivElement | null>, shownId: string): void {
  useEffect(() => {
    const row = chips.current
    if (!row || shownId === '') return
    const reveal = () => {
      const chip = row.querySelector('[aria-pressed="true"]')
      if (!chip) return
      const inside = chip.getBoundingClientRect()
      const outside = row.getBoundingClientRect()
      if (inside.left < outside.left) row.scrollLeft += inside.left - outside.left - EDGE
      else if (inside.right > outside.right) row.scrollLeft += inside.right - outside.right + EDGE
    }
    const watch = new ResizeObserver(reveal)
    watch.observe(row)
    reveal()
    return () => watch.disconnect()
  }, [chips, shownId])
}

/** Room for a chip's focus ring, px. */
const EDGE = 4

/** Adds a copy of the scheme shown and shows it. */
function useAddScheme(): () => void {
  const { document, view } = useSession()
  const shown = useScheme()
  return () => {
    const outcome = document.run(copyScheme(shown.id, copyName(document.store.getState().project, shown)))
    const added = outcome.ok ? outcome.value.schemes.at(-1) : undefined
    if (added) view.setState({ schemeId: added.id })
  }
}
