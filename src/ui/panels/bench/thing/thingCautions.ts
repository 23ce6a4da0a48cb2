import type { Opening } from '#analysis/room.ts'

/** Said where an obstacle is taken out, before anybody cuts. */
export const TAKE_OUT_CAUTION =
  'A pier, column or breast may carry load or brace the wall behind it: a structural engineer must say what takes its place before anything is cut.'

/** Said where a drop is boxed in. */
export const BOX_CAUTION =
  'A duct or pipe that is boxed in must stay reachable for repair, and air to fuel-burning appliances must not be cut: have a licensed heating engineer confirm it. A beam that is notched or cut needs a structural engineer.'

/** Said where a room is cut in two. */
export const CUT_CAUTION =
  'Each of the two rooms needs a way out of its own, and often a window to escape through; air, heating and alarms must reach both. Ask your building department before a partition is built.'

/** Said over the table of openings, where any of them can be moved, made smaller or deleted. */
export const WAY_OUT_CAUTION =
  'Doors and windows people may have to escape through keep their clear width, height and sill: before one is plugged, made smaller or turned, ask your building department.'

/** Said where an opening is changed or plugged. */
export function openingCaution({ kind }: Pick<Opening, 'kind'>): string {
  switch (kind) {
    case 'door':
      return 'A door people leave by keeps its clear width and height, opens without a key from inside and must not be blocked by its own swing or another: ask your building department which way it has to open.'
    case 'window':
      return 'A window people may have to escape through keeps its clear size and its sill: before it is plugged, lined or made smaller, ask your building department.'
    case 'vehicle-door':
      return 'A vehicle door that is closed up may have been a way out and a source of air: ask your building department before it is.'
    case 'vent':
      return 'A vent may feed a fuel-burning appliance or carry moisture away: a licensed heating engineer must confirm that it can be closed or quietened.'
    default:
      return kind satisfies never
  }
}
