import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { isOnFlanking } from '#analysis/paths/answerWords.ts'
import { levelFigures, siteFigures } from '#ui/panels/answerFigures.ts'

/** Figures of the whole way: weighted levels, NIC, and what is lost between a laboratory and the site. */
export function SiteFigures({ answer }: { readonly answer: ReceiverAnswer }) {
  const flanking = answer.notes.filter(isOnFlanking)
  return (
    <section className="paths-site" aria-label="Figures">
      <dl className="site-figures">
        {[...levelFigures(answer), ...siteFigures(answer)].map(([name, figure]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{figure}</dd>
          </div>
        ))}
      </dl>
      {flanking.map(({ text }) => (
        <p key={text} className="bench-said">
          {text}
        </p>
      ))}
    </section>
  )
}
