import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { isOnFlanking } from '#analysis/paths/answerWords.ts'
import { decibels } from '#ui/charts/curveWords.ts'

/** Figures of the whole way: weighted levels, NIC, and what is lost between a laboratory and the site. */
export function SiteFigures({ answer }: { readonly answer: ReceiverAnswer }) {
  const flanking = answer.notes.filter(isOnFlanking)
  return (
    <section className="paths-site" aria-label="Figures">
      <dl className="site-figures">
        {figuresOf(answer).map(([name, figure]) => (
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

function figuresOf(answer: ReceiverAnswer): readonly (readonly [name: string, figure: string])[] {
  const { levelA, levelC, nic, siteLoss, notes } = answer
  const hasNoNic = notes.some(({ code }) => code === 'no-nic')
  return [
    ['A-weighted level there', levelA === null ? 'not known' : `${decibels(levelA)}A`],
    ['C-weighted level there', levelC === null ? 'not known' : `${decibels(levelC)}C`],
    ['NIC', nic === null ? (hasNoNic ? 'none: not between two rooms' : 'not known') : String(nic)],
    ['All surfaces and openings, laboratory', siteLoss === null ? 'not known' : `STC ${siteLoss.laboratoryStc}`],
    [
      'The same with leaks, ducts and flanking, expected on site',
      siteLoss === null ? 'not known' : `STC ${siteLoss.expectedStc}`,
    ],
    ['Lost between the two', siteLoss === null ? 'not known' : decibels(siteLoss.laboratoryStc - siteLoss.expectedStc)],
  ]
}
