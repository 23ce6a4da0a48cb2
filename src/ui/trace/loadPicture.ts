import { boundsOf } from '#drawing/frame.ts'
import { HEAVY_PICTURE_BYTES, LARGEST_PX, LONGEST_NAME } from '#project/limits.ts'
import { byteText } from '#project/pictures.ts'
import type { Project, Underlay } from '#project/project.ts'
import { addUnderlay, changeUnderlay } from '#state/commands/underlays.ts'
import { newProjectOf } from '#ui/canvas/drawStore.ts'
import type { Session } from '#ui/session.ts'
import type { Shell } from '#ui/shell.ts'
import { type EncodedPicture, encodeCanvas } from '#ui/trace/encodePicture.ts'
import { firstPlacement } from '#ui/trace/placement.ts'
import { countPages, paintPage } from '#ui/trace/readPdf.ts'
import { readPicture, tooLarge, traceFileKind } from '#ui/trace/readPicture.ts'
import { ok, type Result } from '#units/result.ts'

/** A picture read and kept, and what is to be said of it. */
interface Loaded {
  readonly name: string
  readonly picture: EncodedPicture
  readonly said: readonly string[]
}

/**
 * Loads a photo, a scan or a PDF under the plan; a PDF of several pages waits in the panel to be told which.
 * @param replaces  an underlay whose picture is missing: it takes the place of that one; null: it comes as a new one
 */
export async function loadPicture(
  session: Session,
  shell: Shell,
  file: File,
  replaces: string | null = null,
): Promise<void> {
  if (session.view.getState().tool === 'draw' && newProjectOf(shell.draw.store.getState()) !== null) {
    const why = 'the room being drawn has no project yet; close its outline, or begin with a rectangle, then load it'
    notLoaded(shell, file.name, why)
    return
  }
  shell.state.setState({ notice: null, drawer: null })
  session.view.setState({ showsSheet: false })
  shell.trace.store.setState({ isOpen: true, busy: `Reading "${file.name}"`, pdf: null })
  const refused = await readInto(session, shell, file, replaces)
  shell.trace.store.setState({ busy: null })
  if (refused !== null) notLoaded(shell, file.name, refused)
}

/** Loads the page that was asked for of the PDF that waits. */
export async function loadWaitingPage(session: Session, shell: Shell, page: number): Promise<void> {
  const { pdf } = shell.trace.store.getState()
  if (pdf === null) return
  shell.trace.store.setState({ busy: `Painting page ${page} of "${pdf.file.name}"`, pdf: null })
  const refused = await readPage(session, shell, pdf.file, page, pdf.replaces)
  shell.trace.store.setState({ busy: null })
  if (refused !== null) notLoaded(shell, pdf.file.name, refused)
}

/** @returns why it was not loaded; null: it was, or waits for its page */
async function readInto(session: Session, shell: Shell, file: File, replaces: string | null): Promise<string | null> {
  const large = tooLarge(file)
  if (large !== null) return large
  const kind = await traceFileKind(file)
  if (kind === 'neither') return 'it is no PNG, JPEG or PDF; save it as one of these and load that'
  if (kind === 'pdf') {
    const pages = await countPages(file)
    if (!pages.ok) return pages.error
    if (pages.value === 1) return readPage(session, shell, file, 1, replaces)
    shell.trace.store.setState({ pdf: { file, pages: pages.value, replaces } })
    return null
  }
  const read = await readPicture(file)
  if (!read.ok) return read.error
  const { canvas, fullWidthPx, fullHeightPx } = read.value
  const isSmaller = canvas.width < fullWidthPx || canvas.height < fullHeightPx
  const was = `It was ${fullWidthPx} by ${fullHeightPx} pixels and is kept at ${canvas.width} by ${canvas.height}`
  const said = isSmaller ? [`${was}: at most ${LARGEST_PX} a side.`] : []
  return place(session, shell, await kept(shell, stem(file.name), canvas, said), replaces)
}

async function readPage(
  session: Session,
  shell: Shell,
  file: File,
  page: number,
  replaces: string | null,
): Promise<string | null> {
  const canvas = await paintPage(file, page)
  if (!canvas.ok) return canvas.error
  return place(session, shell, await kept(shell, `${stem(file.name)}, page ${page}`, canvas.value, []), replaces)
}

/** Writes the picture down beside the document, before any command names it. */
async function kept(
  shell: Shell,
  name: string,
  canvas: HTMLCanvasElement,
  said: readonly string[],
): Promise<Result<Loaded, string>> {
  const encoded = await encodeCanvas(canvas, shell.pictures.sha256)
  if (!encoded.ok) return encoded
  const picture = encoded.value
  const heavy = `It takes ${byteText(picture.bytes.length)}: the saved file will be slow to send. A smaller or greyer scan helps.`
  const stored = await shell.pictures.keep(picture)
  const lost = stored.ok
    ? []
    : [`This machine does not keep it (${stored.error}): save the project as a file before you leave the page.`]
  const isHeavy = picture.bytes.length > HEAVY_PICTURE_BYTES
  return ok({ name, picture, said: [...said, ...(isHeavy ? [heavy] : []), ...lost] })
}

function place(session: Session, shell: Shell, loaded: Result<Loaded, string>, replaces: string | null): string | null {
  if (!loaded.ok) return loaded.error
  const { project } = session.document.store.getState()
  const former = project.underlays.find(({ id }) => id === replaces)
  if (former) putBack(session, shell, former, loaded.value)
  else layNew(session, shell, project, loaded.value)
  return null
}

function layNew(session: Session, shell: Shell, project: Project, { name, picture, said }: Loaded): void {
  const { sha256, mime, widthPx, heightPx } = picture
  const { roomId } = session.view.getState()
  const room = project.rooms.find(({ id }) => id === roomId) ?? project.rooms[0]
  const bounds = boundsOf((room?.corners ?? []).map(({ xMm, yMm }) => [xMm, yMm] as const))
  const command = addUnderlay({
    name: freeName(name, project.underlays),
    ...{ sha256, mime, widthPx, heightPx },
    ...firstPlacement(picture, bounds),
    opacity: 0.6,
    isLocked: false,
    isShown: true,
  })
  const outcome = session.document.run(command)
  if (!outcome.ok) return
  const added = outcome.value.underlays.at(-1)
  session.view.setState({ thing: added ? { kind: 'underlay', id: added.id } : null, surfaceIds: [], cornerId: null })
  const text = `"${name}" lies under the plan, not to scale until calibrated: press Calibrate.`
  shell.state.setState({ notice: { kind: 'told', text, details: said } })
}

/** A picture that was missing on this machine: it lies where the former one lay, at its width. */
function putBack(session: Session, shell: Shell, former: Underlay, { picture, said }: Loaded): void {
  if (picture.sha256 === former.sha256) {
    shell.state.setState({ notice: { kind: 'told', text: `"${former.name}" is there again.`, details: said } })
    return
  }
  const { sha256, mime, widthPx, heightPx } = picture
  const isSameSize = widthPx === former.widthPx && heightPx === former.heightPx
  const patch = {
    ...{ sha256, mime, widthPx, heightPx },
    mmPerPx: (former.mmPerPx * former.widthPx) / widthPx,
    isCalibrated: isSameSize && former.isCalibrated === true,
  }
  if (!session.document.run(changeUnderlay(former.id, patch)).ok) return
  const text = `"${former.name}" lies where the former picture lay, but is not the same to the last pixel: check its scale.`
  shell.state.setState({ notice: { kind: 'told', text, details: said } })
}

function notLoaded(shell: Shell, name: string, why: string): void {
  const text = `"${name}" was not loaded: ${why}. The plan stays as it was.`
  shell.state.setState({ notice: { kind: 'refused', text, details: [] } })
}

/** A file's name without its ending, no longer than a name may be. */
function stem(fileName: string): string {
  const plain = fileName.replace(/\.(png|jpe?g|pdf)$/i, '').trim()
  return plain.slice(0, LONGEST_NAME - 20) || 'Picture'
}

function freeName(name: string, underlays: readonly Underlay[]): string {
  const taken = new Set(underlays.map((underlay) => underlay.name))
  if (!taken.has(name)) return name
  let n = 2
  while (taken.has(`${name} (${n})`)) n += 1
  return `${name} (${n})`
}
