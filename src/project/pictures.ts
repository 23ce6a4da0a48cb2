import { decodeBase64, encodeBase64 } from '#project/base64.ts'
import { pictureHead } from '#project/pictureHead.ts'
import type { Project, Underlay } from '#project/project.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A picture's own bytes, beside the document and never in it. */
export interface Picture {
  readonly sha256: string
  readonly mime: Underlay['mime']
  readonly bytes: Uint8Array<ArrayBuffer>
}

/** The 64 hexadecimal digits of bytes: the browser's own, passed in. */
export type Sha256 = (bytes: Uint8Array<ArrayBuffer>) => Promise<string>

/** The project with the pictures that are at hand put into it, as its file carries them. */
export function embedPictures(
  project: Project,
  pictures: ReadonlyMap<string, Pick<Picture, 'bytes'>>,
): { readonly project: Project; readonly missing: readonly Underlay[] } {
  const texts = new Map<string, string>()
  const textOf = (sha256: string, bytes: Uint8Array): string => {
    const text = texts.get(sha256) ?? encodeBase64(bytes)
    texts.set(sha256, text)
    return text
  }
  const underlays = project.underlays.map((underlay) => {
    const picture = pictures.get(underlay.sha256)
    return picture ? { ...underlay, dataBase64: textOf(underlay.sha256, picture.bytes) } : underlay
  })
  return { project: { ...project, underlays }, missing: underlays.filter(({ dataBase64 }) => dataBase64 === undefined) }
}

/** The project as it is worked on, small, and the underlays that brought their picture along. */
export function takeOutPictures(project: Project): {
  readonly project: Project
  readonly embedded: readonly Underlay[]
} {
  const embedded = project.underlays.filter(({ dataBase64 }) => dataBase64 !== undefined)
  if (embedded.length === 0) return { project, embedded }
  const underlays = project.underlays.map(({ dataBase64: _, ...underlay }) => underlay)
  return { project: { ...project, underlays }, embedded }
}

/** The pictures that came with a file, each held to what the file says of it; a sentence for each that does not fit. */
export async function checkPictures(
  embedded: readonly Underlay[],
  sha256: Sha256,
): Promise<{ readonly pictures: readonly Picture[]; readonly problems: readonly string[] }> {
  const pictures: Picture[] = []
  const problems: string[] = []
  for (const underlay of embedded) {
    const read = await checkPicture(underlay, sha256)
    if (read.ok) pictures.push(read.value)
    else problems.push(`The picture "${underlay.name}" ${read.error}; it was left out. Load it again under Trace.`)
  }
  return { pictures, problems }
}

async function checkPicture(underlay: Underlay, sha256: Sha256): Promise<Result<Picture, string>> {
  const decoded = decodeBase64(underlay.dataBase64 ?? '')
  if (!decoded.ok) return fail(`cannot be read from the file (${decoded.error})`)
  const bytes = new Uint8Array(decoded.value)
  const head = pictureHead(bytes)
  if (head?.mime !== underlay.mime) return fail('in the file is no PNG or JPEG as it says')
  if (head.widthPx !== underlay.widthPx || head.heightPx !== underlay.heightPx) {
    return fail(`in the file is ${head.widthPx} by ${head.heightPx} pixels and not as large as it says`)
  }
  const digits = await sha256(bytes)
  if (digits !== underlay.sha256) return fail('in the file is not the one that was saved (its checksum differs)')
  return ok({ sha256: digits, mime: underlay.mime, bytes })
}

/** Content hashes of the pictures a project refers to. */
export function pictureHashes(project: Pick<Project, 'underlays'>): readonly string[] {
  return [...new Set(project.underlays.map(({ sha256 }) => sha256))]
}

/** 12.3 MB; below a tenth, in kB. */
export function byteText(bytes: number): string {
  return bytes < 100_000 ? `${Math.max(1, Math.round(bytes / 1000))} kB` : `${Math.round(bytes / 100_000) / 10} MB`
}
