import type { Duct, Opening, Room } from '#analysis/room.ts'
import type { Leaks, Scheme, SilencerBox } from '#analysis/scheme.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import type { OpeningMade } from '#assemblies/opening.ts'
import { openingMadeProblem } from '#assemblies/openingProblems.ts'
import { type FileProblem, problem, repeatedIds } from '#project/problems.ts'
import type { Project } from '#project/project.ts'

/**
 * What a file can say wrong of openings, leaks, ducts and silencer boxes: names of nothing, and what cannot stand in an
 * opening of that kind.
 */
export function airProblems(project: Project, catalogue: Catalogue): FileProblem[] {
  const { rooms, schemes } = project
  const ducts = rooms.flatMap((room) => room.ducts ?? [])
  return [
    ...repeatedIds(ducts, 'the ducts'),
    ...rooms.flatMap((room, i) => [
      ...room.openings.flatMap((opening, k) =>
        madeProblem(opening.made, opening, `rooms[${i}].openings[${k}].made`, catalogue),
      ),
      ...(room.ducts ?? []).flatMap((duct, k) => ductProblems(project, room, duct, `rooms[${i}].ducts[${k}]`)),
    ]),
    ...schemes.flatMap((scheme, i) => [
      ...openingProblems(project, scheme, `schemes[${i}].openings`, catalogue),
      ...leaksProblems(project, scheme, `schemes[${i}].leaks`),
      ...namesOfNothing(Object.keys(scheme.ducts ?? {}), ducts, 'duct', `schemes[${i}].ducts`),
      ...repeatedIds(scheme.boxes ?? [], `schemes[${i}].boxes`),
      ...(scheme.boxes ?? []).flatMap((box, k) => boxProblems(project, box, `schemes[${i}].boxes[${k}]`)),
    ]),
  ]
}

function madeProblem(
  made: OpeningMade | undefined,
  { name, kind }: Opening,
  at: string,
  catalogue: Catalogue,
): FileProblem[] {
  const wrong = made && openingMadeProblem(made, { name, kind }, catalogue)
  if (!wrong) return []
  if (wrong.code === 'no-type') return [problem(`${at}.type`, `opening type "${made.type}" is not in the catalogue`)]
  if (wrong.code === 'other-kind') {
    return [problem(`${at}.type`, `opening type "${made.type}" does not stand in a ${kind.replace('-', ' ')}`)]
  }
  return [problem(at, wrong.text.replace(/\.$/, ''))]
}

function openingProblems({ rooms }: Project, { openings }: Scheme, at: string, catalogue: Catalogue): FileProblem[] {
  const there = rooms.flatMap((room) => room.openings)
  return Object.entries(openings ?? {}).flatMap(([id, made]) => {
    const named = there.filter((opening) => opening.id === id)
    if (named.length === 0) return namesOfNothing([id], there, 'opening', at)
    return named.flatMap((opening) => madeProblem(made, opening, `${at}.${id}`, catalogue)).slice(0, 1)
  })
}

function ductProblems({ receivers }: Project, room: Room, duct: Duct, at: string): FileProblem[] {
  const { name, surface, leadsTo } = duct
  const isThere = [...room.walls, room.ceiling, room.floor].some(({ id }) => id === surface)
  return [
    ...(isThere
      ? []
      : [problem(`${at}.surface`, `"${name}" goes through surface "${surface}", which is not in room "${room.id}"`)]),
    ...leadsTo.flatMap((id, k) =>
      receivers.some((receiver) => receiver.id === id)
        ? []
        : [problem(`${at}.leadsTo[${k}]`, `"${name}" leads to receiver "${id}", which is not there`)],
    ),
  ]
}

function leaksProblems({ rooms }: Project, { leaks }: Scheme, at: string): FileProblem[] {
  const surfaces = rooms.flatMap((room) => [...room.walls, room.ceiling, room.floor])
  const said: readonly (readonly [string, Leaks])[] = Object.entries(leaks ?? {})
  return [
    ...namesOfNothing(
      said.map(([id]) => id),
      surfaces,
      'surface',
      at,
    ),
    ...said.flatMap(([id, { holes }]) => repeatedIds(holes, `${at}.${id}.holes`)),
  ]
}

function boxProblems({ rooms }: Project, { name, room: roomId, duct }: SilencerBox, at: string): FileProblem[] {
  const hasRoom = rooms.some(({ id }) => id === roomId)
  const hasDuct = duct === null || rooms.some((room) => room.ducts?.some(({ id }) => id === duct))
  return [
    ...(hasRoom ? [] : [problem(`${at}.room`, `"${name}" stands in room "${roomId}", which is not there`)]),
    ...(hasDuct ? [] : [problem(`${at}.duct`, `"${name}" serves duct "${duct}", which is not there`)]),
  ]
}

function namesOfNothing(
  ids: readonly string[],
  there: readonly { readonly id: string }[],
  what: string,
  at: string,
): FileProblem[] {
  return ids
    .filter((id) => !there.some((thing) => thing.id === id))
    .map((id) => problem(`${at}.${id}`, `there is no ${what} "${id}" in this project`))
}
