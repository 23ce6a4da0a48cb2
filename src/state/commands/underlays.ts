import { LARGEST_PX, MOST_UNDERLAYS } from '#project/limits.ts'
import type { Project, Underlay } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { named, onThePlan, positive } from '#state/commands/check.ts'
import { changedEntry, idGiver } from '#state/commands/edit.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Lays a picture under the plan. */
export function addUnderlay(underlay: Omit<Underlay, 'id'>): Command {
  return {
    label: `add picture ${underlay.name.trim()}`,
    apply: (project) => {
      if (project.underlays.length >= MOST_UNDERLAYS) {
        const message = `A project keeps at most ${MOST_UNDERLAYS} pictures; delete one first.`
        return fail({ code: 'too-many', message })
      }
      const added = { ...underlay, id: idGiver(project)('underlay'), name: underlay.name.trim() }
      return checkedUnderlay({ ...project, underlays: [...project.underlays, added] }, added)
    },
  }
}

/** Moves, turns, scales, fades, locks, hides or renames a picture. */
export function changeUnderlay(id: string, patch: Partial<Omit<Underlay, 'id'>>): Command {
  return {
    label: 'change picture',
    apply: (project) => withUnderlay(project, id, (underlay) => ({ ...underlay, ...patch })),
  }
}

export function withUnderlay(
  project: Project,
  id: string,
  change: (underlay: Underlay) => Underlay,
): Result<Project, Refusal> {
  const changed = changedEntry(project.underlays, id, (underlay) => upright(change(underlay)))
  if (!changed) return noUnderlay(id)
  return checkedUnderlay({ ...project, underlays: changed.entries }, changed.entry)
}

export function noUnderlay(id: string): Result<never, Refusal> {
  return fail({ code: 'no-picture', message: `There is no picture "${id}" in this project any more.` })
}

function upright(underlay: Underlay): Underlay {
  const { angleDeg } = underlay
  if (!Number.isFinite(angleDeg) || Math.abs(angleDeg) <= 180) return underlay
  return { ...underlay, angleDeg: angleDeg - 360 * Math.round(angleDeg / 360) }
}

function checkedUnderlay(project: Project, underlay: Underlay): Result<Project, Refusal> {
  const name = `"${underlay.name}"`
  const refused =
    named('A picture', underlay.name) ??
    onThePlan(name, underlay.xMm, underlay.yMm) ??
    scale(underlay) ??
    (Number.isFinite(underlay.angleDeg) ? null : bad(`${name}: its angle has to be a number of degrees`)) ??
    (underlay.opacity >= 0 && underlay.opacity <= 1 ? null : bad(`${name}: it can be faded from 0 to 100 %`))
  return refused ? fail(refused) : ok(project)
}

function scale({ name, mmPerPx, widthPx, heightPx }: Underlay): Refusal | null {
  const most = Math.max(widthPx, heightPx)
  if (!(most <= LARGEST_PX && Math.min(widthPx, heightPx) >= 1)) {
    return bad(`"${name}" has to be between 1 and ${LARGEST_PX} pixels a side`)
  }
  return positive(`"${name}": the size of a pixel`, mmPerPx)
}

function bad(what: string): Refusal {
  return { code: 'bad-picture', message: `${what}; it was kept as it was.` }
}
