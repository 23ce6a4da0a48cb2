import { footprintOf } from '#analysis/furniture/footprint.ts'
import type { SilencerBox } from '#analysis/scheme.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { named, notNegative, onThePlan, positive } from '#state/commands/check.ts'
import { changedEntry, editScheme, idGiver, noThing } from '#state/commands/edit.ts'
import { footprintRefusal } from '#state/commands/rings.ts'
import type { Millimetres } from '#units/quantity.ts'
import { fail, ok } from '#units/result.ts'

/** What can be said of a silencer box that stands there already. */
export type BoxPatch = Partial<Omit<SilencerBox, 'id' | 'room'>>

/** Puts a silencer box into a room in one scheme. */
export function addBox(schemeId: string, box: Omit<SilencerBox, 'id'>): Command {
  return {
    label: `add ${box.name.trim()}`,
    apply: (project) =>
      editScheme(project, schemeId, (scheme) => {
        const added = upright({ ...box, id: idGiver(project)('box'), name: box.name.trim() })
        const refused = boxRefusal(project, added)
        return refused ? fail(refused) : ok({ ...scheme, boxes: [...(scheme.boxes ?? []), added] })
      }),
  }
}

export function changeBox(schemeId: string, id: string, patch: BoxPatch): Command {
  return editBox(schemeId, id, patch.angleDeg === undefined ? 'change silencer box' : 'turn silencer box', (box) => ({
    ...box,
    ...patch,
  }))
}

/** Moves a silencer box across the plan by a vector. */
export function moveBox(schemeId: string, id: string, dxMm: Millimetres, dyMm: Millimetres): Command {
  return editBox(schemeId, id, 'move silencer box', (box) => ({ ...box, xMm: box.xMm + dxMm, yMm: box.yMm + dyMm }))
}

export function deleteBox(schemeId: string, id: string): Command {
  return {
    label: 'delete silencer box',
    apply: (project) =>
      editScheme(project, schemeId, ({ boxes, ...rest }) => {
        const others = (boxes ?? []).filter((box) => box.id !== id)
        if (others.length === (boxes ?? []).length) return noThing('silencer box', id)
        return ok(others.length > 0 ? { ...rest, boxes: others } : rest)
      }),
  }
}

function editBox(schemeId: string, id: string, label: string, change: (box: SilencerBox) => SilencerBox): Command {
  return {
    label,
    apply: (project) =>
      editScheme(project, schemeId, (scheme) => {
        const changed = changedEntry(scheme.boxes ?? [], id, (box) => upright(change(box)))
        if (!changed) return noThing('silencer box', id)
        const refused = boxRefusal(project, changed.entry)
        return refused ? fail(refused) : ok({ ...scheme, boxes: changed.entries })
      }),
  }
}

/** An angle between -180 and 180 degrees says the same as any other. */
function upright(box: SilencerBox): SilencerBox {
  const { angleDeg } = box
  if (!Number.isFinite(angleDeg) || Math.abs(angleDeg) <= 180) return box
  return { ...box, angleDeg: angleDeg - 360 * Math.round(angleDeg / 360) }
}

function boxRefusal(project: Project, box: SilencerBox): Refusal | null {
  const name = `"${box.name}"`
  return (
    named('A silencer box', box.name) ??
    positive(`${name}: its width`, box.widthMm) ??
    positive(`${name}: its depth`, box.depthMm) ??
    positive(`${name}: its height`, box.heightMm) ??
    notNegative(`${name}: the height under it`, box.undersideMm) ??
    onThePlan(name, box.xMm, box.yMm) ??
    angle(name, box.angleDeg) ??
    placeRefusal(project, box)
  )
}

function angle(name: string, angleDeg: number): Refusal | null {
  if (Number.isFinite(angleDeg)) return null
  return { code: 'not-an-angle', message: `${name}: its angle has to be a number of degrees; it was kept as it was.` }
}

/** A refusal where a box is in no room, lies outside it, or serves a duct that is not there. */
function placeRefusal({ rooms }: Project, box: SilencerBox): Refusal | null {
  const room = rooms.find(({ id }) => id === box.room)
  if (!room) {
    const message = `"${box.name}" needs a room to be in, and there is no room "${box.room}" in this project.`
    return { code: 'no-room', message }
  }
  if (box.duct !== null && !room.ducts?.some(({ id }) => id === box.duct)) {
    const message = `"${box.name}" is to serve the duct "${box.duct}", which is not in ${room.name}; choose one that is, or none.`
    return { code: 'no-duct', message }
  }
  return footprintRefusal(
    room,
    box.name,
    footprintOf(box).map(([xMm, yMm]) => ({ xMm, yMm })),
  )
}
