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

/** Wool stands in the frames: in the new studs against the boards, in the existing bay at the far side. */
function cavityBands(layer: CavityLayer, t0: number, t1: number, scale: number): Band[] {
  const wool = layer.fill === undefined ? 0 : Math.min(layer.fillMm ?? layer.depthMm, layer.depthMm)
  const ownStuds = layer.link.kind === 'none' ? (layer.frame?.depthMm ?? 0) : 0
  const far = Math.min(wool - Math.min(wool, ownStuds), layer.farFrame?.depthMm ?? 0) * scale
  const near = wool * scale - far
  const stops: [Pattern, number, number][] = [
    ['wool', t0, t0 + far],
    ['gap', t0 + far, t1 - near],
    ['wool', t1 - near, t1],
  ]
  return stops.filter(([, from, to]) => to - from > 1e-9).map(([pattern, from, to]) => ({ pattern, t0: from, t1: to }))
}
