import type { Opening, OpeningKind } from '#analysis/room.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import {
  type OpeningMade,
  type OpeningType,
  type PanePair,
  SEAL_CONDITIONS,
  type SealCondition,
} from '#assemblies/opening.ts'
import { canBeUndercut } from '#assemblies/openingSeals.ts'

type Types = Pick<Catalogue, 'openingTypes'>

/** Everything that can stand in an opening of this kind, in the catalogue's order. */
export function typesFor(kind: OpeningKind, { openingTypes }: Types): readonly OpeningType[] {
  return [...openingTypes.values()].filter(({ kinds }) => kinds.includes(kind))
}

/** Single doors: what can be one leaf of two. */
export function leafTypes({ openingTypes }: Types): readonly OpeningType[] {
  return [...openingTypes.values()].filter(isLeaf)
}

/** True for one door that opens. */
export function isLeaf({ kinds, seals, loss }: OpeningType): boolean {
  return kinds.includes('door') && seals !== 'none' && loss.kind !== 'pair'
}

/** How its seals can be; empty: nothing opens, so it has none. */
export function sealsFor({ seals }: OpeningType, kind: OpeningKind): readonly SealCondition[] {
  if (seals === 'none') return []
  return SEAL_CONDITIONS.filter(
    (seal) => (seal !== 'undercut' || canBeUndercut(kind)) && (seal !== 'worn' || seals === 'tested'),
  )
}

/** Another type in the same opening: its seals stay as they were said where it can have such ones. */
export function withType(made: OpeningMade | null, type: OpeningType, { kind, lobby }: Opening): OpeningMade {
  const seal = made && sealsFor(type, kind).includes(made.seal) ? made.seal : 'good'
  const second = made?.second && kind === 'door' && lobby && isLeaf(type) ? { second: made.second } : {}
  return { type: type.id, seal, ...second }
}

export function withSeal(made: OpeningMade, seal: SealCondition): OpeningMade {
  return { ...made, seal }
}

/** Another second door; null: the same again, or none where the type is one door. */
export function withSecond({ second, ...rest }: OpeningMade, type: OpeningType | null, kind: OpeningKind): OpeningMade {
  if (!type) return rest
  const seal = second && sealsFor(type, kind).includes(second.seal) ? second.seal : 'good'
  return { ...rest, second: { type: type.id, seal } }
}

/** The panes as chosen, else the type's usual ones; null: it has no two panes. */
export function panesOf({ panes }: OpeningMade, { loss }: OpeningType): PanePair | null {
  return loss.kind === 'panes' ? (panes ?? loss.usual) : null
}
