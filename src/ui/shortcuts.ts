/** Where a key works. */
export type ShortcutPlace = 'anywhere' | 'on the plan' | 'while adding' | 'while drawing'

export type ShortcutAction =
  | 'undo'
  | 'redo'
  | 'save'
  | 'keys'
  | 'leave'
  | 'next'
  | 'previous'
  | 'corner-or-wall'
  | 'delete'
  | 'turn'
  | 'menu'
  | 'put'
  | 'move-left'
  | 'move-right'
  | 'move-up'
  | 'move-down'
  | 'fit'
  | 'zoom-in'
  | 'zoom-out'
  | 'close-outline'
  | 'take-back'
  | 'aim-wall'

export interface Shortcut {
  /** Mod is Ctrl, or Cmd on a Mac; any-of modifiers are written Shift?, Alt?. */
  readonly keys: readonly string[]
  readonly label: string
  readonly place: ShortcutPlace
  readonly action: ShortcutAction
}

/** Every key Leafgap listens to: the page matches against this table and the Keys panel shows it. */
export const SHORTCUTS: readonly Shortcut[] = [
  { keys: ['Mod+Z'], label: 'Undo', place: 'anywhere', action: 'undo' },
  { keys: ['Mod+Shift+Z', 'Mod+Y'], label: 'Redo', place: 'anywhere', action: 'redo' },
  { keys: ['Mod+S'], label: 'Save the project as a file', place: 'anywhere', action: 'save' },
  { keys: ['?'], label: 'Show or hide this list', place: 'anywhere', action: 'keys' },
  {
    keys: ['Escape'],
    label: 'Let go: a drag, a drawing, an open list, a selection',
    place: 'anywhere',
    action: 'leave',
  },
  {
    keys: ['PageDown'],
    label: 'Next wall, then door, column, beam, height and piece; or next corner',
    place: 'on the plan',
    action: 'next',
  },
  { keys: ['PageUp'], label: 'Previous of these, or previous corner', place: 'on the plan', action: 'previous' },
  {
    keys: ['Enter'],
    label: 'From a wall to its first corner, and back',
    place: 'on the plan',
    action: 'corner-or-wall',
  },
  {
    keys: ['Shift?+Alt?+ArrowLeft'],
    label: 'Corner or thing: move left 10 mm (Shift 100, Alt 1). Wall: the previous one, with Shift as well',
    place: 'on the plan',
    action: 'move-left',
  },
  {
    keys: ['Shift?+Alt?+ArrowRight'],
    label: 'Corner or thing: move right. Wall: the next one, with Shift as well',
    place: 'on the plan',
    action: 'move-right',
  },
  {
    keys: ['Shift?+Alt?+ArrowUp'],
    label: 'Corner or thing: move up. Wall: the previous one, with Shift as well',
    place: 'on the plan',
    action: 'move-up',
  },
  {
    keys: ['Shift?+Alt?+ArrowDown'],
    label: 'Corner or thing: move down. Wall: the next one, with Shift as well',
    place: 'on the plan',
    action: 'move-down',
  },
  { keys: ['Delete'], label: 'Delete the selected corner or thing', place: 'on the plan', action: 'delete' },
  {
    keys: ['R', 'Shift+R'],
    label: 'Turn the selected piece by 15°, with Shift back',
    place: 'on the plan',
    action: 'turn',
  },
  {
    keys: ['ContextMenu', 'Shift+F10'],
    label: 'List what can be done with what is selected',
    place: 'on the plan',
    action: 'menu',
  },
  { keys: ['0'], label: 'Fit the room to the plan', place: 'on the plan', action: 'fit' },
  { keys: ['+', '='], label: 'Closer', place: 'on the plan', action: 'zoom-in' },
  { keys: ['-'], label: 'Further away', place: 'on the plan', action: 'zoom-out' },
  {
    keys: ['Enter'],
    label: 'Put the new thing in the middle of its wall or room, or cut the room across its middle',
    place: 'while adding',
    action: 'put',
  },
  { keys: ['Enter'], label: 'Close the outline', place: 'while drawing', action: 'close-outline' },
  { keys: ['Backspace'], label: 'Take the last corner back', place: 'while drawing', action: 'take-back' },
  {
    keys: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'],
    label: 'Aim the next wall, in the field of its direction or in an empty one of its length',
    place: 'while drawing',
    action: 'aim-wall',
  },
]

export type ShortcutHandlers = Partial<Record<ShortcutAction, (event: KeyboardEvent) => void>>

/** Runs what a key stands for in these places; true when something did. */
export function runShortcut(
  event: KeyboardEvent,
  places: readonly ShortcutPlace[],
  handlers: ShortcutHandlers,
): boolean {
  for (const { keys, place, action } of SHORTCUTS) {
    const handler = handlers[action]
    if (!handler || !places.includes(place) || !keys.some((spec) => matchesKey(event, spec))) continue
    event.preventDefault()
    handler(event)
    return true
  }
  return false
}

/** Whether a key press is what a table entry says; Mod is Ctrl or Cmd. */
export function matchesKey(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>,
  spec: string,
): boolean {
  const parts = spec === '+' ? ['+'] : spec.split('+')
  const key = parts.at(-1) ?? ''
  const isLetter = /^[a-z]$/i.test(key)
  const sameKey = isLetter ? event.key.toLowerCase() === key.toLowerCase() : event.key === key
  if (!sameKey || parts.includes('Mod') !== (event.ctrlKey || event.metaKey)) return false
  const signKey = key.length === 1 && !isLetter
  return (signKey || agrees(parts, 'Shift', event.shiftKey)) && agrees(parts, 'Alt', event.altKey)
}

function agrees(parts: readonly string[], modifier: string, isDown: boolean): boolean {
  return parts.includes(`${modifier}?`) || parts.includes(modifier) === isDown
}

/** A table entry as it is printed on keyboards: Ctrl Z, Cmd Z on a Mac. */
export function keyName(spec: string, isMac: boolean): string {
  if (spec === '+') return spec
  return spec
    .split('+')
    .filter((part) => part === '?' || !part.endsWith('?'))
    .map((part) => (part === 'Mod' ? (isMac ? 'Cmd' : 'Ctrl') : (KEY_WORDS[part] ?? part)))
    .join(' ')
}

const KEY_WORDS: Readonly<Record<string, string>> = {
  ArrowLeft: 'Left arrow',
  ArrowRight: 'Right arrow',
  ArrowUp: 'Up arrow',
  ArrowDown: 'Down arrow',
  PageUp: 'Page up',
  PageDown: 'Page down',
  ContextMenu: 'Menu',
}
