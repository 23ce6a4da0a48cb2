/** Sizes of everything a plan draws that does not scale with the room; in target units (px on screen, mm on paper). */
export interface PlanStyle {
  /** Font size of dimensions and labels. */
  readonly text: number
  /** Font size of the room's own label. */
  readonly heading: number
  /** Stroke of the existing outline. */
  readonly heavy: number
  /** Stroke of faces, leaves and jambs. */
  readonly medium: number
  /** Stroke of dimension lines, arcs, hidden edges. */
  readonly fine: number
  /** Stroke of hatches and grids. */
  readonly hair: number
  /** Lines closer than this run together: hatches are simplified before. */
  readonly closest: number
  readonly tagRadius: number
  /** Half the length of a dimension's 45 degree tick, across. */
  readonly tick: number
  /** From the outline to the first row of dimensions, and from row to row. */
  readonly firstRow: number
  readonly rowStep: number
  /** Free space kept between a label and anything else. */
  readonly air: number
}

/** For the plan on screen, CSS px. */
export const SCREEN_STYLE: PlanStyle = {
  text: 13,
  heading: 15,
  heavy: 3,
  medium: 1.25,
  fine: 1,
  hair: 0.75,
  closest: 1.7,
  tagRadius: 12,
  tick: 4.5,
  firstRow: 40,
  rowStep: 26,
  air: 4,
}

/** For a sheet of paper, mm. */
export const SHEET_STYLE: PlanStyle = {
  text: 2.5,
  heading: 3.1,
  heavy: 0.7,
  medium: 0.3,
  fine: 0.18,
  hair: 0.13,
  closest: 0.38,
  tagRadius: 2.5,
  tick: 0.9,
  firstRow: 8,
  rowStep: 5.6,
  air: 0.8,
}

/** Free space a plan on screen needs round its outline for three rows of dimensions and the scale bar, CSS px. */
export const SCREEN_PLAN_MARGIN = 112
