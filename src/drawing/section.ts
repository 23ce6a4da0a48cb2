import type { Layer } from '#assemblies/layer.ts'
import { type Band, bandsOf } from '#drawing/bands.ts'
import { hatchRuns } from '#drawing/hatch.ts'
import type { Mark, Place } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { createPlacer, type Placer } from '#drawing/place.ts'
import { dimensionMarks } from '#drawing/plan/dimension.ts'
import type { PlanStyle } from '#drawing/style.ts'
import { textMark, textWidth } from '#drawing/text.ts'
import { formatLength, formatThickness } from '#units/format.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

/** Where a section stands and what it is measured against. */
export interface SectionInput {
  /** Far side to room. */
  readonly layers: readonly Layer[]
  /** From the zero line to the room face of the last layer; what the ruler calls inches taken. */
  readonly depthMm: Millimetres
  /** Target place of the zero line. */
  readonly zeroX: number
  /** Target units per millimetre, the ruler's. */
  readonly scale: number
  readonly top: number
  readonly height: number
  readonly style: PlanStyle
  readonly units: LengthUnit
  /** Words at the far end, the zero line and the room end; absent: none. */
  readonly words?: { readonly far?: string; readonly zero?: string; readonly room?: string } | undefined
  /** Nothing further left is drawn; absent: all of the existing construction. */
  readonly left?: number | undefined
}

/** The build-up cut through, far side left and room right: layers hatched, gap and boards dimensioned underneath. */
export function sectionMarks(input: SectionInput): Mark[] {
  const faceX = input.zeroX + input.depthMm * input.scale
  const left = input.left ?? Number.NEGATIVE_INFINITY
  const bands = bandsOf(input.layers, faceX, input.scale)
    .map((band) => ({ ...band, t0: Math.max(band.t0, left) }))
    .filter(({ t0, t1 }) => t1 > t0)
  const placer = createPlacer(input.style.text * 2)
  return [
    ...bands.map((band) => ground(input, band)),
    ...hatches(input, bands, faceX),
    ...bands.filter(({ pattern }) => pattern !== 'gap').map((band) => outline(input, band)),
    ...zeroLine(input),
    ...words(input, bands, faceX),
    ...dimensions(input, bands, faceX, placer),
  ]
}

function box({ top, height }: SectionInput, { t0, t1 }: Band): Place[] {
  return [
    [t0, top],
    [t1, top],
    [t1, top + height],
    [t0, top + height],
  ]
}

function isExisting({ zeroX }: SectionInput, { t0, t1 }: Band): boolean {
  return (t0 + t1) / 2 < zeroX
}

function ground(input: SectionInput, band: Band): Mark {
  const soft = band.pattern === 'gap' || band.pattern === 'wool'
  const fill: ColourToken = soft
    ? band.pattern === 'gap'
      ? 'clear'
      : 'strip'
    : isExisting(input, band)
      ? 'solid'
      : 'clear'
  return { kind: 'polygon', role: 'section', rings: [box(input, band)], fill, stroke: null }
}

function hatches(input: SectionInput, bands: readonly Band[], faceX: number): Mark[] {
  const first = bands[0]
  if (!first) return []
  const { style, top, height } = input
  const runs = hatchRuns({
    layers: input.layers,
    rings: [
      [
        [0, first.t0],
        [height, first.t0],
        [height, faceX],
        [0, faceX],
      ],
    ],
    faceT: faceX,
    scale: input.scale,
    closest: style.closest * 1.6,
  }).map((run) => run.map((_, index) => (index % 2 === 0 ? run[index + 1]! : top + run[index - 1]!)))
  return runs.length > 0 ? [{ kind: 'lines', role: 'hatch', runs, stroke: { colour: 'hatch', width: style.hair } }] : []
}

function outline(input: SectionInput, band: Band): Mark {
  const colour = isExisting(input, band) ? 'soft' : 'ink'
  const stroke = { colour, width: input.style.medium } as const
  return { kind: 'polygon', role: 'section', rings: [box(input, band)], fill: null, stroke }
}

function zeroLine({ zeroX, top, height, style }: SectionInput): Mark[] {
  const over = style.text * 0.6
  const runs = [[zeroX, top - over, zeroX, top + height + over]]
  return [{ kind: 'lines', role: 'section', runs, stroke: { colour: 'accent', width: style.medium * 1.4 } }]
}

function words(
  { words: said, zeroX, top, height, style }: SectionInput,
  bands: readonly Band[],
  faceX: number,
): Mark[] {
  const marks: Mark[] = []
  const middle = top + height / 2 + style.text * 0.36
  const common = { size: style.text, role: 'section' } as const
  const left = bands[0]?.t0 ?? zeroX
  if (said?.far)
    marks.push(textMark(said.far, left - style.air * 2, middle, { ...common, anchor: 'end', colour: 'soft' }))
  if (said?.room) marks.push(textMark(said.room, faceX + style.air * 2, middle, { ...common, colour: 'soft' }))
  if (said?.zero) {
    const baseline = top - style.text * 0.5
    marks.push(textMark(said.zero, zeroX - style.air, baseline, { ...common, anchor: 'end', colour: 'accent' }))
  }
  return marks
}

/** One row for the layers in front of the zero line, like boards together where they are thin; one for all of them. */
function dimensions(input: SectionInput, bands: readonly Band[], faceX: number, placer: Placer): Mark[] {
  const { style, units, zeroX, top, height } = input
  const first = top + height + style.text * 2.1
  const row = (from: number, to: number, y: number, text: string, colour: ColourToken): Mark[] =>
    dimensionMarks({ from: [from, y], to: [to, y], text, colour, role: 'dimension', style, beyond: 'under' }, placer) ??
    []
  const built = bands
    .filter(({ t1 }) => t1 > zeroX + 1e-6)
    .map((band): Band => ({ ...band, t0: Math.max(band.t0, zeroX) }))
  const stretches = joinThin(built, (band) => {
    const text = formatThickness((band.t1 - band.t0) / input.scale, units)
    return { text, tight: textWidth(text, style.text, 400) + style.tick > band.t1 - band.t0 }
  })
  const marks = stretches.flatMap(({ from, to, text }) => row(from, to, first, text, 'soft'))
  if (stretches.length < 2) return marks
  return [...marks, ...row(zeroX, faceX, first + style.text * 3, formatLength(input.depthMm, units), 'accent')]
}

interface Measured {
  readonly from: number
  readonly to: number
  readonly text: string
}

/** Equal neighbours whose own numbers would not fit become one: 2 × 15.9 mm. */
function joinThin(bands: readonly Band[], say: (band: Band) => { text: string; tight: boolean }): Measured[] {
  const groups: { from: number; to: number; pattern: string; text: string; tight: boolean; count: number }[] = []
  for (const { pattern, t0, t1 } of bands) {
    const { text, tight } = say({ pattern, t0, t1 })
    const last = groups[groups.length - 1]
    if (last?.tight && last.pattern === pattern && last.text === text && pattern !== 'gap') {
      last.to = t1
      last.count++
    } else {
      groups.push({ from: t0, to: t1, pattern, text, tight, count: 1 })
    }
  }
  return groups.map(({ from, to, text, count }) => ({ from, to, text: count > 1 ? `${count} × ${text}` : text }))
}
