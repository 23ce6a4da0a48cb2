import { type AnchorGroup, type AnchorPoint, anchorPoint } from '#acoustics/anchor/point.ts'
import { joinTouchingLeaves } from '#acoustics/layered/compile.ts'
import { LABORATORY_AREA_M2, predictLoss } from '#acoustics/layered/predict.ts'
import type { LayeredSystem } from '#acoustics/layered/system.ts'
import { rate, STC_IN_TENTHS } from '#acoustics/rating.ts'
import { expressRow } from '#assemblies/published/express.ts'
import { type PublishedRow, publishedRows } from '#assemblies/published/rows.ts'
import { toLayeredSystem } from '#assemblies/system.ts'

/** A published row with what the calculation alone says of it. */
export interface PredictedRow {
  readonly row: PublishedRow
  /** One for every choice the table's one value stands for. */
  readonly systems: readonly LayeredSystem[]
  /** STC in tenths of the calculation alone, of the lowest choice. */
  readonly physicsStc: number
  /** The mean over the choices; null: of no group that is anchored. */
  readonly place: AnchorPoint | null
}

/** Usual area of a window in a test opening, m2. @source ISO 10140-5, 1.25 m x 1.50 m, memory */
const WINDOW_AREA_M2 = 1.82

/** Area a row was tested at, m2. */
export function specimenArea(row: PublishedRow): number {
  return row.kind === 'window' ? WINDOW_AREA_M2 : LABORATORY_AREA_M2
}

function meanPlace(points: readonly AnchorPoint[]): AnchorPoint | null {
  const [first] = points
  if (first === undefined || points.some(({ group }) => group !== first.group)) return null
  const features = first.features.map((_, i) => points.reduce((sum, point) => sum + point.features[i]!, 0))
  return { ...first, features: features.map((sum) => sum / points.length) }
}

/** A row that can be written in our layers, with the calculation of it; null: it cannot. */
export function predictRow(row: PublishedRow): PredictedRow | null {
  const expressed = expressRow(row)
  if (!expressed.ok) return null
  const systems = expressed.value.flatMap((layers) => {
    const system = toLayeredSystem(layers)
    return system.ok ? [joinTouchingLeaves(system.value)] : []
  })
  const areaM2 = specimenArea(row)
  const stcs = systems.map((system) => {
    const { physicsLossDb } = predictLoss(system, { quality: 'plot', areaM2 })
    return rate(physicsLossDb, STC_IN_TENTHS).value
  })
  const points = systems.map(anchorPoint)
  const place = points.every((point) => point !== null) ? meanPlace(points) : null
  return { row, systems, physicsStc: Math.min(...stcs), place }
}

/** A row the correction can be tried on. */
export interface TrainingRow {
  readonly id: string
  readonly stc: number
  readonly group: AnchorGroup
  readonly place: { readonly features: readonly number[]; readonly kinds: readonly string[] }
  /** Published minus calculated, STC. */
  readonly residual: number
  /** False of a row that contradicts its own or other tables: predicted like the rest, but nothing leans on it. */
  readonly isLeanedOn: boolean
}

let predicted: readonly PredictedRow[] | undefined

/** Every published row that can be written in our layers, calculated once. */
export function predictedRows(): readonly PredictedRow[] {
  predicted ??= publishedRows().flatMap((row) => predictRow(row) ?? [])
  return predicted
}

/** Six decimals are more than any feature is known to, and keep the committed file the same on every machine. */
function rounded(value: number): number {
  return Number(value.toFixed(6))
}

/** The rows that were read in print, give an STC and belong to a group. */
export function trainingRows(): readonly TrainingRow[] {
  return predictedRows().flatMap(({ row, physicsStc, place }) => {
    if (place === null || row.stc === undefined || row.status !== 'seen') return []
    const { group, features, kinds } = place
    return {
      id: row.id,
      stc: row.stc,
      group,
      place: { features: features.map(rounded), kinds },
      residual: rounded(row.stc - physicsStc),
      isLeanedOn: row.outlier === undefined,
    }
  })
}
