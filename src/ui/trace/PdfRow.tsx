import { useEffect, useState } from 'react'
import { EntryField } from '#ui/dialogs/EntryField.tsx'
import { useSession } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'
import { loadWaitingPage } from '#ui/trace/loadPicture.ts'
import { paintPage } from '#ui/trace/readPdf.ts'
import type { WaitingPdf } from '#ui/trace/traceStore.ts'

/** Which page of a PDF, by its number, with a small picture of it. */
export function PdfRow({ pdf }: { readonly pdf: WaitingPdf }) {
  const session = useSession()
  const shell = useShell()
  const [text, setText] = useState('1')
  const page = readPage(text, pdf.pages)
  const load = () => page !== null && void loadWaitingPage(session, shell, page)
  return (
    <fieldset className="trace-pdf">
      <legend className="field-label">
        {pdf.file.name} has {pdf.pages} pages
      </legend>
      <EntryField
        label="Page to trace"
        name="trace-page"
        text={text}
        hint={`1 to ${pdf.pages}`}
        error={page === null ? `A whole number from 1 to ${pdf.pages} is needed.` : null}
        onText={setText}
        onKeyDown={(event) => {
          if (event.key === 'Enter') load()
        }}
      />
      <Thumbnail file={pdf.file} page={page} />
      <div className="verbs">
        <button type="button" className="action" disabled={page === null} onClick={load}>
          Load this page
        </button>
        <button type="button" className="verb" onClick={() => shell.trace.store.setState({ pdf: null })}>
          Load none
        </button>
      </div>
    </fieldset>
  )
}

function readPage(text: string, pages: number): number | null {
  const page = /^\s*\d+\s*$/.test(text) ? Number(text) : 0
  return page >= 1 && page <= pages ? page : null
}

const THUMBNAIL_PX = 180

function Thumbnail({ file, page }: { readonly file: File; readonly page: number | null }) {
  const [painted, setPainted] = useState<{ readonly page: number; readonly address: string } | null>(null)
  useEffect(() => {
    let isGone = false
    if (page === null) return
    void paintPage(file, page, THUMBNAIL_PX).then((canvas) => {
      if (!isGone && canvas.ok) setPainted({ page, address: canvas.value.toDataURL() })
    })
    return () => {
      isGone = true
    }
  }, [file, page])
  if (painted === null || painted.page !== page) return <div className="trace-thumbnail" />
  return <img className="trace-thumbnail" src={painted.address} alt={`Page ${page}`} />
}
