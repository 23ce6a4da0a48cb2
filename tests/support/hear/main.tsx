import { useState } from 'react'
import { createRoot } from 'react-dom/client'
import { HearIt } from '#ui/hear/HearIt.tsx'
import { createThemeStore } from '#ui/theme.ts'
import type { HearCase } from './case.ts'
import '#ui/theme.css'
import '#ui/panels.css'
import '#ui/hear/hear.css'

declare global {
  interface Window {
    hearCase: HearCase
    changeHearCase: (next: HearCase) => void
  }
}

function Alone() {
  const [shown, setShown] = useState(window.hearCase)
  window.changeHearCase = setShown
  return <HearIt {...shown} />
}

createThemeStore()
const host = document.getElementById('page')
if (!host) throw new Error('no place for the page')
createRoot(host).render(<Alone />)
