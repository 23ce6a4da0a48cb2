import materials from '#acoustics/data/materials.json' with { type: 'json' }
import { SOUND_SPEED } from '#acoustics/layered/air.ts'
import type { LeafSheet } from '#acoustics/layered/system.ts'
import { materialAt, sheetMass } from '#acoustics/materials.ts'

/** Mindlin's reduction of the shear area of a plate, 5/6 for a rectangular section. @source any plate textbook, memory */
const SHEAR_CORRECTION = 5 / 6

/** One kind of sheet in a leaf, SI units per square metre of leaf. */
export interface SheetModel {
  /** How many such sheets the leaf has. */
  readonly count: number
  /** kg/m2 */
  readonly mass: number
  /** Bending stiffness E h^3 / 12 (1 - nu^2), N m; real part at nominal E. */
  readonly bending: number
  /** Extensional stiffness E h, N/m. */
  readonly extension: number
  /** Rotary inertia rho h^3 / 12, kg. */
  readonly inertia: number
  /** Shear stiffness (5/6) G h, N/m. */
  readonly shear: number
  /** Loss factor is lossBase + lossPerRootHz / sqrt f. */
  readonly lossBase: number
  readonly lossPerRootHz: number
  readonly thickness: number
}

/** A sheet in SI units; material properties from data/materials.json. */
export function modelSheet(sheet: LeafSheet): SheetModel {
  const material = materialAt(sheet.material, sheet.thicknessMm)
  const h = sheet.thicknessMm / 1000
  const mass = sheetMass(sheet.material, sheet.thicknessMm, sheet.surfaceMassKgM2)
  const young = material.youngPa
  const { light, pane, heavyKgM2PerRootHz } = materials.edgeLoss
  const isHeavy = material.class === 'heavy'
  const edge = isHeavy ? 0 : material.class === 'pane' ? pane : light
  return {
    count: 1,
    mass,
    bending: (young * h ** 3) / (12 * (1 - material.poisson ** 2)),
    extension: young * h,
    inertia: (mass * h ** 2) / 12,
    shear: (SHEAR_CORRECTION * young * h) / (2 * (1 + material.poisson)),
    lossBase: material.internalLoss + edge,
    lossPerRootHz: isHeavy ? mass / heavyKgM2PerRootHz : 0,
    thickness: h,
  }
}

function isSameSheet(a: SheetModel, b: SheetModel): boolean {
  return a.mass === b.mass && a.bending === b.bending && a.lossBase === b.lossBase && a.thickness === b.thickness
}

/** Sheets of the same kind counted together: each costs the inner loop once. */
export function countAlike(sheets: readonly SheetModel[]): readonly SheetModel[] {
  const kinds: SheetModel[] = []
  for (const sheet of sheets) {
    const known = kinds.findIndex((kind) => isSameSheet(kind, sheet))
    if (known < 0) kinds.push(sheet)
    else kinds[known] = { ...sheet, count: kinds[known]!.count + 1 }
  }
  return kinds
}

/** Total loss factor of a sheet at a frequency in Hz. @source METHOD constants in data/materials.json */
export function lossAt(sheet: SheetModel, hz: number): number {
  return sheet.lossBase + sheet.lossPerRootHz / Math.sqrt(hz)
}

/**
 * Frequency above which a thin plate's bending waves run as fast as sound in air, Hz.
 * @source critical frequency c^2 / (2 pi) sqrt(m / B), any acoustics textbook, memory
 */
export function thinPlateCriticalHz({ mass, bending }: SheetModel): number {
  return (SOUND_SPEED ** 2 / (2 * Math.PI)) * Math.sqrt(mass / bending)
}
