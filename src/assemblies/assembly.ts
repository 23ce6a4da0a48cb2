import type { Layer } from '#assemblies/layer.ts'
import type { OpeningType } from '#assemblies/opening.ts'

export type SurfaceKind = 'wall' | 'ceiling' | 'floor'

/** What carries an assembly, or what it has to be fixed to. */
export type FixedTo = 'frame' | 'masonry' | 'frame-or-lining' | 'slab' | 'independent' | 'any'

/** Where a number or a build-up comes from, and whether that text was read. */
export interface Source {
  readonly text: string
  readonly status: 'seen' | 'memory' | 'common practice, no source' | 'derived'
}

/** Something that is built against a surface. */
export interface Assembly {
  readonly id: string
  /** As a builder would say it, one line. */
  readonly name: string
  /** Two or three words, for a mark on a chart. */
  readonly shortName: string
  readonly surface: SurfaceKind
  readonly fixedTo: FixedTo
  /** In order from the face it is built against to the room. */
  readonly layers: readonly Layer[]
  /** Wool is put in the open bays of a bare existing frame with this assembly. */
  readonly woolInOpenBays: boolean
  /** The bracket or channel needs bare framing: a lining has to come off first. */
  readonly needsBareFrame: boolean
  /** Weight that hangs on the existing joists, as opposed to new inner walls. */
  readonly loadsExistingJoists: boolean
  /** 1 cheapest to 5. @source common practice, no source */
  readonly costBand: 1 | 2 | 3 | 4 | 5
  /** Things that must not touch, and what goes wrong. */
  readonly cautions: readonly string[]
  /** Its joists go up into the bays of the existing frame; trusses with webs leave no room for them. */
  readonly nestedInBays?: boolean | undefined
  /** Where the numbers of each layer come from, in the order of the layers; the status is that of the weakest number. */
  readonly layerSources?: readonly Source[] | undefined
  readonly source: Source
}

/** A wall, ceiling or floor as it is built today, up to the bare face of its structure (without its lining). */
export interface ExistingConstruction {
  readonly id: string
  readonly name: string
  readonly surface: SurfaceKind
  readonly structure: 'wood-frame' | 'steel-frame' | 'truss' | 'masonry' | 'slab'
  /** In order from the far side to the bare face of the structure; an open frame ends in its cavity. */
  readonly layers: readonly Layer[]
  /** What openings of a vented space beyond hold its outer leaf to, dB in every band; absent: it is closed. */
  readonly ventLimitDb?: number | undefined
  readonly notes: readonly string[]
  /** Where the numbers of each layer come from, in the order of the layers; the status is that of the weakest number. */
  readonly layerSources?: readonly Source[] | undefined
  readonly source: Source
}

/** Every build-up a project can name, by id: the built-in ones, and its own. */
export interface Catalogue {
  readonly assemblies: ReadonlyMap<string, Assembly>
  /** Ids of assemblies that the user of the project built; absent: none. */
  readonly own?: ReadonlySet<string> | undefined
  readonly existing: ReadonlyMap<string, ExistingConstruction>
  /** What can stand in an opening. */
  readonly openingTypes: ReadonlyMap<string, OpeningType>
}

/** The choice of building nothing. */
export const AS_IS = 'as-is'
