import type { Layer } from '#assemblies/layer.ts'
import { type Band, bandsOf, type Pattern } from '#drawing/bands.ts'
import { clipSpans, type LocalRings } from '#drawing/clipSpans.ts'

/**
 * Lines that say what a strip is made of, in the strip's own coordinates: s along the wall, t into the room, target
 * units. Every run lies inside the rings.
 */
export interface HatchInput {
  readonly layers: readonly Layer[]
  readonly rings: LocalRings
  /** Where the room face of the last layer stands. */
  readonly faceT: number
  /** Target units per millimetre. */
  readonly scale: number
  /** Lines closer than this would run together. */
  readonly closest: number
}

export type Runs = (readonly number[])[]

/** Layers at their own depths where the scale allows, else one sign for the whole strip. */
export function hatchRuns(input: HatchInput): Runs {
  const bands = bandsOf(input.layers, input.faceT, input.scale)
  const depth = bands.reduce((sum, band) => sum + band.t1 - band.t0, 0)
  const runs: Runs = []
  if (depth < 3.5 * input.closest) {
    const pattern = hatchFor(input.layers)
    fillBand({ pattern, t0: input.faceT - depth, t1: input.faceT }, input, runs)
    return runs
  }
  let lastLine = input.faceT
  for (const band of [...bands].reverse()) {
    fillBand(band, input, runs)
    if (lastLine - band.t0 < input.closest || band.pattern === 'gap') continue
    addLine(input.rings, band.t0, runs)
    lastLine = band.t0
  }
  return runs
}

/** The one sign that stands for a build-up: what most of its depth is, hollow depth aside. */
export function hatchFor(layers: readonly Layer[]): Pattern {
  const depths = new Map<Pattern, number>()
  for (const band of bandsOf(layers, 0, 1)) {
    if (band.pattern === 'gap') continue
    depths.set(band.pattern, (depths.get(band.pattern) ?? 0) + band.t1 - band.t0)
  }
  const deepest = [...depths].sort((a, b) => b[1] - a[1])[0]
  return deepest?.[0] ?? 'gap'
}

function fillBand(band: Band, { rings, closest }: HatchInput, runs: Runs): void {
  const depth = band.t1 - band.t0
  switch (band.pattern) {
    case 'gap':
      return
    case 'board':
      addLinesBetween(band, rings, Math.max(closest, depth / 2.5), runs)
      return
    case 'wood':
      addLinesBetween(band, rings, Math.max(closest, depth / 4), runs)
      return
    case 'dense':
      addLinesBetween(band, rings, closest * 0.6, runs)
      return
    case 'wool':
      if (depth >= 2.5 * closest) addLoops(band, rings, closest, runs)
      else addLinesBetween(band, rings, closest, runs)
      return
    case 'foam':
      addZigzag(band, rings, closest, runs)
      return
    case 'masonry':
      addDiagonals(band, rings, 4.5 * closest, runs)
      return
    case 'concrete':
      addDiagonals(band, rings, 7 * closest, runs)
      addDiagonals(band, rings, 7 * closest, runs, 1.6 * closest)
      return
  }
}

function addLine(rings: LocalRings, t: number, runs: Runs): void {
  for (const [s0, s1] of clipSpans(rings, 0, t, 1, 0)) runs.push([s0, t, s1, t])
}

function addLinesBetween(band: Band, rings: LocalRings, step: number, runs: Runs): void {
  const count = Math.floor((band.t1 - band.t0) / step - 0.5)
  for (let line = 1; line <= count; line++) {
    addLine(rings, band.t0 + ((band.t1 - band.t0) * line) / (count + 1), runs)
  }
}

function addDiagonals(band: Band, rings: LocalRings, spacing: number, runs: Runs, shift = 0): void {
  const [low, high] = extent(rings)
  const step = spacing * Math.SQRT2
  const depth = band.t1 - band.t0
  for (let s = Math.floor((low - depth) / step) * step + shift * Math.SQRT2; s < high; s += step) {
    for (const [from, to] of clipSpans(rings, s, band.t0, 1, 1)) {
      const start = Math.max(from, 0)
      const end = Math.min(to, depth)
      if (end - start > 1e-6) runs.push([s + start, band.t0 + start, s + end, band.t0 + end])
    }
  }
}

/** Points of one turn of the insulation sign: two loops bulging like a lying S, from -1 to 1 across. */
function turnOf(steps: number): (readonly [along: number, up: number])[] {
  return Array.from({ length: steps }, (_, step) => {
    const angle = (2 * Math.PI * step) / steps
    return [step / steps + 0.13 * Math.sin(2 * angle), -Math.cos(angle)] as const
  })
}

const SMALL_TURN = turnOf(14)
const LARGE_TURN = turnOf(40)

/** Loops run along the longer side of what they fill. */
function addLoops(band: Band, rings: LocalRings, closest: number, runs: Runs): void {
  const depth = band.t1 - band.t0
  for (const [s0, s1] of sharedSpans(rings, band)) {
    const lengthwise = s1 - s0 >= depth
    const [start, end, low, high] = lengthwise ? [s0, s1, band.t0, band.t1] : [band.t0, band.t1, s0, s1]
    const run = loopRun(start, end, low, high, closest)
    runs.push(lengthwise ? run : run.map((_, index) => run[index ^ 1]!))
  }
}

/** One wave of loops from start to end, between low and high. */
function loopRun(start: number, end: number, low: number, high: number, closest: number): number[] {
  const across = high - low
  const half = across / 2 - Math.min(0.06 * across, closest / 3)
  const turns = Math.max(1, Math.floor((end - start) / Math.max(0.95 * across, 4.5 * closest)))
  const pitch = (end - start) / turns
  const points = pitch > 14 * closest ? LARGE_TURN : SMALL_TURN
  const run: number[] = []
  for (let turn = 0; turn < turns; turn++) {
    for (const [along, up] of points) run.push(start + pitch * (turn + along), (low + high) / 2 + half * up)
  }
  run.push(end, (low + high) / 2 - half)
  return run
}

/** Runs along the longer side, as the loops do. */
function addZigzag(band: Band, rings: LocalRings, closest: number, runs: Runs): void {
  const depth = band.t1 - band.t0
  for (const [s0, s1] of sharedSpans(rings, band)) {
    const lengthwise = s1 - s0 >= depth
    const [start, end, low, high] = lengthwise ? [s0, s1, band.t0, band.t1] : [band.t0, band.t1, s0, s1]
    const turns = Math.max(1, Math.floor((end - start) / Math.max(high - low, 3 * closest)))
    const run: number[] = []
    for (let turn = 0; turn <= 2 * turns; turn++) {
      run.push(start + ((end - start) * turn) / (2 * turns), turn % 2 === 0 ? low : high)
    }
    runs.push(lengthwise ? run : run.map((_, index) => run[index ^ 1]!))
  }
}

/** Spans along the wall over which the whole depth of a band lies inside the rings. */
function sharedSpans(rings: LocalRings, band: Band): [number, number][] {
  const inset = (band.t1 - band.t0) * 1e-3
  const levels = [band.t0 + inset, (band.t0 + band.t1) / 2, band.t1 - inset]
  let spans: [number, number][] = [[Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]]
  for (const t of levels) {
    const here = clipSpans(rings, 0, t, 1, 0)
    const both: [number, number][] = []
    for (const [a0, a1] of spans) {
      for (const [b0, b1] of here) {
        if (Math.min(a1, b1) > Math.max(a0, b0)) both.push([Math.max(a0, b0), Math.min(a1, b1)])
      }
    }
    spans = both
  }
  return spans
}

function extent(rings: LocalRings): [number, number] {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const ring of rings) {
    for (const [s] of ring) {
      low = Math.min(low, s)
      high = Math.max(high, s)
    }
  }
  return low <= high ? [low, high] : [0, 0]
}
