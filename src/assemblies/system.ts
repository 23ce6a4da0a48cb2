import type { Cavity, LayeredSystem, Leaf, LeafSheet, Link, StudRow } from '#acoustics/layered/system.ts'
import type { BoardLayer, CavityLayer, CavityLink, Layer } from '#assemblies/layer.ts'
import { type LayerProblem, numberProblems } from '#assemblies/layerProblems.ts'
import { type FloatingGap, groupLeaves, type LeafGroup, type LeafGroups } from '#assemblies/leaves.ts'
import { boardMass } from '#assemblies/mass.ts'
import { fail, ok, type Result } from '#units/result.ts'

/**
 * Layers as the leaves and cavities that sound meets. Parts without a leaf on both sides are left out (an open frame),
 * and what floats on a layer of unknown stiffness; `layerProblems` tells first whether a list has any, where that would be a mistake.
 */
export function toLayeredSystem(layers: readonly Layer[]): Result<LayeredSystem, readonly LayerProblem[]> {
  const problems = numberProblems(layers)
  if (problems.length > 0) return fail(problems)
  const groups = groupLeaves(layers)
  if (groups.leaves.length === 0) return fail([{ layer: 0, message: 'There is no board or slab in it.' }])
  return ok({
    leaves: groups.leaves.map(leafOf),
    cavities: groups.gaps.map((gap, index) =>
      gap.kind === 'cavity' ? cavityOf(gap, index, groups) : floatingCavity(gap),
    ),
  })
}

/** Fillers ride on the first board: they weigh, and stiffen nothing. */
function leafOf(group: LeafGroup): Leaf {
  const riding = group.fillers.reduce((sum, filler) => sum + filler.surfaceMassKgM2, 0)
  return {
    sheets: group.boards.map((board, index) => sheetOf(board, index === 0 ? riding : 0)),
    dampedJoints: group.dampedJoints.flatMap((isDamped, joint) => (isDamped ? [joint] : [])),
  }
}

function sheetOf(board: BoardLayer, ridingKgM2: number): LeafSheet {
  const { material, thicknessMm, surfaceMassKgM2 } = board
  if (ridingKgM2 === 0)
    return surfaceMassKgM2 === undefined ? { material, thicknessMm } : { material, thicknessMm, surfaceMassKgM2 }
  return { material, thicknessMm, surfaceMassKgM2: boardMass(board) + ridingKgM2 }
}

/** A mat all over is nothing but a spring; mounts stand in air. */
function floatingCavity({ depthMm, dynamicStiffnessMNm3, mountSpacingMm }: FloatingGap): Cavity {
  const link: Link =
    mountSpacingMm === null
      ? { kind: 'resilient-layer', dynamicStiffnessMNm3 }
      : { kind: 'floor-mounts', dynamicStiffnessMNm3, spacingMm: mountSpacingMm }
  return { depthMm, fillMm: 0, link }
}

function cavityOf(cavity: CavityLayer, index: number, groups: LeafGroups): Cavity {
  const fillMm = cavity.fill === undefined ? 0 : (cavity.fillMm ?? cavity.depthMm)
  const ribs = ribsOf(cavity, index, groups)
  return {
    depthMm: cavity.depthMm,
    fillMm,
    ...(cavity.fillAgainst === undefined || fillMm === 0 ? {} : { fillAgainst: cavity.fillAgainst }),
    link: cavity.link,
    ...(ribs === undefined ? {} : { ribs }),
  }
}

/**
 * Studs that stiffen one leaf only. A leaf that another cavity's studs tie to its neighbour has none of its own; where
 * the layers say nothing about frames, what is usual for the link holds.
 */
function ribsOf(cavity: CavityLayer, index: number, groups: LeafGroups): Cavity['ribs'] {
  if (isRigid(cavity.link)) return undefined
  const far = ribRow(cavity, 'far', cavityAt(groups, index - 1))
  const room = ribRow(cavity, 'room', cavityAt(groups, index + 1))
  if (far === undefined && room === undefined) return undefined
  return { ...(far === undefined ? {} : { far }), ...(room === undefined ? {} : { room }) }
}

function cavityAt({ gaps }: LeafGroups, index: number): CavityLayer | undefined {
  const gap = gaps[index]
  return gap?.kind === 'cavity' ? gap : undefined
}

/** @param beyond the cavity on the leaf's other side */
function ribRow(
  cavity: CavityLayer,
  side: 'far' | 'room',
  beyond: CavityLayer | undefined,
): StudRow | null | undefined {
  if (beyond !== undefined && isRigid(beyond.link)) return null
  const own = side === 'far' ? cavity.farFrame : cavity.frame
  if (own?.members !== undefined) return own.members
  if (cavity.frame !== undefined || cavity.farFrame !== undefined) return null
  const behind = side === 'far' ? beyond?.frame : beyond?.farFrame
  return behind?.members === undefined ? undefined : null
}

function isRigid(link: CavityLink): boolean {
  return link.kind === 'wood-stud' || link.kind === 'light-steel-stud' || link.kind === 'load-bearing-steel-stud'
}
