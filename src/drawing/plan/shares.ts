import type { PathShare, ReceiverAnswer } from '#analysis/paths/answer.ts'
import { decisiveShare, shareWords, whereWords } from '#analysis/paths/answerWords.ts'
import { named } from '#analysis/paths/names.ts'
import type { Room } from '#analysis/room.ts'

/** What has no place of its own on a plan, or found none. */
export interface NamedShare {
  readonly label: string
  /** 0..1 */
  readonly share: number
}

/** By which way one receiver hears a room, as a plan shows it. */
export interface PlanShares {
  /** Bedroom window: shares of what is heard there at 125 Hz. */
  readonly heading: string
  /** Of walls and openings by id, each with its own gaps, holes and seals; 0..1. */
  readonly onPlan: ReadonlyMap<string, number>
  /** Ceiling, floor, what goes round and ducts, as far as they are worth a line; the greatest first. */
  readonly offPlan: readonly NamedShare[]
  /** All that is too small to be told by itself; with the others it makes 1. */
  readonly rest: number
}

/** Walls and openings that carry less are not marked, 0..1: a bar would say no more than the pen it is drawn with. */
const LEAST_ON_PLAN = 0.01
/** What is named beside the plan only carries at least so much, 0..1. */
const LEAST_NAMED = 0.05

/** What a plan shows of an answer; null: a path is not known, so no share is. */
export function planShares(answer: ReceiverAnswer, room: Room): PlanShares | null {
  if (answer.marginDb === null || answer.paths.length === 0) return null
  const drawn = new Set([...room.walls, ...room.openings].map(({ id }) => id))
  const onPlan = new Map<string, number>()
  const offPlan: NamedShare[] = []
  for (const [id, group] of grouped(answer.paths)) {
    const share = group.reduce((sum, path) => sum + decisiveShare(answer, path), 0)
    if (drawn.has(id) && share >= LEAST_ON_PLAN) onPlan.set(id, share)
    else if (!drawn.has(id) && share > LEAST_NAMED) offPlan.push({ label: labelOf(group), share })
  }
  const told = [...onPlan.values(), ...offPlan.map(({ share }) => share)].reduce((sum, share) => sum + share, 0)
  return {
    heading: `${answer.name}: shares of what is heard there${whereWords(answer)}`,
    onPlan,
    offPlan: offPlan.sort((one, other) => other.share - one.share),
    rest: Math.max(0, 1 - told),
  }
}

/** Gaps, holes and seals with what they are in; what goes round a surface and ducts by themselves. */
function grouped(paths: readonly PathShare[]): ReadonlyMap<string, readonly PathShare[]> {
  const groups = new Map<string, PathShare[]>()
  for (const share of paths) {
    const { kind, id, element } = share.path
    const key = kind === 'flanking' || kind === 'duct' ? id : element
    const group = groups.get(key)
    if (group) group.push(share)
    else groups.set(key, [share])
  }
  return groups
}

/** Of a surface with its gaps the surface's own name. */
function labelOf(group: readonly PathShare[]): string {
  const { path } = group.find(({ path: { id, element } }) => id === element) ?? group[0]!
  return path.label
}

/** Less than this is rounding, 0..1. */
const NOTHING_LEFT = 0.0005

/**
 * The words beside a plan: what its numbers are shares of, and what has no place on it.
 * @param unplaced  walls and openings whose numbers found no room
 */
export function shareKey({ heading, offPlan, rest }: PlanShares, unplaced: readonly NamedShare[]): string {
  const others = [...unplaced, ...offPlan].map(({ label, share }) => `${shareWords(share)} ${named(label)}`)
  const left = rest > NOTHING_LEFT ? [`${shareWords(rest)} all else`] : []
  const list = [...others, ...left].join(', ')
  const each = 'each wall and opening with its gaps and seals'
  return list === '' ? `${heading}, ${each}.` : `${heading}, ${each}; beside these ${list}.`
}
