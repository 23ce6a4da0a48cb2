import { createStore } from 'zustand/vanilla'
import { PALETTES, type Palette } from '#drawing/palette.ts'

/** What the reader asked for; auto follows the system. */
export type ThemeChoice = 'light' | 'dark' | 'auto'
export const THEME_CHOICES: readonly ThemeChoice[] = ['auto', 'light', 'dark']

export interface ThemeState {
  readonly choice: ThemeChoice
  /** What is shown now. */
  readonly shown: 'light' | 'dark'
}

const STORAGE_KEY = 'leafgap-theme'

/** Light and dark, remembered on this machine; colours come from the drawing's palette and nowhere else. */
export function createThemeStore() {
  const system = window.matchMedia('(prefers-color-scheme: dark)')
  const resolve = (choice: ThemeChoice): 'light' | 'dark' =>
    choice === 'auto' ? (system.matches ? 'dark' : 'light') : choice
  const first = rememberedChoice()
  const store = createStore<ThemeState>(() => ({ choice: first, shown: resolve(first) }))
  const style = document.createElement('style')
  style.textContent = themeCss()
  document.head.append(style)
  const apply = (choice: ThemeChoice) => {
    const shown = resolve(choice)
    document.documentElement.dataset['theme'] = shown
    store.setState({ choice, shown })
  }
  apply(first)
  system.addEventListener('change', () => apply(store.getState().choice))
  return {
    store,
    choose: (choice: ThemeChoice) => {
      remember(choice)
      apply(choice)
    },
  }
}

export type Theme = ReturnType<typeof createThemeStore>

/** The palette's tokens as CSS variables: --ink, --paper, --accent ... */
function themeCss(): string {
  return [
    `:root,[data-theme="light"]{color-scheme:light;${variables(PALETTES.light)}}`,
    `[data-theme="dark"]{color-scheme:dark;${variables(PALETTES.dark)}}`,
    `@media print{:root,[data-theme]{color-scheme:light;${variables(PALETTES.print)}}}`,
  ].join('\n')
}

function variables(palette: Palette): string {
  return Object.entries(palette)
    .map(([token, colour]) => `--${token}:${colour};`)
    .join('')
}

/** Storage may be shut off; the theme then follows the system and is not remembered. */
function rememberedChoice(): ThemeChoice {
  try {
    const stored = window.localStorage.getItem(STORAGE_KEY)
    return THEME_CHOICES.find((choice) => choice === stored) ?? 'auto'
  } catch {
    return 'auto'
  }
}

function remember(choice: ThemeChoice): void {
  try {
    window.localStorage.setItem(STORAGE_KEY, choice)
  } catch {
    // Not remembered: nothing the user entered is lost.
  }
}
