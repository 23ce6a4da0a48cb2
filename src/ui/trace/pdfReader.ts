import { GlobalWorkerOptions, getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs'
import PdfWorker from 'pdfjs-dist/legacy/build/pdf.worker.min.mjs?worker'
import bitonalScans from 'pdfjs-dist/wasm/jbig2.wasm?url'
import waveletScans from 'pdfjs-dist/wasm/openjpeg.wasm?url'

/** The decoders of scanned pages, by the names the reader asks for. */
const DECODERS: Readonly<Record<string, string>> = { 'jbig2.wasm': bitonalScans, 'openjpeg.wasm': waveletScans }

/** Hands the reader its decoders from the page's own files. */
class Decoders {
  async fetch({ filename }: { readonly filename: string }): Promise<Uint8Array> {
    const address = DECODERS[filename]
    if (address === undefined) throw new Error(`there is no decoder ${filename}`)
    return new Uint8Array(await (await fetch(address)).arrayBuffer())
  }
}

/** Opens a PDF on a worker of its own; `close` ends both. Nothing in the PDF is run, and nothing is fetched for it. */
export async function openPdf(
  data: Uint8Array,
): Promise<{ readonly pdf: PDFDocumentProxy; readonly close: () => Promise<void> }> {
  const port = new PdfWorker()
  GlobalWorkerOptions.workerPort = port
  const task = getDocument({ data, isEvalSupported: false, verbosity: 0, WasmFactory: Decoders })
  const close = async () => {
    await task.destroy()
    port.terminate()
  }
  try {
    return { pdf: await task.promise, close }
  } catch (cause) {
    await close()
    throw cause
  }
}
