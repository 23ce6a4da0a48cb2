import type { Cavity, LayeredSystem, Leaf, Link } from '#acoustics/layered/system.ts'
import type { MaterialId } from '#acoustics/materials.ts'

/** A leaf of `count` equal sheets. */
export function leafOf(material: MaterialId, thicknessMm: number, count = 1): Leaf {
  return { sheets: Array.from({ length: count }, () => ({ material, thicknessMm })), dampedJoints: [] }
}

export function cavityOf(depthMm: number, fillMm: number, link: Link = { kind: 'none' }): Cavity {
  return { depthMm, fillMm, link }
}

/** A limp sheet of a surface mass in kg/m2. */
export function limpLeaf(surfaceMassKgM2: number): Leaf {
  return { sheets: [{ material: 'mass-loaded-vinyl', thicknessMm: 3, surfaceMassKgM2 }], dampedJoints: [] }
}

/** A framed wall as a published table tells it. */
export interface TabledWall {
  readonly leaf1: string
  readonly leaf2: string
  readonly framing: string
  readonly connection: string
  readonly depthMm: number
  readonly absorberMm: number
}

/** "2x15.9gypX": two 15.9 mm type X boards. */
function tabledLeaf(text: string): Leaf {
  const [, count, thickness, kind] = /^(\d)x([\d.]+)gyp([XR])$/.exec(text) ?? []
  if (count === undefined || thickness === undefined) throw new Error(`no leaf in "${text}"`)
  return leafOf(kind === 'X' ? 'gypsum-type-x' : 'gypsum-regular', Number(thickness), Number(count))
}

type StudKind = 'wood-stud' | 'light-steel-stud' | 'load-bearing-steel-stud'

function studKind(framing: string): StudKind {
  if (framing.startsWith('non-load-bearing')) return 'light-steel-stud'
  return framing.startsWith('load-bearing') ? 'load-bearing-steel-stud' : 'wood-stud'
}

function tabledLink(wall: TabledWall, studs: number, channels: number): Link {
  const held = { heldSide: 'far', channelSpacingMm: channels } as const
  switch (wall.connection) {
    case 'direct':
      return { kind: studKind(wall.framing), spacingMm: studs }
    case 'resilient channel':
      return { kind: 'resilient-channel', frame: studKind(wall.framing), studSpacingMm: studs, ...held }
    case 'staggered':
      return { kind: 'staggered-stud', spacingMm: studs }
    case 'staggered+resilient channel':
      return { kind: 'resilient-channel', frame: 'staggered-stud', ...held }
    case 'double+resilient channel':
      return { kind: 'resilient-channel', frame: 'separate-studs', ...held }
    case 'double':
      return { kind: 'none' }
    default:
      throw new Error(`no link in "${wall.connection}"`)
  }
}

/** Where the table puts an absorber that does not fill the cavity: in the studs, away from a channel on leaf1. */
function tabledFillSide(wall: TabledWall): 'far' | 'room' | 'both' {
  if (wall.connection.startsWith('double') && wall.absorberMm > wall.depthMm / 2) return 'both'
  return wall.connection.includes('channel') ? 'room' : 'far'
}

/** The wall with one choice of spacings, mm; leaf1 on the far side. */
export function tabledSystem(wall: TabledWall, studs: number, channels: number): LayeredSystem {
  const cavity = cavityOf(wall.depthMm, Math.min(wall.absorberMm, wall.depthMm), tabledLink(wall, studs, channels))
  return {
    leaves: [tabledLeaf(wall.leaf1), tabledLeaf(wall.leaf2)],
    cavities: [{ ...cavity, fillAgainst: tabledFillSide(wall) }],
  }
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

/** Sample standard deviation. */
export function standardDeviation(values: readonly number[]): number {
  const middle = mean(values)
  return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1))
}
