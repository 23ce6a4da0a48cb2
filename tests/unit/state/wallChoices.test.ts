import { describe, expect, it } from 'vitest'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import type { Command } from '#state/command.ts'
import { deleteCorner, drawOutline, insertCorner } from '#state/commands/outline.ts'
import { assignAssembly } from '#state/commands/surfaces.ts'
import { rectangularProject } from '#ui/newProject.ts'

describe('choices when walls come and go', () => {
  it('an outline drawn anew is lined as its first wall was', () => {
    const drawn = applied(
      lined(),
      drawOutline('room-1', [
        [0, 0],
        [3000, 0],
        [0, 3000],
      ]),
    )
    expect(assemblies(drawn)).toEqual(['W07', 'W07', 'W07'])
    expect(readProject(writeProject(drawn), builtInCatalogue()).ok).toBe(true)
  })

  it('both halves of a split wall keep its lining; a wall taken out takes its choice along', () => {
    const project = lined()
    const first = project.rooms[0]?.walls[0]?.id ?? ''
    const split = applied(project, insertCorner('room-1', first, 1000))
    expect(assemblies(split)).toEqual(['W07', 'W07', undefined, undefined, undefined])
    const corner = split.rooms[0]?.corners[1]?.id ?? ''
    const mended = applied(split, deleteCorner('room-1', corner))
    expect(assemblies(mended)).toHaveLength(4)
    expect(readProject(writeProject(mended), builtInCatalogue()).ok).toBe(true)
  })
})

/** A rectangle whose first wall is lined. */
function lined(): Project {
  const project = rectangularProject('mm', { width: 4000, length: 3000, height: 2400 })
  if (!project.ok) throw new Error(project.error.message)
  const wall = project.value.rooms[0]?.walls[0]?.id ?? ''
  return applied(project.value, assignAssembly('scheme-1', [wall], builtInCatalogue().assemblies.get('W07') ?? null))
}

function applied(project: Project, command: Command): Project {
  const outcome = command.apply(project)
  if (!outcome.ok) throw new Error(outcome.error.message)
  return outcome.value
}

function assemblies(project: Project): (string | undefined)[] {
  return (project.rooms[0]?.walls ?? []).map((wall) => project.schemes[0]?.choices[wall.id]?.assembly)
}
