import { useId } from 'react'
import { useStore } from 'zustand'
import { saveFile } from '#ui/files.ts'
import { DrawerVerb } from '#ui/header/DrawerVerb.tsx'
import { useSession } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'
import { THEME_CHOICES, type ThemeChoice } from '#ui/theme.ts'
import { unreachable } from '#units/result.ts'

/** Things that are seldom needed: what is saved, light or dark, the keys. */
export function QuietPlace() {
  return (
    <div className="quiet-place">
      <AutosaveLine />
      <ThemeSelect />
      <DrawerVerb drawer="materials">Materials</DrawerVerb>
      <DrawerVerb drawer="keys">Keys</DrawerVerb>
    </div>
  )
}

function AutosaveLine() {
  const session = useSession()
  const shell = useShell()
  const state = useStore(shell.autosave.store)
  switch (state.kind) {
    case 'waiting':
      return <span className="autosave">saving on this machine</span>
    case 'saved':
      return <span className="autosave">saved on this machine {clockTime(state.at)}</span>
    case 'failed':
      return (
        <span className="autosave autosave-failed" title={state.reason}>
          <span className="warn-sign" aria-hidden="true" />
          not saved on this machine:{' '}
          <button type="button" className="verb" onClick={() => void saveFile(session, shell)}>
            download a copy
          </button>
        </span>
      )
    default:
      return unreachable(state)
  }
}

/** 12:41, the same on every machine. */
function clockTime(at: Date): string {
  return `${at.getHours()}:${String(at.getMinutes()).padStart(2, '0')}`
}

const THEME_WORDS: Readonly<Record<ThemeChoice, string>> = {
  auto: 'light or dark',
  light: 'light',
  dark: 'dark',
}

function ThemeSelect() {
  const id = useId()
  const { theme } = useShell()
  const choice = useStore(theme.store, (state) => state.choice)
  return (
    <span className="theme-choice">
      <label htmlFor={id} className="visually-hidden">
        Theme
      </label>
      <select
        id={id}
        value={choice}
        onChange={(event) => {
          const chosen = THEME_CHOICES.find((candidate) => candidate === event.target.value)
          if (chosen) theme.choose(chosen)
        }}
      >
        {THEME_CHOICES.map((value) => (
          <option key={value} value={value}>
            {THEME_WORDS[value]}
          </option>
        ))}
      </select>
    </span>
  )
}
