import type { MaterialId } from '#acoustics/materials.ts'
import type { KilogramsPerSquareMetre, Millimetres } from '#units/quantity.ts'

/** One board, pane, slab or sheet of a leaf. */
export interface LeafSheet {
  readonly material: MaterialId
  /** > 0 */
  readonly thicknessMm: Millimetres
  /** As weighed; absent: density times thickness. */
  readonly surfaceMassKgM2?: KilogramsPerSquareMetre | undefined
}

/** Sheets that move together: screwed, or with a damping compound in some joints. */
export interface Leaf {
  /** At least one, in order from the far side to the room. */
  readonly sheets: readonly LeafSheet[]
  /** Joint j lies between sheet j and sheet j + 1. */
  readonly dampedJoints: readonly number[]
}

/** What a channel, clip or hanger is fixed to. `staggered-stud`, `separate-studs`: the channel hangs on such a wall. */
export type FrameKind =
  | 'wood-stud'
  | 'light-steel-stud'
  | 'load-bearing-steel-stud'
  | 'masonry'
  | 'staggered-stud'
  | 'separate-studs'

/** Which neighbour of a cavity: the leaf on the far side or the one towards the room. */
export type Side = 'far' | 'room'

/** How the two leaves of a cavity are tied to each other; spacings in mm, > 0. */
export type Link =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'wood-stud' | 'light-steel-stud' | 'load-bearing-steel-stud' | 'staggered-stud'
      readonly spacingMm: Millimetres
    }
  | {
      readonly kind: 'resilient-channel'
      readonly frame: FrameKind
      readonly studSpacingMm?: Millimetres | undefined
      readonly channelSpacingMm: Millimetres
      /** The leaf that hangs on the channel; absent: the one towards the room. */
      readonly heldSide?: Side | undefined
    }
  | {
      readonly kind: 'sound-clip' | 'low-profile-clip'
      readonly frame: FrameKind
      readonly rowSpacingMm: Millimetres
      readonly clipSpacingMm: Millimetres
      readonly heldSide?: Side | undefined
    }
  | {
      readonly kind: 'spring-hanger'
      readonly frame: FrameKind
      readonly rowSpacingMm: Millimetres
      readonly hangerSpacingMm: Millimetres
      readonly heldSide?: Side | undefined
    }
  | {
      /** A mat or wool board all over, which a floor floats on: the spring between the leaves instead of air. */
      readonly kind: 'resilient-layer'
      /** MN/m3, > 0: stiffness of a square metre under vibration. */
      readonly dynamicStiffnessMNm3: number
    }
  | {
      /** Pads or springs a floor floats on, as far apart both ways, beside the air between the leaves. */
      readonly kind: 'floor-mounts'
      /** MN/m3, > 0: stiffness of the mounts under vibration, per square metre of floor. */
      readonly dynamicStiffnessMNm3: number
      readonly spacingMm: Millimetres
    }

/** A line of studs or joists a leaf is screwed to without touching the other leaf. */
export interface StudRow {
  readonly material: 'wood' | 'light-steel' | 'load-bearing-steel'
  readonly depthMm: Millimetres
  readonly spacingMm: Millimetres
}

/** Air, perhaps part filled with mineral wool, between two leaves. */
export interface Cavity {
  /** Board to board. Leaves closer than 1 mm are taken as one. */
  readonly depthMm: Millimetres
  /** 0 = empty; never more than the depth. */
  readonly fillMm: Millimetres
  /** Where a part fill lies; absent: against the leaf that carries the frame, or half at each in two rows. */
  readonly fillAgainst?: Side | 'both' | undefined
  readonly link: Link
  /** Own studs of either neighbour; absent: as usual for the link (data/links.json). `null`: none. */
  readonly ribs?: { readonly far?: StudRow | null | undefined; readonly room?: StudRow | null | undefined } | undefined
}

/** A whole construction, in order from the far side to the room; cavities[i] lies between leaves[i] and leaves[i + 1]. */
export interface LayeredSystem {
  readonly leaves: readonly Leaf[]
  readonly cavities: readonly Cavity[]
}

function otherSide(side: Side): Side {
  return side === 'far' ? 'room' : 'far'
}

/** The leaf a channel, clip or hanger holds. */
export function heldSideOf(link: Link): Side {
  return 'heldSide' in link ? (link.heldSide ?? 'room') : 'room'
}

function reverseLink(link: Link): Link {
  switch (link.kind) {
    case 'resilient-channel':
    case 'sound-clip':
    case 'low-profile-clip':
    case 'spring-hanger':
      return { ...link, heldSide: otherSide(heldSideOf(link)) }
    default:
      return link
  }
}

function reverseFill(side: Side | 'both' | undefined): Side | 'both' | undefined {
  return side === undefined || side === 'both' ? side : otherSide(side)
}

function reverseCavity(cavity: Cavity): Cavity {
  return {
    ...cavity,
    link: reverseLink(cavity.link),
    fillAgainst: reverseFill(cavity.fillAgainst),
    ribs: cavity.ribs && { far: cavity.ribs.room, room: cavity.ribs.far },
  }
}

function reverseLeaf(leaf: Leaf): Leaf {
  return {
    sheets: leaf.sheets.toReversed(),
    dampedJoints: leaf.dampedJoints.map((joint) => leaf.sheets.length - 2 - joint).toReversed(),
  }
}

/** The same construction seen from the other room. */
export function reverseSystem(system: LayeredSystem): LayeredSystem {
  return {
    leaves: system.leaves.map(reverseLeaf).toReversed(),
    cavities: system.cavities.map(reverseCavity).toReversed(),
  }
}
