import { FLOATING_STIFFNESS_MN_M3 } from '#acoustics/layered/check.ts'
import type { CavityLayer, CavityLink, FillerLayer, Layer } from '#assemblies/layer.ts'
import { BOARD_MATERIALS } from '#assemblies/schema.ts'
import type { KilogramsPerSquareMetre, Millimetres } from '#units/quantity.ts'

/** One thing wrong with a list of layers. */
export interface LayerProblem {
  /** Place in the list, counted from 1; 0: the list as a whole. */
  readonly layer: number
  /** A full sentence naming the layer. */
  readonly message: string
}

/** What a number of a layer may be. */
interface Span {
  readonly least: number
  readonly most: number
}

/** Thinnest film and thickest wall there is, mm; outside it somebody mistook the unit. @source common practice, no source */
const BOARD_MM: Span = { least: 0.05, most: 1500 }
/** Shallowest and deepest cavity worth asking about, mm. @source common practice, no source */
const CAVITY_MM: Span = { least: 0.5, most: 3000 }
/** Heaviest layer, kg/m2: a metre and a half of concrete weighs less; lightest film. @source common practice, no source */
const MASS_KG_M2: Span = { least: 0.01, most: 5000 }
/** Closest and widest spacing of studs, rows or clips, mm. @source common practice, no source */
export const SPACING_MM: Span = { least: 20, most: 5000 }

/**
 * Everything that keeps this list from being rated as it is written: impossible numbers, and an order in which boards
 * and cavities do not alternate. Empty: nothing.
 */
export function layerProblems(layers: readonly Layer[]): LayerProblem[] {
  if (layers.length === 0) return [{ layer: 0, message: 'There are no layers.' }]
  return [...numberProblems(layers), ...orderProblems(layers)].toSorted((a, b) => a.layer - b.layer)
}

/** The same for an assembly, which stands in front of a surface: that surface is the leaf on its far side. */
export function assemblyLayerProblems(layers: readonly Layer[]): LayerProblem[] {
  if (layers.length === 0) return [{ layer: 0, message: 'There are no layers.' }]
  return [...numberProblems(layers), ...orderProblems(layers, FACE)].toSorted((a, b) => a.layer - b.layer)
}

/** Stands for whatever an assembly is built against. */
const FACE: Layer = { kind: 'board', material: 'gypsum-regular', thicknessMm: 12.7 }

/** Impossible thicknesses, fills, spacings, weights and materials. */
export function numberProblems(layers: readonly Layer[]): LayerProblem[] {
  return layers.flatMap((layer, index) =>
    numberFaults(layer).map((fault) => ({ layer: index + 1, message: sentence(index, layer, fault) })),
  )
}

function sentence(index: number, layer: Layer, fault: string): string {
  return `Layer ${index + 1} (${layer.kind === 'damping-compound' ? 'damping compound' : layer.kind}): ${fault}.`
}

function numberFaults(layer: Layer): string[] {
  switch (layer.kind) {
    case 'board':
      return [
        ...(BOARD_MATERIALS.includes(layer.material) ? [] : [`the material "${layer.material}" is not known`]),
        ...lengthFaults('thickness', layer.thicknessMm, BOARD_MM),
        ...massFaults(layer.surfaceMassKgM2, false),
      ]
    case 'damping-compound':
      return layer.thicknessMm === undefined ? [] : lengthFaults('thickness', layer.thicknessMm, BOARD_MM)
    case 'filler':
      return [
        ...lengthFaults('thickness', layer.thicknessMm, BOARD_MM),
        ...massFaults(layer.surfaceMassKgM2, true),
        ...floatingFaults(layer),
      ]
    case 'cavity':
      return cavityFaults(layer)
  }
}

/** Stiffness and mounts belong to a layer a floor floats on. */
function floatingFaults(layer: FillerLayer): string[] {
  const { floats, dynamicStiffnessMNm3: stiffness, mountSpacingMm: spacing } = layer
  const [softest, stiffest] = FLOATING_STIFFNESS_MN_M3
  const faults: string[] = []
  if (!floats && (stiffness !== undefined || spacing !== undefined)) {
    faults.push('it gives a stiffness or mounts as if a floor floated on it, but none does')
  }
  if (stiffness !== undefined && !(stiffness >= softest && stiffness <= stiffest)) {
    faults.push(`the dynamic stiffness of ${stiffness} MN/m3 must be between ${softest} and ${stiffest} MN/m3`)
  }
  if (spacing !== undefined) faults.push(...lengthFaults('spacing of the mounts', spacing, SPACING_MM))
  return faults
}

function cavityFaults(layer: CavityLayer): string[] {
  const faults = [...lengthFaults('depth', layer.depthMm, CAVITY_MM), ...linkFaults(layer.link)]
  if (layer.fillMm === undefined) return faults
  if (layer.fill === undefined) return [...faults, 'it gives the depth of a fill but names no fill']
  if (layer.fillMm > 0 && layer.fillMm <= layer.depthMm) return faults
  return [...faults, `the fill is ${layer.fillMm} mm deep in a cavity of ${layer.depthMm} mm`]
}

function linkFaults(link: CavityLink): string[] {
  switch (link.kind) {
    case 'none':
      return []
    case 'wood-stud':
    case 'light-steel-stud':
    case 'load-bearing-steel-stud':
    case 'staggered-stud':
      return lengthFaults('stud spacing', link.spacingMm, SPACING_MM)
    case 'resilient-channel':
      return [
        ...lengthFaults('channel spacing', link.channelSpacingMm, SPACING_MM),
        ...(link.studSpacingMm === undefined ? [] : lengthFaults('stud spacing', link.studSpacingMm, SPACING_MM)),
      ]
    case 'sound-clip':
    case 'low-profile-clip':
      return [
        ...lengthFaults('row spacing', link.rowSpacingMm, SPACING_MM),
        ...lengthFaults('clip spacing', link.clipSpacingMm, SPACING_MM),
      ]
    case 'spring-hanger':
      return [
        ...lengthFaults('row spacing', link.rowSpacingMm, SPACING_MM),
        ...lengthFaults('hanger spacing', link.hangerSpacingMm, SPACING_MM),
      ]
  }
}

function massFaults(value: KilogramsPerSquareMetre | undefined, mayBeNone: boolean): string[] {
  if (value === undefined || (mayBeNone && value === 0)) return []
  return faults('weight', value, 'kg/m2', MASS_KG_M2)
}

/** What is wrong with a length, as the end of a sentence; empty: nothing. */
export function lengthFaults(what: string, value: Millimetres, span: Span): string[] {
  return faults(what, value, 'mm', span)
}

/** NaN and infinity fail the comparisons too. */
function faults(what: string, value: number, unit: string, { least, most }: Span): string[] {
  if (!(value > 0 && value <= most)) {
    return [`the ${what} of ${value} ${unit} must be above 0 and at most ${most} ${unit}`]
  }
  return value >= least ? [] : [`the ${what} of ${value} ${unit} is too small to be built; check its unit`]
}

/** Cavities without a leaf on both sides, and compound or filler without the boards it belongs to. */
function orderProblems(layers: readonly Layer[], face: Layer | null = null): LayerProblem[] {
  const all = face === null ? layers : [face, ...layers]
  return layers.flatMap((layer, index) => {
    const fault = orderFault(all, layer, index + all.length - layers.length)
    return fault === null ? [] : [{ layer: index + 1, message: sentence(index, layer, fault) }]
  })
}

function orderFault(layers: readonly Layer[], layer: Layer, index: number): string | null {
  const before = layers[index - 1]
  const after = layers[index + 1]
  switch (layer.kind) {
    case 'board':
      return null
    case 'cavity':
      if (before === undefined) return 'its link needs a leaf on both sides, and there is no board on its far side'
      if (before.kind === 'cavity') return 'it follows another cavity; give the two as one, or put a board between them'
      if (after === undefined) return 'its link needs a leaf on both sides, and there is no board on its room side'
      return null
    case 'damping-compound':
      return before?.kind === 'board' && after?.kind === 'board' ? null : 'it belongs between two boards'
    case 'filler':
      return touchesBoard(layers, index) ? null : 'it touches no board, so it forms no leaf'
  }
}

function touchesBoard(layers: readonly Layer[], index: number): boolean {
  return [-1, 1].some((step) => {
    for (let i = index + step; i >= 0 && i < layers.length; i += step) {
      if (layers[i]?.kind === 'board') return true
      if (layers[i]?.kind === 'cavity') return false
    }
    return false
  })
}
