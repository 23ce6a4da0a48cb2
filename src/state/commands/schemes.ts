import { choiceFor, type Scheme } from '#analysis/scheme.ts'
import { LONGEST_NAME } from '#project/limits.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { freeId } from '#state/commands/edit.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Adds a scheme as a copy of another; it stands last. */
export function copyScheme(schemeId: string, name: string): Command {
  return {
    label: 'add scheme',
    apply: (project) =>
      withScheme(project, schemeId, (scheme) => {
        const refused = badName(project, name, null)
        if (refused) return fail(refused)
        const id = freeId(
          'scheme',
          project.schemes.map((other) => other.id),
        )
        return ok({ ...project, schemes: [...project.schemes, { ...scheme, id, name: name.trim() }] })
      }),
  }
}

export function renameScheme(schemeId: string, name: string): Command {
  return {
    label: 'rename scheme',
    apply: (project) =>
      withScheme(project, schemeId, (scheme, index) => {
        const refused = badName(project, name, schemeId)
        if (refused) return fail(refused)
        return ok({ ...project, schemes: project.schemes.with(index, { ...scheme, name: name.trim() }) })
      }),
  }
}

export function deleteScheme(schemeId: string): Command {
  return {
    label: 'delete scheme',
    apply: (project) =>
      withScheme(project, schemeId, (_, index) => {
        if (project.schemes.length === 1) {
          return fail({ code: 'last-scheme', message: 'A project keeps at least one scheme; this one stays.' })
        }
        const proposal = project.proposal === schemeId ? null : project.proposal
        return ok({ ...project, proposal, schemes: project.schemes.toSpliced(index, 1) })
      }),
  }
}

/** Puts one scheme forward to the client; null: none. */
export function proposeScheme(schemeId: string | null): Command {
  return {
    label: 'put forward',
    apply: (project) =>
      schemeId === null
        ? ok({ ...project, proposal: null })
        : withScheme(project, schemeId, (scheme) => ok({ ...project, proposal: scheme.id })),
  }
}

/** Takes an obstacle out of the room in one scheme, or leaves it standing. */
export function takeOutObstacle(schemeId: string, obstacleId: string, out: boolean): Command {
  return {
    label: out ? 'take obstacle out' : 'leave obstacle standing',
    apply: (project) =>
      withScheme(project, schemeId, (scheme, index) => {
        if (!project.rooms.some((room) => room.obstacles.some(({ id }) => id === obstacleId))) {
          return fail({
            code: 'no-obstacle',
            message: `There is no obstacle "${obstacleId}" in this project any more.`,
          })
        }
        const others = (scheme.takenOut ?? []).filter((id) => id !== obstacleId)
        const takenOut = out ? [...others, obstacleId] : others
        return ok({ ...project, schemes: project.schemes.with(index, { ...scheme, takenOut }) })
      }),
  }
}

/** Lays a new floor level at the slab's highest place, or lets it follow the old fall. */
export function layFloorLevel(schemeId: string, floorId: string, level: boolean): Command {
  return {
    label: level ? 'lay the floor level' : 'let the floor follow the fall',
    apply: (project) =>
      withScheme(project, schemeId, (scheme, index) => {
        if (!project.rooms.some((room) => room.floor.id === floorId)) {
          return fail({ code: 'no-surface', message: `There is no floor "${floorId}" in this project.` })
        }
        const choices = { ...scheme.choices, [floorId]: { ...choiceFor(scheme, floorId), laidLevel: level } }
        return ok({ ...project, schemes: project.schemes.with(index, { ...scheme, choices }) })
      }),
  }
}

/** Says which of its two walls' linings runs through at a corner; null: as is usual. */
export function runThrough(schemeId: string, cornerId: string, wallId: string | null): Command {
  return {
    label: 'say which lining runs through',
    apply: (project) =>
      withScheme(project, schemeId, (scheme, index) => {
        const { [cornerId]: _, ...others } = scheme.runsThrough ?? {}
        if (wallId !== null && !meetAt(project, cornerId, wallId)) {
          const message = 'Only one of the two walls that meet at a corner can run through there; choose one of them.'
          return fail({ code: 'not-at-the-corner', message })
        }
        const runsThrough = wallId === null ? others : { ...others, [cornerId]: wallId }
        return ok({ ...project, schemes: project.schemes.with(index, { ...scheme, runsThrough }) })
      }),
  }
}

function meetAt(project: Project, cornerId: string, wallId: string): boolean {
  return project.rooms.some((room) =>
    room.walls.some((wall) => wall.id === wallId && (wall.from === cornerId || wall.to === cornerId)),
  )
}

/** The letter a scheme is told apart by: A, B, C ... */
export function schemeLetter(index: number): string {
  return String.fromCharCode(65 + (index % 26))
}

/** A name for a new scheme: the next letter and what it was copied from. */
export function copyName(project: Project, scheme: Scheme): string {
  const letter = nextLetter(project)
  const plain = scheme.name.replace(/^[A-Z]\d? /, '')
  const wanted = `${letter} ${plain}, copy`.slice(0, LONGEST_NAME - 4)
  let name = wanted
  for (let n = 2; project.schemes.some((other) => other.name === name); n += 1) name = `${wanted} ${n}`
  return name
}

/** The letter after the furthest one that a scheme's name begins with. */
function nextLetter(project: Project): string {
  const used = project.schemes.map(({ name }, index) => /^([A-Z])\d? /.exec(name)?.[1] ?? schemeLetter(index))
  const furthest = Math.max(...used.map((letter) => letter.charCodeAt(0) - 65))
  return schemeLetter(furthest + 1)
}

function badName(project: Project, name: string, ownId: string | null): Refusal | null {
  const wanted = name.trim()
  if (wanted === '') return { code: 'no-name', message: 'A scheme needs a name.' }
  if (wanted.length > LONGEST_NAME) {
    return { code: 'long-name', message: `A name has at most ${LONGEST_NAME} letters; the former one was kept.` }
  }
  if (project.schemes.some((other) => other.id !== ownId && other.name === wanted)) {
    return { code: 'name-taken', message: `There is already a scheme called "${wanted}"; give this one another name.` }
  }
  return null
}

function withScheme(
  project: Project,
  schemeId: string,
  change: (scheme: Scheme, index: number) => Result<Project, Refusal>,
): Result<Project, Refusal> {
  const index = project.schemes.findIndex((scheme) => scheme.id === schemeId)
  const scheme = project.schemes[index]
  if (!scheme) return fail({ code: 'no-scheme', message: `There is no scheme "${schemeId}" in this project.` })
  return change(scheme, index)
}
