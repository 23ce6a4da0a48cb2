/** A place on the plan, mm, y up. */
export type Point = readonly [xMm: number, yMm: number]

/** A ring of corners, open: the last corner joins the first. */
export type Ring = readonly Point[]

/** A floor shape: outer ring counter-clockwise, holes clockwise, rings open; the area is net of the holes, mm2. */
export interface Polygon {
  readonly outline: readonly Point[]
  readonly holes: readonly (readonly Point[])[]
  readonly areaMm2: number
}
