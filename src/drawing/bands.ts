import { type BoardMaterial, type CavityLayer, type Layer, layerDepth } from '#assemblies/layer.ts'

/** Drafting sign of a material: boards close parallel lines, wool loops, masonry diagonals, foam zigzag. */
export type Pattern = 'gap' | 'board' | 'wood' | 'dense' | 'wool' | 'foam' | 'masonry' | 'concrete'

/** Part of a build-up's depth that carries one sign, t growing towards the room, target units. */
export interface Band {
  readonly pattern: Pattern
  readonly t0: number
  readonly t1: number
}

const BOARD_PATTERNS: Readonly<Record<BoardMaterial, Pattern>> = {
  'gypsum-type-x': 'board',
  'gypsum-regular': 'board',
  plywood: 'wood',
  osb: 'wood',
  glass: 'dense',
  'laminated-glass': 'dense',
  'steel-sheet': 'dense',
  concrete: 'concrete',
  'concrete-block-hollow': 'masonry',
  brick: 'masonry',
  'mass-loaded-vinyl': 'dense',
  'gypsum-concrete': 'concrete',
}

/** Names that a filler of foam goes by; other fillers (finishes, mats) are drawn as boards. */
const FOAM = /foam|eps|xps|polystyrene|polyiso|rigid insulation/i

/** The bands of a build-up, far side first, ending at `faceT`. */
export function bandsOf(layers: readonly Layer[], faceT: number, scale: number): Band[] {
  const bands: Band[] = []
  let t1 = faceT
  for (const layer of [...layers].reverse()) {
    const depth = layerDepth(layer) * scale
    if (!(depth > 0)) continue
    const t0 = t1 - depth
    bands.unshift(...layerBands(layer, t0, t1, scale))
    t1 = t0
  }
  return bands
}

function layerBands(layer: Layer, t0: number, t1: number, scale: number): Band[] {
  switch (layer.kind) {
    case 'board':
      return [{ pattern: BOARD_PATTERNS[layer.material], t0, t1 }]
    case 'damping-compound':
      return [{ pattern: 'dense', t0, t1 }]
    case 'filler':
      return [{ pattern: FOAM.test(layer.name) ? 'foam' : 'board', t0, t1 }]
    case 'cavity':
      return cavityBands(layer, t0, t1, scale)
  }
}

/** Wool stands in the frames: what the existing bay holds at the far side, the rest against the new boards. */
function cavityBands(layer: CavityLayer, t0: number, t1: number, scale: number): Band[] {
  const wool = layer.fill === undefined ? 0 : Math.min(layer.fillMm ?? layer.depthMm, layer.depthMm) * scale
  const far = Math.min(wool, (layer.farFrame?.depthMm ?? 0) * scale)
  const stops: [Pattern, number, number][] = [
    ['wool', t0, t0 + far],
    ['gap', t0 + far, t1 - (wool - far)],
    ['wool', t1 - (wool - far), t1],
  ]
  return stops.filter(([, from, to]) => to - from > 1e-9).map(([pattern, from, to]) => ({ pattern, t0: from, t1: to }))
}
