/**
 * What a colour is for. Marks name a token; the back end looks it up in the palette of its surface.
 * Text: ink, soft, accent, warn, on-accent. Marks: all of those, hatch, wall. Grounds: paper, sheet, clear, strip,
 * solid, accent-soft. line is for grids and rules that carry no meaning.
 */
export type ColourToken =
  | 'ink'
  | 'soft'
  | 'line'
  | 'paper'
  | 'sheet'
  | 'clear'
  | 'strip'
  | 'hatch'
  | 'wall'
  | 'solid'
  | 'accent'
  | 'accent-soft'
  | 'on-accent'
  | 'warn'

export type PaletteName = 'light' | 'dark' | 'print'
export type Palette = Readonly<Record<ColourToken, string>>

/** Every colour Leafgap uses; kept at 4.5:1 for text and 3:1 for marks by a test. */
export const PALETTES: Readonly<Record<PaletteName, Palette>> = {
  light: {
    ink: '#1f2428',
    soft: '#5d6266',
    line: '#d9d3c5',
    paper: '#f5f2ea',
    sheet: '#fbfaf6',
    clear: '#ffffff',
    strip: '#f0ebdf',
    hatch: '#857d6c',
    wall: '#1f2428',
    solid: '#cfc8b8',
    accent: '#0b6e6e',
    'accent-soft': '#d6eaea',
    'on-accent': '#ffffff',
    warn: '#a8431b',
  },
  dark: {
    ink: '#ece9e1',
    soft: '#a9adb0',
    line: '#3a4045',
    paper: '#1b1f22',
    sheet: '#22272b',
    clear: '#2c3236',
    strip: '#23282b',
    hatch: '#8f8a7e',
    wall: '#ece9e1',
    solid: '#4a4f52',
    accent: '#63c5c1',
    'accent-soft': '#17413f',
    'on-accent': '#10201f',
    warn: '#f0936a',
  },
  print: {
    ink: '#1f2428',
    soft: '#55595d',
    line: '#cfcbc2',
    paper: '#ffffff',
    sheet: '#ffffff',
    clear: '#ffffff',
    strip: '#f4f1e9',
    hatch: '#7d7667',
    wall: '#1f2428',
    solid: '#d4cfc3',
    accent: '#0b6e6e',
    'accent-soft': '#d6eaea',
    'on-accent': '#ffffff',
    warn: '#a8431b',
  },
}
