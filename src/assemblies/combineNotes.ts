import type { Assembly, ExistingConstruction } from '#assemblies/assembly.ts'
import { type BoardLayer, type CavityLayer, isUnknownFloat, type Layer } from '#assemblies/layer.ts'

/** True but doubtful, or a trap: stands beside the figure of the surface. */
export interface CombineNote {
  readonly code:
    | 'resilient-over-board'
    | 'needs-bare-bays'
    | 'lining-divides-cavity'
    | 'shallow-void'
    | 'vented-roof'
    | 'nested-under-trusses'
    | 'masonry-on-frame'
    | 'frame-on-masonry'
    | 'floating-floor'
    | 'compound-alone'
  /** A full sentence. */
  readonly text: string
}

interface Chosen {
  readonly existing: ExistingConstruction
  readonly lining: BoardLayer | null
  readonly assembly: Assembly | null
}

/** Voids shallower than this before a heavy wall make its bass weaker. @source common practice, no source */
const SHALLOW_VOID_MM = 50

const TEXT: Readonly<Record<CombineNote['code'], string>> = {
  'resilient-over-board':
    'Channel or clips over the existing board leave a shallow void between two boards, and the surface then performs about as if they were not there: remove the existing lining first.',
  'needs-bare-bays':
    'This assembly reaches into the bays of the existing frame, so it cannot be built over the existing lining: remove the lining, or choose another assembly.',
  'lining-divides-cavity':
    'The kept lining divides the cavity: three leaves with two shallow cavities let more bass through than two leaves with one deep cavity, so remove the lining first if it is not needed for fire.',
  'shallow-void':
    'The void behind the new boards is shallow, so its resonance falls into the bass and anything that stands proud can bridge it: choose a deeper assembly where bass matters.',
  'vented-roof':
    'The roof space is vented: sound that goes by its openings is counted as losing 23.5 dB there (22 to 25, from memory), and then only what the new ceiling itself stops.',
  'nested-under-trusses':
    'Roof trusses have webs in their bays, so joists cannot be nested between them: choose independent joists below, or clips.',
  'masonry-on-frame':
    'This assembly is made to stand before masonry, and the surface is a frame: choose one that is fixed to a frame.',
  'frame-on-masonry':
    'This assembly is fixed to a frame, and there is none here: choose one made for masonry or concrete, or one that stands on its own.',
  'floating-floor':
    'What floats is left out of the figure: nobody has said how stiff the layer is that it floats on. Footsteps and structure-borne sound, which it is built against, are not predicted.',
  'compound-alone':
    'Damping compound works between two boards, and here is only one: keep the lining, or fix a first board.',
}

/** What a designer must know about this combination, as sentences. */
export function combineNotes(chosen: Chosen): CombineNote[] {
  const { existing, assembly } = chosen
  const codes: CombineNote['code'][] = []
  if (assembly !== null) {
    codes.push(...fixingCodes(existing, assembly), ...cavityCodes(chosen, assembly))
    if (assembly.layers.some(isUnknownFloat)) codes.push('floating-floor')
  }
  if (existing.structure === 'truss' && existing.surface === 'ceiling') codes.push('vented-roof')
  return codes.map((code) => ({ code, text: TEXT[code] }))
}

/** Is there something to fix it to, and room for it? */
function fixingCodes(existing: ExistingConstruction, assembly: Assembly): CombineNote['code'][] {
  const codes: CombineNote['code'][] = []
  const isHeavy = existing.structure === 'masonry' || existing.structure === 'slab'
  if (assembly.nestedInBays && existing.structure === 'truss') codes.push('nested-under-trusses')
  if (!isHeavy && (assembly.fixedTo === 'masonry' || assembly.fixedTo === 'slab')) codes.push('masonry-on-frame')
  if (isHeavy && (assembly.fixedTo === 'frame' || assembly.fixedTo === 'frame-or-lining'))
    codes.push('frame-on-masonry')
  return codes
}

/** What the first layer meets: a kept lining, an open frame or masonry. */
function cavityCodes({ existing, lining }: Chosen, assembly: Assembly): CombineNote['code'][] {
  const first = assembly.layers[0]
  const face = lining ?? existing.layers.at(-1)
  if (first?.kind === 'damping-compound') return face?.kind === 'board' ? [] : ['compound-alone']
  if (first?.kind !== 'cavity') return []
  if (lining !== null && assembly.needsBareFrame) {
    return hangsInFront(first) ? ['resilient-over-board'] : ['needs-bare-bays']
  }
  const codes: CombineNote['code'][] = []
  if (lining !== null && existing.layers.some((layer) => layer.kind === 'cavity')) codes.push('lining-divides-cavity')
  if (isShallow(first, face)) codes.push('shallow-void')
  return codes
}

/** Channel and clips go on a face; low-profile clips, hangers, staggered studs and nested joists go into the bays. */
function hangsInFront(cavity: CavityLayer): boolean {
  return cavity.link.kind === 'resilient-channel' || cavity.link.kind === 'sound-clip'
}

function isShallow(cavity: CavityLayer, face: Layer | undefined): boolean {
  return cavity.link.kind === 'low-profile-clip' || (face?.kind !== 'cavity' && cavity.depthMm < SHALLOW_VOID_MM)
}
