import { sheetMass } from '#acoustics/materials.ts'
import { type BoardLayer, DAMPING_MASS_KG_M2, DAMPING_THICKNESS_MM, type Layer } from '#assemblies/layer.ts'
import type { KilogramsPerSquareMetre } from '#units/quantity.ts'

/** Weight of a board, kg/m2: as weighed, else from the density of its material. */
export function boardMass(board: BoardLayer): KilogramsPerSquareMetre {
  return sheetMass(board.material, board.thicknessMm, board.surfaceMassKgM2)
}

/** Weight of one layer, kg/m2; wool is not counted. */
export function layerMass(layer: Layer): KilogramsPerSquareMetre {
  switch (layer.kind) {
    case 'board':
      return boardMass(layer)
    case 'damping-compound':
      return (DAMPING_MASS_KG_M2 * (layer.thicknessMm ?? DAMPING_THICKNESS_MM)) / DAMPING_THICKNESS_MM
    case 'filler':
      return layer.surfaceMassKgM2
    case 'cavity':
      return (layer.frame?.massKgM2 ?? 0) + (layer.farFrame?.massKgM2 ?? 0)
  }
}
