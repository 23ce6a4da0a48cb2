import materials from '#acoustics/data/materials.json' with { type: 'json' }
import type { Leaf } from '#acoustics/layered/system.ts'
import { type MaterialClass, materialAt } from '#acoustics/materials.ts'

function classesOf(leaf: Leaf): readonly MaterialClass[] {
  return leaf.sheets.map((sheet) => materialAt(sheet.material, sheet.thicknessMm).class)
}

/** True when the leaf holds enough concrete, block or brick to stand without a frame. */
export function isMasonryLeaf(leaf: Leaf): boolean {
  const classes = classesOf(leaf)
  const thickness = leaf.sheets.reduce((sum, sheet, i) => sum + (classes[i] === 'heavy' ? sheet.thicknessMm : 0), 0)
  return thickness >= materials.masonryFromThicknessMm
}

/** True for glass only. */
export function isPaneLeaf(leaf: Leaf): boolean {
  return classesOf(leaf).every((kind) => kind === 'pane')
}

/** Boards and toppings need a frame; panes, loose sheets and masonry do not. */
export function needsFrame(leaf: Leaf): boolean {
  return !isMasonryLeaf(leaf) && classesOf(leaf).some((kind) => kind === 'board' || kind === 'topping')
}
