import table from '#acoustics/data/materials.json' with { type: 'json' }
import type { KilogramsPerSquareMetre, Millimetres } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** A material a sheet can be made of. */
export type MaterialId = keyof typeof table.materials

/**
 * What a material is to the sound: `board` and `topping` are carried by a frame, `pane` sits in a seal, `sheet`
 * adds mass, `heavy` is masonry or concrete.
 */
export type MaterialClass = 'board' | 'topping' | 'pane' | 'sheet' | 'heavy'

/** Properties of one material; SI units. Every number has its source in data/materials.json. */
export interface Material {
  readonly name: string
  readonly class: MaterialClass
  readonly densityKgM3: number
  readonly youngPa: number
  readonly poisson: number
  readonly internalLoss: number
  readonly source: string
  readonly status: string
}

interface Entry extends Omit<Material, 'class'> {
  readonly class: string
  /** Thinner boards of the same name are made denser. */
  readonly thinner?: { readonly belowMm: Millimetres; readonly densityKgM3: number; readonly youngPa: number }
}

const ENTRIES: Readonly<Record<MaterialId, Entry>> = table.materials
const CLASSES: readonly string[] = ['board', 'topping', 'pane', 'sheet', 'heavy'] satisfies MaterialClass[]

function isMaterialClass(text: string): text is MaterialClass {
  return CLASSES.includes(text)
}

export function isMaterialId(text: string): text is MaterialId {
  return Object.hasOwn(ENTRIES, text)
}

/** A material as it is at any thickness, and below its thin limit. */
interface Known {
  readonly usual: Material
  readonly thin: Material
  readonly thinBelowMm: Millimetres
}

function knownMaterial({ thinner, class: kind, ...rest }: Entry): Known {
  const usual = { ...rest, class: isMaterialClass(kind) ? kind : 'board' } as const
  if (thinner === undefined) return { usual, thin: usual, thinBelowMm: 0 }
  const { belowMm, ...denser } = thinner
  return { usual, thin: { ...usual, ...denser }, thinBelowMm: belowMm }
}

const KNOWN: ReadonlyMap<string, Known> = new Map(
  Object.entries(ENTRIES).map(([id, entry]) => [id, knownMaterial(entry)]),
)

/** One line of the table of materials. */
export interface MaterialRow {
  readonly id: MaterialId
  readonly material: Material
  /** Holds for sheets thinner than this, mm; null: for every other thickness. */
  readonly belowMm: Millimetres | null
}

/** Every material as it is at any thickness, and where thin sheets differ as those are, in the order of the data. */
export function materialTable(): readonly MaterialRow[] {
  return [...KNOWN].flatMap(([id, { usual, thin, thinBelowMm }]): MaterialRow[] => {
    if (!isMaterialId(id)) return []
    const row = { id, material: usual, belowMm: null }
    return thinBelowMm > 0 ? [row, { id, material: thin, belowMm: thinBelowMm }] : [row]
  })
}

/** Properties of a material at a thickness in mm (type X board is denser when thin). */
export function materialAt(id: MaterialId, thicknessMm: Millimetres): Material {
  const known = KNOWN.get(id)
  invariant(known, `material ${id} is in data/materials.json`)
  return thicknessMm < known.thinBelowMm ? known.thin : known.usual
}

/** Surface mass of a sheet, kg/m2: as weighed where that is known, else density times thickness. */
export function sheetMass(
  id: MaterialId,
  thicknessMm: Millimetres,
  weighed?: KilogramsPerSquareMetre | undefined,
): KilogramsPerSquareMetre {
  return weighed ?? (materialAt(id, thicknessMm).densityKgM3 * thicknessMm) / 1000
}
