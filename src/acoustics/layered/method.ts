/** How finely the curve is computed: while something is dragged, or for the curve that is shown. */
export type Quality = 'drag' | 'plot'

/**
 * Choices inside the method. The product always uses METHOD; tests use others to measure what a choice is worth.
 */
export interface MethodOptions {
  /** Studs bend: without it they are dead weight. 55 joist floors with channel: mean error +2.3 without, +0.4 with (STC). */
  readonly studsBend: boolean
  /** Plates tie the leaves through a compliance; without it through a fitted share of power. Staggered rows: SD 3.1 to 1.2. */
  readonly platesYield: boolean
  /** Gauss nodes on each side of a coincidence angle, times what the construction needs (detail.ts); 8 is converged. */
  readonly gaussNodes: number
  /** Sound sent from the far side only, or the mean of both ways (they differ where a structure carries it). */
  readonly directions: 'far-to-room' | 'both'
}

export const METHOD: MethodOptions = { studsBend: true, platesYield: true, gaussNodes: 8, directions: 'both' }

/** Sub-bands of each third octave, and the factors on every stiffness that are averaged. */
export interface Sampling {
  readonly subBands: number
  /** Around the onset of a coincidence, and in all bands of constructions with sharp resonances (detail.ts). */
  readonly finerSubBands: number
  readonly stiffnessFactors: readonly number[]
}

/**
 * Sub-bands in each third octave, and factors on every stiffness that are averaged (batch spread of boards: the
 * coincidence dip is rounded, +-12 % in frequency; STC is hardly touched).
 */
export const QUALITY: Readonly<Record<Quality, Sampling>> = {
  drag: { subBands: 3, finerSubBands: 5, stiffnessFactors: [1] },
  plot: { subBands: 5, finerSubBands: 5, stiffnessFactors: [0.79, 1, 1.26] },
}
