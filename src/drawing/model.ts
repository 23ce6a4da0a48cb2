import type { ColourToken } from '#drawing/palette.ts'

/**
 * What a drawing is made of, whichever surface shows it. Units are the target's: CSS px on screen, mm on paper;
 * x to the right, y down. Marks are painted in order.
 */
export type Mark = PolygonMark | LinesMark | CircleMark | ArcMark | TextMark

/** A place on the target. */
export type Place = readonly [x: number, y: number]

/** What a mark stands for, so that a surface can highlight it and a test can find it. */
export type Role =
  | 'grid'
  | 'outline'
  | 'clear'
  | 'strip'
  | 'hatch'
  | 'obstacle'
  | 'drop'
  | 'ceiling-part'
  | 'height'
  | 'furniture'
  | 'box'
  | 'corner'
  | 'other-room'
  | 'opening'
  | 'dimension'
  | 'clear-dimension'
  | 'tag'
  | 'share'
  | 'label'
  | 'scale-bar'
  | 'section'
  | 'table'
  | 'ledger'
  | 'caution'
  | 'title'
  | 'frame'

interface MarkBase {
  readonly role: Role
  /** Surface, corner, or thing in the room (or other room) the mark belongs to. */
  readonly surfaceId?: string | undefined
}

export interface Stroke {
  readonly colour: ColourToken
  readonly width: number
  /** Lengths of dash and gap, in turn; absent: solid. */
  readonly dash?: readonly number[] | undefined
}

/** Filled and outlined rings, even-odd: a ring inside another is a hole. Rings are open lists of corners. */
export interface PolygonMark extends MarkBase {
  readonly kind: 'polygon'
  readonly rings: readonly (readonly Place[])[]
  readonly fill: ColourToken | null
  readonly stroke: Stroke | null
}

/** Any number of unconnected open lines with one stroke; a run is x, y, x, y ... of two places or more. */
export interface LinesMark extends MarkBase {
  readonly kind: 'lines'
  readonly runs: readonly (readonly number[])[]
  readonly stroke: Stroke
}

export interface CircleMark extends MarkBase {
  readonly kind: 'circle'
  readonly x: number
  readonly y: number
  readonly radius: number
  readonly fill: ColourToken | null
  readonly stroke: Stroke | null
}

/** Part of a circle from one angle to another, in degrees clockwise on the target from the x axis; end > start. */
export interface ArcMark extends MarkBase {
  readonly kind: 'arc'
  readonly x: number
  readonly y: number
  readonly radius: number
  readonly startDeg: number
  readonly endDeg: number
  readonly stroke: Stroke
}

export type Weight = 400 | 600
export type Anchor = 'start' | 'middle' | 'end'

/** Upright box on the target, y down. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** One line of text in the bundled font. */
export interface TextMark extends MarkBase {
  readonly kind: 'text'
  readonly text: string
  /** Where the anchor of the baseline stands. */
  readonly x: number
  readonly y: number
  /** Font size. */
  readonly size: number
  readonly weight: Weight
  readonly anchor: Anchor
  /** Degrees clockwise on the target, about x, y. */
  readonly rotation: number
  readonly colour: ColourToken
  /** What the text covers, from the font's own metrics: ascender of capitals to descender. */
  readonly box: Box
}

/** A finished sheet of paper. */
export interface Drawing {
  readonly title: string
  readonly widthMm: number
  readonly heightMm: number
  readonly marks: readonly Mark[]
}
