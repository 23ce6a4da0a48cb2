import type { Resonance } from '#acoustics/layered/namedResonances.ts'
import { frequencyWords } from '#ui/charts/curveWords.ts'
import { capital } from '#ui/panels/words.ts'

/** Every dip: where, why, and what would move it. */
export function Dips({ resonances }: { readonly resonances: readonly Resonance[] }) {
  if (resonances.length === 0) return <p>No resonance or coincidence lies between 50 and 5000 Hz.</p>
  return (
    <ul className="how-rows">
      {resonances.map(({ hz, cause, remedy }) => (
        <li key={`${hz} ${cause}`}>
          <strong>{frequencyWords(hz)}</strong> {capital(cause)}.<span className="how-under">{remedy}</span>
        </li>
      ))}
    </ul>
  )
}
