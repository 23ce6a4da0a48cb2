import { figureWords, NO_PUBLISHED, sourceWords } from '#analysis/published.ts'
import { MATCH_RULE, type PublishedValue } from '#assemblies/published/match.ts'
import { capital } from '#ui/panels/words.ts'

/** Laboratory values of exactly this build-up, and what makes two build-ups the same. */
export function Printed({ published }: { readonly published: readonly PublishedValue[] }) {
  return (
    <>
      {published.length === 0 ? (
        <p>{capital(NO_PUBLISHED)}.</p>
      ) : (
        <ul className="how-rows">
          {published.map((value) => (
            <li key={value.id}>
              <strong>Published {figureWords(value)}</strong>
              <span className="how-under">{value.description}</span>
              <span className="how-under">{sourceWords(value)}</span>
            </li>
          ))}
        </ul>
      )}
      <p>What counts as the same build-up: {MATCH_RULE}</p>
    </>
  )
}
