import { checkPictures, embedPictures, pictureHashes, takeOutPictures } from '#project/pictures.ts'
import type { FileProblem } from '#project/problems.ts'
import type { Project, Underlay } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import type { Session } from '#ui/session.ts'
import { type Notice, requestFit, type Shell } from '#ui/shell.ts'
import { placesOf } from '#ui/startSession.ts'

/** Problems listed before the rest is only counted. */
const LISTED_PROBLEMS = 5

/** Opens a project given as text; pictures that came in it are kept beside it first. Gives whether it was opened. */
export async function openText(
  session: Session,
  shell: Shell,
  source: { readonly name: string; readonly text: string },
): Promise<boolean> {
  const read = readProject(source.text, session.builtIn)
  if (!read.ok) {
    const notice = refused(source.name, `${read.error.message} The open project was kept.`)
    tell(shell, { ...notice, details: problemLines(read.error.problems) })
    return false
  }
  const { project, embedded } = takeOutPictures(read.value.project)
  const problems = embedded.length > 0 ? await keepPictures(shell, embedded) : []
  openProject(session, shell, project, `open ${source.name}`)
  const warnings = [...read.value.warnings, ...problems]
  if (warnings.length > 0) tell(shell, { kind: 'told', text: `"${source.name}" was opened.`, details: warnings })
  return true
}

/** Keeps the pictures that came with a file; a sentence for each that does not fit or cannot be kept. */
async function keepPictures({ pictures: store }: Shell, embedded: readonly Underlay[]): Promise<readonly string[]> {
  const { pictures, problems } = await checkPictures(embedded, store.sha256)
  const kept = await Promise.all(pictures.map((picture) => store.keep(picture)))
  const lost = kept.find((outcome) => !outcome.ok)
  if (!lost || lost.ok) return problems
  return [...problems, `This machine does not keep its pictures (${lost.error}): they go with the page.`]
}

/** The first few problems of a file, one line each; a single one is in the sentence already. */
export function problemLines(problems: readonly FileProblem[]): readonly string[] {
  return problems.length > 1 ? problems.slice(0, LISTED_PROBLEMS).map(({ message }) => message) : []
}

/** Puts a project on the page; one undo step brings the former one back. */
export function openProject(session: Session, shell: Shell, project: Project, label: string): void {
  session.document.open(project, label)
  session.view.setState({
    ...placesOf(project),
    surfaceIds: [],
    cornerId: null,
    thing: null,
    adding: null,
    tool: 'select',
    pointedAssembly: null,
    showsSheet: false,
    benchView: 'choose',
  })
  shell.state.setState({ drawer: null, notice: null, showsProjectVerbs: false })
  requestFit(shell)
}

/** Hands the project over as a file of its own, its pictures in it. */
export async function saveFile(session: Session, shell: Shell): Promise<void> {
  const { project } = session.document.store.getState()
  const hashes = pictureHashes(project)
  const pictures = hashes.length > 0 ? await shell.pictures.findAll(hashes) : new Map()
  const whole = embedPictures(project, pictures)
  download(`${fileStem(project.name)}.leafgap.json`, writeProject(whole.project), 'application/json')
  if (whole.missing.length === 0) return
  const names = whole.missing.map(({ name }) => `"${name}"`).join(', ')
  const text = `The file was saved without ${names}: not on this machine. Load it again under Trace, then save again.`
  tell(shell, { kind: 'told', text, details: [] })
}

/** A name that every file system takes. */
export function fileStem(name: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
  return plain.slice(0, 80) || 'room'
}

export function download(name: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}

export function refused(name: string, why: string): Notice {
  return { kind: 'refused', text: `"${name}" was not opened. ${why}`, details: [] }
}

export function tell(shell: Shell, notice: Notice): void {
  shell.state.setState({ notice })
}
