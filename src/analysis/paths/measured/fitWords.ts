import { junctionOf } from '#analysis/paths/flanking/junctions.ts'
import type { JunctionFit } from '#analysis/paths/measured/junctionFits.ts'
import { listed } from '#analysis/paths/names.ts'
import type { JunctionClass } from '#analysis/target.ts'
import type { Decibels } from '#units/quantity.ts'

/** Classes this near each other cannot be told apart by a measurement on site. @source our own choice */
const ALIKE_DB: Decibels = 1
/** Further off than this no class explains what was measured. @source our own choice */
const NO_FIT_DB: Decibels = 6

/** Which junction class a measured baseline speaks for, as a full sentence; null without a fit. */
export function fitSentence(fits: readonly JunctionFit[]): string | null {
  const [best] = fits
  const worst = fits.at(-1)
  if (!best || !worst) return null
  if (best.rmsDb > NO_FIT_DB) {
    return `No junction fits the measured baseline: even ${quoted(best.junction)} is off by ${off(best.rmsDb)} on average. Check the measurement, and what the surfaces, openings and leaks are said to be.`
  }
  const alike = fits.filter(({ rmsDb }) => rmsDb - best.rmsDb <= ALIKE_DB)
  if (alike.length === fits.length) {
    return `Every junction fits the measured baseline about equally, off by ${range(alike)} on average: other paths decide in this room as it stands, so it cannot tell which one is there.`
  }
  const others = `${quoted(worst.junction)} would be off by ${off(worst.rmsDb)}.`
  if (alike.length > 1) {
    const names = listed(alike.map(({ junction }) => quoted(junction)))
    return `The measured baseline fits ${names} about equally, off by ${range(alike)} on average; ${others}`
  }
  return `The measured baseline fits ${quoted(best.junction)} best: off by ${off(best.rmsDb)} on average; ${others}`
}

function quoted(junction: JunctionClass): string {
  return `"${junctionOf(junction).name}"`
}

function range(fits: readonly JunctionFit[]): string {
  const [least, most] = [off(fits[0]?.rmsDb ?? 0), off(fits.at(-1)?.rmsDb ?? 0)]
  return least === most ? least : `${least.replace(' dB', '')} to ${most}`
}

/** 2.1 dB. */
function off(rmsDb: Decibels): string {
  return `${rmsDb.toFixed(1)} dB`
}
