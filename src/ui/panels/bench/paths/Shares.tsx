import { useState } from 'react'
import type { PathShare, ReceiverAnswer } from '#analysis/paths/answer.ts'
import { gainWords, PATH_KIND_WORDS, shareWords } from '#analysis/paths/answerWords.ts'
import { ShareBar, type ShareOf, shareOf, sortedShares } from '#ui/charts/ShareBars.tsx'
import { useShowPath } from '#ui/panels/bench/paths/useShowPath.ts'
import { Tabs } from '#ui/panels/bench/Tabs.tsx'

/** Every path as a bar by what it carries, at the octave that decides or of everything. */
export function Shares({ answer }: { readonly answer: ReceiverAnswer }) {
  const [picked, setPicked] = useState<ShareOf | null>(null)
  const isOverall = 'levelDb' in answer.limit
  const of = picked ?? (isOverall ? 'overall' : 'deciding')
  const { shown, rest } = sortedShares(answer.paths, of)
  if (answer.paths.length === 0) return null
  const hz = answer.worstBandHz ?? answer.dominantBandHz
  const deciding = hz === null ? 'Overall' : `At ${hz} Hz`
  const overall = isOverall ? `In ${answer.limit.kind}` : 'Overall'
  return (
    <section className="paths-shares" aria-label="What carries it">
      <div className="paths-part-head">
        <h3>What carries it</h3>
        {hz !== null && (
          <Tabs<ShareOf>
            label="Share"
            views={[
              { id: 'deciding', text: deciding },
              { id: 'overall', text: overall },
            ]}
            current={of}
            onChoose={setPicked}
          />
        )}
      </div>
      <table className="share-rows">
        <caption className="visually-hidden">Share of every path: {of === 'deciding' ? deciding : overall}</caption>
        <thead>
          <tr>
            <th scope="col">Path</th>
            <th scope="col" colSpan={2}>
              Share
            </th>
            <th scope="col">If closed</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((share) => (
            <ShareRow key={share.path.id} share={share} of={of} />
          ))}
          {rest.length > 0 && (
            <tr>
              <th scope="row" className="share-rest" colSpan={2}>
                {rest.length} more, under 1 % each
              </th>
              <td>{shareWords(rest.reduce((sum, share) => sum + shareOf(share, of), 0))}</td>
              <td />
            </tr>
          )}
        </tbody>
      </table>
    </section>
  )
}

function ShareRow({ share, of }: { readonly share: PathShare; readonly of: ShareOf }) {
  const show = useShowPath()
  const { path } = share
  return (
    <tr>
      <th scope="row">
        <button type="button" className="row-button" onClick={() => show(path)}>
          {path.label}
        </button>
      </th>
      <td className="share-cell">
        <ShareBar kind={path.kind} share={shareOf(share, of)} />
        <span className="visually-hidden">{PATH_KIND_WORDS[path.kind]}</span>
      </td>
      <td>{shareWords(shareOf(share, of))}</td>
      <td>{gainWords(share.gainIfClosedDb)}</td>
    </tr>
  )
}
