import type { Catalogue } from '#assemblies/assembly.ts'
import type { LeafMade, OpeningKind, OpeningMade, OpeningType, PanePair } from '#assemblies/opening.ts'
import { canBeUndercut } from '#assemblies/openingSeals.ts'

/** Why something cannot be put into an opening. */
export interface OpeningProblem {
  readonly code: string
  readonly text: string
}

/** The opening it is to be put in. */
interface Asked {
  readonly name: string
  readonly kind: OpeningKind
}

/** Thinnest and thickest pane that can be asked for, mm. @source common practice, no source */
export const PANE_MM = { least: 2, most: 60 } as const
/** Least and most air between two panes, mm; METHOD section 7 holds for 10-400 mm. */
export const PANE_GAP_MM = { least: 4, most: 600 } as const

const KIND: Readonly<Record<OpeningKind, string>> = {
  door: 'a door',
  window: 'a window',
  'vehicle-door': 'a vehicle door',
  vent: 'a vent',
}

/** Why this cannot stand in that opening, as a full sentence; null: it can. */
export function openingMadeProblem(
  made: OpeningMade,
  asked: Asked,
  catalogue: Pick<Catalogue, 'openingTypes'>,
): OpeningProblem | null {
  const type = catalogue.openingTypes.get(made.type)
  return (
    leafProblem(made, asked, catalogue) ??
    (made.second ? secondProblem(made.second, type, asked, catalogue) : null) ??
    (made.panes ? panesProblem(made.panes, type, asked) : null)
  )
}

function leafProblem({ type: id, seal }: LeafMade, { name, kind }: Asked, catalogue: Pick<Catalogue, 'openingTypes'>) {
  const type = catalogue.openingTypes.get(id)
  if (!type) {
    return {
      code: 'no-type',
      text: `The catalogue has no opening type "${id}"; ${name} was kept as it was. Choose one of the list.`,
    }
  }
  if (!type.kinds.includes(kind)) {
    const text = `"${type.name}" does not stand in ${KIND[kind]}; ${name} was kept as it was. Choose another, or say that ${name} is something else.`
    return { code: 'other-kind', text }
  }
  if (seal !== 'undercut' || canBeUndercut(kind)) return null
  const text = `${name} is ${KIND[kind]} and has no gap over the floor: its seals can be good or worn.`
  return { code: 'no-undercut', text }
}

function secondProblem(
  second: LeafMade,
  first: OpeningType | undefined,
  asked: Asked,
  catalogue: Pick<Catalogue, 'openingTypes'>,
) {
  if (asked.kind !== 'door') {
    return { code: 'no-second', text: `${asked.name} is ${KIND[asked.kind]}: only a door has a second door behind it.` }
  }
  const type = catalogue.openingTypes.get(second.type)
  const isLeaf = (one: OpeningType | undefined) => one !== undefined && one.seals !== 'none'
  if (!isLeaf(first) || (type !== undefined && (!isLeaf(type) || type.loss.kind === 'pair'))) {
    const text = `The second door of ${asked.name} has to be one leaf behind another: choose a single door for it.`
    return { code: 'not-a-leaf', text }
  }
  return leafProblem(second, asked, catalogue)
}

function panesProblem({ outer, gapMm, inner }: PanePair, type: OpeningType | undefined, { name }: Asked) {
  if (type?.loss.kind !== 'panes') {
    return {
      code: 'no-panes',
      text: `What is chosen for ${name} has no two panes to set: choose a pair of panes first.`,
    }
  }
  const isPane = (mm: number) => mm >= PANE_MM.least && mm <= PANE_MM.most
  if (!isPane(outer.thicknessMm) || !isPane(inner.thicknessMm)) {
    return {
      code: 'pane',
      text: `A pane of ${name} has to be ${PANE_MM.least} to ${PANE_MM.most} mm thick; it was kept as it was.`,
    }
  }
  if (gapMm >= PANE_GAP_MM.least && gapMm <= PANE_GAP_MM.most) return null
  return {
    code: 'pane-gap',
    text: `The air between the panes of ${name} has to be ${PANE_GAP_MM.least} to ${PANE_GAP_MM.most} mm; it was kept as it was.`,
  }
}
