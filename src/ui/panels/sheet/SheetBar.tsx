import { useState } from 'react'
import type { SchemeResult } from '#analysis/results.ts'
import type { Drawing } from '#drawing/model.ts'
import type { PaperName } from '#drawing/sheet/sheetInput.ts'
import { drawingToSvg } from '#drawing/svg.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import { ledgerCsv } from '#reports/csv.ts'
import { heardFrom } from '#reports/heard.ts'
import { setNote } from '#state/commands/project.ts'
import { ChoiceField, type Option } from '#ui/fields/ChoiceField.tsx'
import { TextField } from '#ui/fields/TextField.tsx'
import { fileStem } from '#ui/files.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { drawingToPng, saveBlob, saveText } from '#ui/panels/sheet/saveFiles.ts'
import { useRoom, useScheme, useSession, useShownProject } from '#ui/session.ts'

export type Turn = 'landscape' | 'portrait'

const PAPERS: readonly Option<PaperName>[] = [
  { value: 'letter', text: 'Letter' },
  { value: 'tabloid', text: 'Tabloid' },
  { value: 'a4', text: 'A4' },
  { value: 'a3', text: 'A3' },
]

interface Props {
  readonly paper: PaperName
  readonly setPaper: (paper: PaperName) => void
  readonly turn: Turn
  readonly setTurn: (turn: Turn) => void
  /** null: the scheme's geometry was refused. */
  readonly drawing: Drawing | null
}

/** What the sheet shows and where it goes. */
export function SheetBar({ paper, setPaper, turn, setTurn, drawing }: Props) {
  const { view } = useSession()
  const project = useShownProject()
  const scheme = useScheme()
  const run = useRun()
  return (
    <div className="sheet-bar">
      <h2>The sheet, as it will be handed over</h2>
      <ChoiceField
        name="sheet-scheme"
        label="Scheme"
        value={scheme.id}
        options={project.schemes.map(({ id, name }) => ({ value: id, text: name }))}
        onChoose={(schemeId) => view.setState({ schemeId })}
      />
      <ChoiceField name="paper" label="Paper" value={paper} options={PAPERS} onChoose={setPaper} />
      <ChoiceField<Turn>
        name="turn"
        label="Turned"
        value={turn}
        options={[
          { value: 'landscape', text: 'Wide' },
          { value: 'portrait', text: 'Tall' },
        ]}
        onChoose={setTurn}
      />
      <div className="sheet-note">
        <TextField name="note" label="Note on the sheet" value={project.note} onCommit={(note) => run(setNote(note))} />
      </div>
      <SaveButtons drawing={drawing} />
    </div>
  )
}

function SaveButtons({ drawing }: Pick<Props, 'drawing'>) {
  const project = useShownProject()
  const scheme = useScheme()
  const allResults = useAllResults()
  const room = useRoom()
  const [said, setSaid] = useState('')
  const stem = `${fileStem(project.name)}-${fileStem(scheme.name)}`
  const savePng = async (times: number) => {
    if (!drawing) return
    setSaid(`Drawing the picture at ${times}x.`)
    const png = await drawingToPng(drawing, times)
    if (png.ok) saveBlob(`${stem}-${times}x.png`, png.value)
    setSaid(png.ok ? `${stem}-${times}x.png was handed to the download folder.` : png.error)
  }
  const saveSvg = () => {
    if (!drawing) return
    saveText(`${stem}.svg`, drawingToSvg(drawing), 'image/svg+xml')
    setSaid(`${stem}.svg was handed to the download folder.`)
  }
  const saveCsv = () => {
    const name = `${fileStem(project.name)}-ledger.csv`
    const { schemes, receivers, sources } = project
    const given = { room, schemes, receivers, sources, catalogue: projectCatalogue(project) }
    saveText(name, ledgerCsv([{ room, results: allResults, heard: heardFrom(given, allResults, 0) }]), 'text/csv')
    setSaid(`${name} was handed to the download folder.`)
  }
  return (
    <>
      <div className="sheet-buttons">
        <button type="button" disabled={!drawing} onClick={saveSvg}>
          Save SVG
        </button>
        <button type="button" disabled={!drawing} onClick={() => savePng(2)}>
          Save PNG 2x
        </button>
        <button type="button" disabled={!drawing} onClick={() => savePng(4)}>
          Save PNG 4x
        </button>
        <button type="button" onClick={saveCsv}>
          Save ledger CSV
        </button>
      </div>
      <p className="sheet-said" role="status">
        {said}
      </p>
    </>
  )
}

/** Results of every scheme that has any, in the project's order. */
function useAllResults(): readonly SchemeResult[] {
  const { results } = useSession()
  const project = useShownProject()
  const room = useRoom()
  return project.schemes.flatMap((scheme) => {
    const outcome = results(project, room, scheme)
    return outcome.ok ? [outcome.value] : []
  })
}
