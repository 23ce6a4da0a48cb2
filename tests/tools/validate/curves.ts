import { type BandCurve, OCTAVES_HZ } from '#acoustics/bands.ts'
import { capForDisplay, octaveLoss, SHOWN_LOSS_CAP_DB } from '#acoustics/curve.ts'
import { type Prediction, predictLoss } from '#acoustics/layered/predict.ts'
import { layerSchema } from '#assemblies/schema.ts'
import { toLayeredSystem } from '#assemblies/system.ts'
import table from '../../reference/acoustics/publishedCurves.json' with { type: 'json' }

export type CurveGroup = keyof typeof table.groups

/** One published curve beside the calculated one. */
export interface CurveComparison {
  readonly id: string
  readonly group: CurveGroup
  readonly description: string
  readonly source: string
  /** `seen` or `memory` */
  readonly status: string
  /** What print leaves open and we had to choose; null: nothing. */
  readonly assumed: string | null
  /** Over the printed octaves, dB: the calculation alone. */
  readonly rmsDb: number
  /** The same after the shift towards print. */
  readonly anchoredRmsDb: number
  /** Calculated minus published over OCTAVES_HZ, dB; null: not printed. */
  readonly errorsDb: readonly (number | null)[]
}

type Row = (typeof table.curves)[number]

function isGroup(text: string): text is CurveGroup {
  return Object.hasOwn(table.groups, text)
}

/** Calculated minus published by octave; null: not printed. */
function errorsOf(row: Row, lossDb: BandCurve): readonly (number | null)[] {
  const octaves = octaveLoss(capForDisplay(lossDb))
  return OCTAVES_HZ.map((hz, i) => {
    const printed = row.tlDb[row.octavesHz.indexOf(hz)]
    return printed === undefined ? null : octaves[i]! - Math.min(printed, SHOWN_LOSS_CAP_DB)
  })
}

function predictRow(row: Row): Prediction {
  const system = toLayeredSystem(row.layers.map((layer) => layerSchema.parse(layer)))
  if (!system.ok) throw new Error(`${row.id}: ${system.error.map(({ message }) => message).join(' ')}`)
  return predictLoss(system.value, { quality: 'plot', areaM2: row.areaM2 })
}

function rmsOf(errors: readonly (number | null)[]): number {
  return rootMeanSquare(errors.filter((error) => error !== null))
}

export function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length)
}

/**
 * Every published curve our layers can express against the calculation, without and with the shift towards print: an
 * octave is the energy mean of its three thirds, and both count up to 80 dB, as they are shown. What the file leaves out stands in it with the reason.
 */
export function compareCurves(): readonly CurveComparison[] {
  return table.curves.map((row) => {
    const { id, group, description, source, status } = row
    if (!isGroup(group)) throw new Error(`${id}: no group ${group}`)
    const { physicsLossDb, lossDb } = predictRow(row)
    const errorsDb = errorsOf(row, physicsLossDb)
    const anchoredRmsDb = rmsOf(errorsOf(row, lossDb))
    const assumed = row.assumed ?? null
    return { id, group, description, source, status, assumed, rmsDb: rmsOf(errorsDb), anchoredRmsDb, errorsDb }
  })
}
