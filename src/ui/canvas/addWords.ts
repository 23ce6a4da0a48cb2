import type { FurnitureKind, OpeningKind } from '#analysis/room.ts'
import type { Adding } from '#state/view.ts'
import { unreachable } from '#units/result.ts'

/** A verb of the Add row. */
export interface AddVerb {
  readonly label: string
  readonly adding: Adding
}

export const OPENING_WORDS: Readonly<Record<OpeningKind, string>> = {
  door: 'Door',
  window: 'Window',
  'vehicle-door': 'Vehicle door',
  vent: 'Vent',
}

export const FURNITURE_WORDS: Readonly<Record<FurnitureKind, string>> = {
  'drum-kit': 'Drum kit',
  desk: 'Desk',
  piano: 'Piano',
  booth: 'Booth',
  other: 'Other piece',
}

/** What can be put into a room, in the order it is measured on site. */
export const ADD_GROUPS: readonly { readonly name: string; readonly verbs: readonly AddVerb[] }[] = [
  {
    name: 'In a wall',
    verbs: (['door', 'window', 'vehicle-door', 'vent'] as const).map((opening) => ({
      label: OPENING_WORDS[opening],
      adding: { kind: 'opening', opening },
    })),
  },
  {
    name: 'Standing or overhead',
    verbs: [
      { label: 'Column or pier', adding: { kind: 'obstacle' } },
      { label: 'Beam or duct', adding: { kind: 'drop' } },
      { label: 'Height', adding: { kind: 'height' } },
      { label: 'Ceiling part', adding: { kind: 'ceiling-part' } },
    ],
  },
  { name: 'For air, in this scheme', verbs: [{ label: 'Silencer box', adding: { kind: 'box' } }] },
  {
    name: 'To hold',
    verbs: (['drum-kit', 'desk', 'piano', 'booth', 'other'] as const).map((furniture) => ({
      label: FURNITURE_WORDS[furniture],
      adding: { kind: 'furniture', furniture },
    })),
  },
]

/** In the middle of a sentence: a door, a column or pier. */
export function addingName(adding: Adding): string {
  switch (adding.kind) {
    case 'opening':
      return OPENING_WORDS[adding.opening].toLowerCase()
    case 'furniture':
      return adding.furniture === 'other' ? 'piece' : FURNITURE_WORDS[adding.furniture].toLowerCase()
    case 'obstacle':
      return 'column or pier'
    case 'drop':
      return 'beam or duct'
    case 'height':
      return 'height point'
    case 'ceiling-part':
      return 'ceiling part'
    case 'box':
      return 'silencer box'
    default:
      return unreachable(adding)
  }
}

export function isSameAdding(a: Adding | null, b: Adding | null): boolean {
  if (a === null || b === null || a.kind !== b.kind) return a === b
  if (a.kind === 'opening' && b.kind === 'opening') return a.opening === b.opening
  return a.kind !== 'furniture' || b.kind !== 'furniture' || a.furniture === b.furniture
}

/** What the next press does with the Add tool. */
export function addSentence(adding: Adding | null, hasAnchor: boolean, isTouch: boolean): string {
  if (adding === null) return ''
  const name = addingName(adding)
  const [press, enter, leave] = isTouch ? ['Touch', '', ''] : ['Press', ' Enter: ', ' Escape: leave.']
  const byKey = (where: string) => (enter === '' ? '' : `${enter}${where}.`)
  switch (adding.kind) {
    case 'opening':
      return `${press} on a wall: the ${name} stands there.${byKey('in the middle of the wall')}${leave}`
    case 'height':
      return `${press} where the tape stood.${byKey('in the middle of the room')}${leave}`
    case 'furniture':
    case 'box':
      return `${press}: the ${name} stands there.${byKey('in the middle of the room')}${leave}`
    default:
      return hasAnchor
        ? `${press} the opposite corner of the ${name}.${leave}`
        : `${press} one corner of the ${name}, then the opposite one.${byKey('in the middle of the room')}${leave}`
  }
}

/** What the next press does with the Cut tool. */
export function cutSentence(hasAnchor: boolean, isTouch: boolean): string {
  const press = isTouch ? 'Touch' : 'Press'
  const keys = isTouch ? '' : ' Escape: leave.'
  return hasAnchor
    ? `${press} the other end of the new wall; it is extended to the walls it meets.${keys}`
    : `${press} one end of the new wall, then the other.${isTouch ? '' : ' Enter: across the middle of the room.'}${keys}`
}
