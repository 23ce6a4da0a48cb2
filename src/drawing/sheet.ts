import type { Box, Drawing, Mark } from '#drawing/model.ts'
import { flowText, type Paragraph } from '#drawing/sheet/flow.ts'
import { ledgerTable } from '#drawing/sheet/ledgerTable.ts'
import { openingFills } from '#drawing/sheet/openingFills.ts'
import { openingTable } from '#drawing/sheet/openingTable.ts'
import { paragraphsOf } from '#drawing/sheet/paragraphs.ts'
import { planAtScale } from '#drawing/sheet/planAtScale.ts'
import { scheduleTable, type Table } from '#drawing/sheet/schedule.ts'
import { PAPERS, type SheetInput } from '#drawing/sheet/sheetInput.ts'
import { targetsTable } from '#drawing/sheet/targetsTable.ts'
import { TITLE_HEIGHT, titleStrip } from '#drawing/sheet/titleStrip.ts'

/** White edge of the sheet, mm. */
const EDGE = 11
/** Between the plan and the column beside it, mm. */
const GUTTER = 9

/** How small the words are set and in how many columns, mm; tried in turn until everything fits. */
interface Setting {
  readonly size: number
  readonly columns: number
}

/** A setting, and whether the openings have their table. */
interface Wanted extends Setting {
  readonly openings: boolean
}

/**
 * The annotated plan as it is handed over: plan at a standard scale, assembly list, ledger, every caution in full,
 * title block. Words that do not fit are set in more and smaller columns; none is left out.
 */
export function sheetDrawing(input: SheetInput): Drawing {
  const [long, short] = PAPERS[input.paper]
  const landscape = input.landscape ?? true
  const width = landscape ? long : short
  const height = landscape ? short : long
  const inner: Box = { x: EDGE, y: EDGE, width: width - 2 * EDGE, height: height - 2 * EDGE - TITLE_HEIGHT + 4 }
  const layout = layOut(input, inner, landscape)
  const plan = planAtScale(input, layout.plan)
  const foot: Box = { x: EDGE, y: height - EDGE - TITLE_HEIGHT + 4, width: inner.width, height: TITLE_HEIGHT }
  return {
    title: `${input.projectName}, ${input.result.name}`,
    widthMm: width,
    heightMm: height,
    marks: [...plan.marks, ...layout.marks, ...titleStrip(input, plan.scale.text, foot)],
  }
}

interface Layout {
  readonly plan: Box
  readonly marks: readonly Mark[]
}

function* settings(large: boolean, heard: boolean): Generator<Setting> {
  if (large) yield { size: 2.9, columns: 1 }
  for (const [size, columns] of [
    [2.5, 1],
    [2.3, 1],
    [2.5, 2],
    [2.3, 2],
    [2.1, 2],
    [2.1, 3],
  ] as const) {
    yield { size, columns }
  }
  for (let size = 1.9; ; size *= 0.92) {
    // Levels by octave need a wide table beside the words.
    if (heard) yield { size, columns: 2 }
    yield { size, columns: 3 }
  }
}

/** What a sheet has beside all it must have, as long as the words stay this large, mm. */
interface Extras {
  readonly openings: boolean
  readonly corners: boolean
  readonly leastSize: number
}

const EXTRAS: readonly Extras[] = [
  { openings: true, corners: true, leastSize: 2.1 },
  { openings: true, corners: false, leastSize: 1.7 },
  { openings: false, corners: false, leastSize: 0 },
]

function layOut(input: SheetInput, inner: Box, landscape: boolean): Layout {
  for (const extras of EXTRAS) {
    const paragraphs = paragraphsOf(input, extras)
    for (const setting of settings(isLarge(inner), namesSomebody(input))) {
      if (setting.size < extras.leastSize) break
      const build = landscape ? beside : below
      const layout = build(input, inner, paragraphs, { ...setting, openings: extras.openings })
      if (layout) return layout
    }
  }
  throw new Error('unreachable: sizes shrink until everything fits')
}

function namesSomebody({ heard }: SheetInput): boolean {
  return heard !== undefined && heard.receivers.length > 0
}

/** Of a sheet's height, what the plan over a table of levels must have: on a small one it would be a stamp. */
function besideLevels(inner: Box): number {
  return isLarge(inner) ? 0.4 : 0.5
}

function isLarge({ width, height }: Box): boolean {
  return width * height > 80_000
}

/** Of a sheet's height, what its plan must have: less once nothing else fits. */
function leastPlan(size: number, usual: number): number {
  return size > 1.2 ? usual : 0.15
}

/** Landscape: plan over the assembly list; ledger and cautions in columns at the right. */
function beside(input: SheetInput, inner: Box, paragraphs: readonly Paragraph[], setting: Wanted): Layout | null {
  const { size, columns } = setting
  const column = Math.min(Math.max(inner.width * 0.26, 70), 96)
  const side =
    columns === 1 ? column : Math.min(columns * (column * 0.86 + GUTTER * 0.7) - GUTTER * 0.7, inner.width * 0.58)
  const left = inner.width - side - GUTTER
  const list = tables(input, left, setting)
  const planHeight = inner.height - list.height - 6
  if (planHeight < inner.height * leastPlan(size, namesSomebody(input) ? besideLevels(inner) : 0.3)) return null
  const words = sideColumns(input, paragraphs, setting, {
    x: inner.x + left + GUTTER,
    y: inner.y,
    width: side,
    height: inner.height,
  })
  if (!words) return null
  return {
    plan: { x: inner.x, y: inner.y, width: left, height: planHeight },
    marks: [...list.marks(inner.x, inner.y + inner.height - list.height), ...words],
  }
}

/** Portrait: plan at the top, then the assembly list over the full width, then ledger and cautions. */
function below(input: SheetInput, inner: Box, paragraphs: readonly Paragraph[], setting: Wanted): Layout | null {
  const { size, columns } = setting
  const list = tables(input, inner.width, setting)
  const share = size > 2 ? 0.36 : namesSomebody(input) ? 0.5 : 0.45
  const sideHeight = inner.height * share
  const planHeight = inner.height - sideHeight - list.height - 12
  if (planHeight < inner.height * leastPlan(size, 0.25)) return null
  const top = inner.y + planHeight + 6
  const words = sideColumns(
    input,
    paragraphs,
    { size, columns: Math.max(2, columns) },
    {
      x: inner.x,
      y: top + list.height + 6,
      width: inner.width,
      height: sideHeight,
    },
  )
  if (!words) return null
  return {
    plan: { x: inner.x, y: inner.y, width: inner.width, height: planHeight },
    marks: [...list.marks(inner.x, top), ...words],
  }
}

/** The assembly list, under it the openings where they are wanted, and who hears what. */
function tables({ room, result, units, heard }: SheetInput, width: number, { size, openings }: Wanted): Table {
  const fills = heard && openingFills(heard, room, result)
  const all = [
    scheduleTable(result.surfaces, units, width, size),
    openings ? openingTable(room, result.openings, units, width, size, fills) : null,
    heard ? targetsTable(heard.receivers, width, size) : null,
  ].filter((table) => table !== null)
  return stacked(all, size)
}

/** Tables one under the other. */
function stacked(all: readonly Table[], gap: number): Table {
  return {
    height: all.reduce((sum, { height }) => sum + height, (all.length - 1) * gap),
    marks: (x, y) => {
      let top = y
      return all.flatMap((table) => {
        const marks = table.marks(x, top)
        top += table.height + gap
        return marks
      })
    },
  }
}

function sideColumns(
  input: SheetInput,
  paragraphs: readonly Paragraph[],
  { size, columns }: Setting,
  area: Box,
): Mark[] | null {
  const gap = GUTTER * 0.7
  const width = (area.width - (columns - 1) * gap) / columns
  const ledger = ledgerTable(input.result, input.units, width, size)
  const taken = ledger.height + size * 1.6
  if (taken > area.height) return null
  const boxes = Array.from({ length: columns }, (_, index): Box => {
    const down = index === 0 ? taken : 0
    return { x: area.x + index * (width + gap), y: area.y + down, width, height: area.height - down }
  })
  const words = flowText(paragraphs, boxes, size)
  return words && [...ledger.marks(area.x, area.y), ...words]
}
