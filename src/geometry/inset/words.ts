/** Walls as readers count them: from 1, obstacles' sides numbered on. */
export function wallName(wall: number): string {
  return `Wall ${wall + 1}`
}

/** "Wall 1", "Wall 1 and Wall 4", "Wall 1, Wall 2 and Wall 4". */
export function wallNames(walls: readonly number[]): string {
  const names = walls.map(wallName)
  const last = names.pop()
  if (last === undefined) return 'no wall'
  return names.length === 0 ? last : `${names.join(', ')} and ${last}`
}

/** A place on the plan, to the millimetre. */
export function placeName(xMm: number, yMm: number): string {
  return `x ${tidy(Math.round(xMm))} mm, y ${tidy(Math.round(yMm))} mm`
}

/** A length to a tenth of a millimetre. */
export function lengthName(mm: number): string {
  return `${tidy(Math.round(mm * 10) / 10)} mm`
}

/** A floor area to a hundredth of a square metre. */
export function areaName(mm2: number): string {
  return `${(mm2 / 1e6).toFixed(2)} m2`
}

/** No minus sign before zero. */
function tidy(value: number): string {
  return String(value === 0 ? 0 : value)
}
