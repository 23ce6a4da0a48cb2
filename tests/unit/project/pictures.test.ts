import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decodeBase64, encodeBase64 } from '#project/base64.ts'
import { isPdf, pictureHead } from '#project/pictureHead.ts'
import { byteText, checkPictures, embedPictures, takeOutPictures } from '#project/pictures.ts'
import type { Project, Underlay } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import { pngOf } from '../../support/pictures.ts'
import { CATALOGUE, openSample } from '../../support/samples.ts'

const PNG = new Uint8Array(pngOf(2, 3, Buffer.alloc(3 * 7)))
const sha256 = async (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

async function anUnderlay(patch: Partial<Underlay> = {}): Promise<Underlay> {
  return {
    id: 'underlay-1',
    name: 'Scan',
    sha256: await sha256(PNG),
    mime: 'image/png',
    widthPx: 2,
    heightPx: 3,
    xMm: 0,
    yMm: 0,
    mmPerPx: 4,
    angleDeg: 0,
    opacity: 0.5,
    isLocked: false,
    isShown: true,
    ...patch,
  }
}

async function aTracedProject(patch: Partial<Underlay> = {}): Promise<Project> {
  return { ...openSample('garage'), underlays: [await anUnderlay(patch)] }
}

describe('base64', () => {
  it('is what the platform writes, and reads back, for any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        const text = encodeBase64(bytes)
        expect(text).toBe(Buffer.from(bytes).toString('base64'))
        const back = decodeBase64(text)
        expect(back.ok && [...back.value]).toEqual([...bytes])
      }),
    )
  })

  it('goes over its pieces without a seam', () => {
    const bytes = Uint8Array.from({ length: 40_001 }, (_, i) => (i * 31) % 256)
    expect(encodeBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'))
  })

  it('refuses a strange letter and a text broken off', () => {
    expect(decodeBase64('AA*A')).toEqual({ ok: false, error: 'letter 3 does not belong in it' })
    expect(decodeBase64('AAé=')).toEqual({ ok: false, error: 'letter 3 does not belong in it' })
    expect(decodeBase64('AAA').ok).toBe(false)
  })
})

describe('the first bytes of a picture', () => {
  it('say its kind and size', () => {
    expect(pictureHead(PNG)).toEqual({ mime: 'image/png', widthPx: 2, heightPx: 3 })
    // Start, an application segment of 2 + 2 bytes, then a baseline frame of 480 by 640.
    const jpeg = [0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xc0, 0, 17, 8, 0x01, 0xe0, 0x02, 0x80, 3, 0, 0]
    expect(pictureHead(Uint8Array.from(jpeg))).toEqual({ mime: 'image/jpeg', widthPx: 640, heightPx: 480 })
    expect(pictureHead(PNG.subarray(0, 20))).toBeNull()
    expect(pictureHead(Uint8Array.from([0xff, 0xd8, 0xff]))).toBeNull()
    expect(pictureHead(Uint8Array.from(Buffer.from('hello, this is text only')))).toBeNull()
  })

  it('tell a PDF, also behind other bytes', () => {
    expect(isPdf(Uint8Array.from(Buffer.from('%PDF-1.7 ...')))).toBe(true)
    expect(isPdf(Uint8Array.from(Buffer.from('\n\n%PDF-1.7')))).toBe(true)
    expect(isPdf(PNG)).toBe(false)
  })
})

describe('pictures in a project file', () => {
  it('embedded, written, read and taken out again, everything is as before', async () => {
    const project = await aTracedProject({ isCalibrated: true })
    const hash = await sha256(PNG)
    const { project: whole, missing } = embedPictures(project, new Map([[hash, { bytes: PNG }]]))
    expect(missing).toEqual([])
    const read = readProject(writeProject(whole), CATALOGUE)
    if (!read.ok) throw new Error(read.error.message)
    const taken = takeOutPictures(read.value.project)
    expect(taken.project).toEqual(project)
    expect(await checkPictures(taken.embedded, sha256)).toEqual({
      pictures: [{ sha256: hash, mime: 'image/png', bytes: PNG }],
      problems: [],
    })
  })

  it('a picture that is not at hand is named, and the project is saved without it', async () => {
    const project = await aTracedProject()
    const { project: whole, missing } = embedPictures(project, new Map())
    expect(whole).toEqual(project)
    expect(missing.map(({ name }) => name)).toEqual(['Scan'])
  })

  it.each<[string, Partial<Underlay>, RegExp]>([
    ['another picture', { sha256: '0'.repeat(64) }, /checksum differs/],
    ['another size', { widthPx: 3 }, /is 2 by 3 pixels/],
    ['another kind', { mime: 'image/jpeg' }, /no PNG or JPEG as it says/],
    ['broken text', { dataBase64: 'A*==' }, /cannot be read from the file/],
  ])('%s than the file says is left out with a sentence', async (_, patch, says) => {
    const underlay = await anUnderlay({ dataBase64: encodeBase64(PNG), ...patch })
    const { pictures, problems } = await checkPictures([underlay], sha256)
    expect(pictures).toEqual([])
    expect(problems).toEqual([expect.stringMatching(says)])
    expect(problems[0]).toMatch(/^The picture "Scan" .*; it was left out\. Load it again under Trace\.$/)
  })

  it('sizes read plainly', () => {
    expect([byteText(400), byteText(56_400), byteText(12_340_000)]).toEqual(['1 kB', '56 kB', '12.3 MB'])
  })
})
