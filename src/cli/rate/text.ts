import { NO_PUBLISHED } from '#analysis/published.ts'
import type { RatedSystem } from '#cli/rate/report.ts'
import { fixed } from '#units/format.ts'

const COLUMN = 6

/** One system for a terminal: ratings with their likely range, the curve band by band, dips and notes. */
export function rateText(system: RatedSystem): string {
  const { stc, stcNo8dbRule, plusMinus95, physicsStc, rw, c, ctr, c50, ctr50, oitc, published } = system
  const low = Math.floor(stc - plusMinus95)
  const high = Math.ceil(stc + plusMinus95)
  const without = stcNo8dbRule === stc ? '' : `; ${stcNo8dbRule} without the 8 dB rule`
  return [
    `${system.id}`,
    `  STC ${stc}, likely ${low}-${high}${without}; ${printWords(published)}`,
    `  calculated STC ${physicsStc}, before the shift towards published measurements`,
    `  Rw ${rw} (C ${c}; Ctr ${ctr}; C50-5000 ${c50}; Ctr,50-5000 ${ctr50}); OITC ${oitc}`,
    ...curveLines(system),
    ...system.resonances.map(({ hz, cause }) => `  dip at ${fixed(hz, 0)} Hz: ${cause}`),
    ...system.notes.map(({ text }) => `  note: ${text}`),
  ].join('\n')
}

function printWords(published: RatedSystem['published']): string {
  return published ? `published ${published.stc} (${published.source})` : NO_PUBLISHED
}

/** Three rows of figures, eleven bands at a time, so that they keep to 80 columns. */
function curveLines({ bandsHz, tlDb, tlSdDb }: RatedSystem): readonly string[] {
  const row = (name: string, cells: readonly string[]): string =>
    `  ${name.padEnd(COLUMN)}${cells.map((cell) => cell.padStart(COLUMN)).join('')}`
  return [0, 11].flatMap((from) => {
    const part = <Value>(values: readonly Value[]): readonly Value[] => values.slice(from, from + 11)
    return [
      row('Hz', part(bandsHz).map(String)),
      row(
        'TL dB',
        part(tlDb).map((value) => fixed(value, 1)),
      ),
      row(
        'SD dB',
        part(tlSdDb).map((value) => fixed(value, 1)),
      ),
    ]
  })
}
