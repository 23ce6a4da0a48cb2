import { type KeyboardEvent, useEffect, useLayoutEffect, useRef, useState } from 'react'
import type { Place } from '#drawing/model.ts'
import type { ContextList, ContextVerb } from '#ui/canvas/contextVerbs.ts'
import type { Size } from '#ui/canvas/usePlanFrame.ts'

interface Props {
  readonly list: ContextList
  readonly at: Place
  /** The plan it stays inside. */
  readonly size: Size
  onChoose(verb: ContextVerb): void
  onLeave(): void
}

/** A short list of verbs for what lies under the hand. */
export function PlanMenu({ list, at, size, onChoose, onLeave }: Props) {
  const menu = useRef<HTMLDivElement>(null)
  const place = usePlaceInside(menu, at, size)
  useEffect(() => {
    menu.current?.querySelector('button')?.focus({ preventScroll: true })
  }, [])
  useLeaveOutside(menu, onLeave)
  const walk = (event: KeyboardEvent) => {
    const items = [...(menu.current?.querySelectorAll('button') ?? [])]
    const now = items.findIndex((item) => item.matches(':focus'))
    const next = nextItem(event.key, now, items.length)
    if (event.key === 'Escape' || event.key === 'Tab') onLeave()
    else if (next === null) return
    else items[next]?.focus({ preventScroll: true })
    event.preventDefault()
    event.nativeEvent.stopPropagation()
  }
  return (
    <div
      ref={menu}
      className="plan-menu"
      role="menu"
      tabIndex={-1}
      aria-label={`What can be done: ${list.title}`}
      style={{ left: place[0], top: place[1] }}
      onKeyDown={walk}
    >
      <p className="plan-menu-title" aria-hidden="true">
        {list.title}
      </p>
      {list.verbs.map((verb) => (
        <button
          key={verb.label}
          type="button"
          role="menuitem"
          tabIndex={-1}
          onClick={() => onChoose(verb)}
          onPointerMove={(event) => event.currentTarget.focus({ preventScroll: true })}
        >
          {verb.label}
        </button>
      ))}
    </div>
  )
}

function nextItem(key: string, now: number, count: number): number | null {
  switch (key) {
    case 'ArrowDown':
      return (now + 1) % count
    case 'ArrowUp':
      return (now - 1 + count) % count
    case 'Home':
      return 0
    case 'End':
      return count - 1
    default:
      return null
  }
}

/** Beside the hand, moved back where it would reach past the plan. */
function usePlaceInside(menu: { readonly current: HTMLDivElement | null }, [x, y]: Place, size: Size): Place {
  const [own, setOwn] = useState({ width: 0, height: 0 })
  useLayoutEffect(() => {
    if (menu.current) setOwn({ width: menu.current.offsetWidth, height: menu.current.offsetHeight })
  }, [menu])
  return [Math.max(4, Math.min(x, size.width - own.width - 4)), Math.max(4, Math.min(y, size.height - own.height - 4))]
}

/** A press anywhere else lets it go. */
function useLeaveOutside(menu: { readonly current: HTMLDivElement | null }, leave: () => void): void {
  const latest = useRef(leave)
  useEffect(() => {
    latest.current = leave
  })
  useEffect(() => {
    const listen = (event: PointerEvent) => {
      if (event.target instanceof Node && !menu.current?.contains(event.target)) latest.current()
    }
    window.addEventListener('pointerdown', listen, { capture: true })
    return () => window.removeEventListener('pointerdown', listen, { capture: true })
  }, [menu])
}
