import { readFileSync } from 'node:fs'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, nextFrame, openHands } from '../support/hands.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'
import { type Colour, pdfOf, planPng } from '../support/pictures.ts'
import { CATALOGUE } from '../support/samples.ts'

/** An L-shaped room of our own invention, mm, y up; the truth that is traced. */
const ROOM: readonly (readonly [number, number])[] = [
  [0, 0],
  [6430, 0],
  [6430, 2870],
  [4115, 2870],
  [4115, 5260],
  [0, 5260],
]
/** One colour a corner, so that an eye that only sees the screen finds it. */
const COLOURS: readonly Colour[] = [
  [255, 0, 0],
  [0, 160, 0],
  [0, 0, 255],
  [255, 0, 255],
  [0, 190, 255],
  [255, 140, 0],
]
/** The scan lies askew on the glass, and its scale is nobody's: 4.31 mm to a pixel. */
const ASKEW_DEG = 7.3
const MM_PER_PX = 4.31
const WIDTH = 1900
const HEIGHT = 1700

/** Where a corner of the room falls on the scan, pixels, y down. */
function onScan([x, y]: readonly [number, number]): readonly [number, number] {
  const turn = (ASKEW_DEG * Math.PI) / 180
  const [right, up] = [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)]
  return [330 + right / MM_PER_PX, HEIGHT - 180 - up / MM_PER_PX]
}

const SCAN = planPng({
  width: WIDTH,
  height: HEIGHT,
  walls: ROOM.map(onScan),
  wallPx: 6,
  dots: ROOM.map((corner, i) => ({ at: onScan(corner), colour: COLOURS[i]! })),
  dotPx: 18,
})

const LINES = '2 w 100 100 m 600 100 l 600 400 l 100 400 l s BT /F1 24 Tf 200 250 Td (Plan) Tj ET'

/** A machine with much else to do takes its time to decode, hash and paint. */
const SOON = { timeout: 20_000 }

const file = (name: string, buffer: Buffer) => ({ name, mimeType: '', buffer })

async function choose(page: Page, name: string, buffer: Buffer): Promise<void> {
  if ((await page.getByRole('button', { name: 'Load picture' }).count()) === 0) {
    await page.getByRole('button', { name: 'Trace', exact: true }).click()
  }
  await page.getByLabel('Load a picture to trace').setInputFiles(file(name, buffer))
}

const told = (page: Page) => page.getByRole('main').getByRole('alert').first()

/** The middle of all that shows a colour on the plan, CSS px of the window: what an eye on the screen would press. */
async function look(hands: Hands, colour: Colour): Promise<readonly [number, number]> {
  const box = (await hands.plan.boundingBox())!
  await nextFrame(hands.page)
  const shot = (await hands.plan.screenshot()).toString('base64')
  const middle = await hands.page.evaluate(
    async ({ shot, colour }) => {
      const bytes = Uint8Array.from(atob(shot), (letter) => letter.charCodeAt(0))
      const image = await createImageBitmap(new Blob([bytes]))
      const pen = new OffscreenCanvas(image.width, image.height).getContext('2d')!
      pen.drawImage(image, 0, 0)
      const { data } = pen.getImageData(0, 0, image.width, image.height)
      let [sumX, sumY, count] = [0, 0, 0]
      for (let i = 0; i < data.length; i += 4) {
        const off = colour.reduce((most, part, k) => Math.max(most, Math.abs(data[i + k]! - part)), 0)
        if (off > 60) continue
        sumX += ((i / 4) % image.width) + 0.5
        sumY += Math.floor(i / 4 / image.width) + 0.5
        count += 1
      }
      return count === 0 ? null : ([sumX / count, sumY / count] as const)
    },
    { shot, colour },
  )
  if (!middle) throw new Error(`no dot of colour ${colour} is on the plan`)
  return [box.x + middle[0], box.y + middle[1]]
}

/** Turns the wheel over a corner until it is seen large, presses it, and goes away from the plan again. */
async function pressClosely(hands: Hands, colour: Colour, free: boolean): Promise<void> {
  const { page } = hands
  await page.mouse.move(2, 2)
  await hands.press('Fit')
  let at = await look(hands, colour)
  for (const notches of [-900, -700]) {
    await page.mouse.move(...at)
    await page.mouse.wheel(0, notches)
    await page.mouse.move(2, 2)
    at = await look(hands, colour)
  }
  if (free) await page.keyboard.down('Alt')
  await page.mouse.move(...at)
  await nextFrame(page)
  await page.mouse.down()
  await page.mouse.up()
  if (free) await page.keyboard.up('Alt')
}

async function savedProject(page: Page): Promise<{ readonly project: Project; readonly text: string }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save', exact: true }).click(),
  ])
  const text = readFileSync(await download.path(), 'utf8')
  const read = readProject(text, CATALOGUE)
  if (!read.ok) throw new Error(read.error.message)
  return { project: read.value.project, text }
}

const keptTexts = (page: Page): Promise<string[]> =>
  page.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const opening = indexedDB.open('leafgap')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const all = opening.result.transaction('versions').objectStore('versions').getAll()
          all.onsuccess = () => resolve(all.result.map(({ text }) => text))
        }
      }),
  )

let server: PageServer
let browser: Browser

beforeAll(async () => {
  server = await servePage(process.env['LEAFGAP_APP'])
  browser = await launchBrowser()
})
afterAll(async () => {
  await browser?.close()
  await server?.close()
})

const newContext = () => browser.newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true })

describe('a scanned plan traced', () => {
  let context: BrowserContext
  let hands: Hands
  let saved: { readonly project: Project; readonly text: string }

  beforeAll(async () => {
    context = await newContext()
    hands = await openHands(context, server.address)
    await hands.press('mm')
  })

  it('loads through the file input and says that it is not to scale', async () => {
    await choose(hands.page, 'scan.png', SCAN)
    await expect.poll(() => told(hands.page).innerText(), SOON).toMatch(/"scan" lies under the plan, not to scale/)
    await hands.page.getByLabel('Fade').fill('0')
    await hands.page.getByLabel('Fade').blur()
    await look(hands, COLOURS[0]!)
  })

  it('refuses a calibration of zero length, and one that cannot be read, and changes nothing', async () => {
    await hands.press('Calibrate scan')
    await hands.page.getByText('Points by numbers').click()
    for (const point of ['First', 'Second']) {
      await hands.fill(`${point} point, right`, '1000')
      await hands.fill(`${point} point, up`, '1000')
    }
    await hands.fill('Real distance between them', '12 furlongs')
    await hands.press('Set the scale')
    const alert = hands.planPlace.getByRole('alert').filter({ hasText: /distance|points/ })
    await expect.poll(() => alert.innerText(), SOON).toMatch(/The real distance cannot be read/)
    await hands.fill('Real distance between them', '3000')
    await hands.press('Set the scale')
    await expect.poll(() => alert.innerText(), SOON).toMatch(/The two points are the same place/)
    await hands.press('Leave')
    expect(await hands.page.getByText('not to scale yet').count()).toBe(1)
  })

  it('is calibrated by two presses and a typed length, drawn over, and true to 5 mm at every corner', async () => {
    await hands.press('Calibrate scan')
    await hands.page.getByText('Points by numbers').click()
    await pressClosely(hands, COLOURS[0]!, false)
    await pressClosely(hands, COLOURS[1]!, false)
    const pressed = async (axis: string) =>
      Number.parseFloat(await hands.page.getByLabel(`First point, ${axis}`).inputValue())
    const origin = [await pressed('right'), await pressed('up')] as const
    await hands.page.getByLabel('Turn the two level or plumb').check()
    await hands.fill('Real distance between them', '6.43 m')
    await hands.press('Set the scale')
    await expect.poll(() => hands.page.getByText(/^to scale, 1 pixel 4.3 mm$/).count(), SOON).toBe(1)

    await hands.press('Draw room')
    for (const colour of COLOURS) await pressClosely(hands, colour, true)
    await hands.press('Close outline')
    await hands.untilSaved()
    saved = await savedProject(hands.page)
    const { corners } = saved.project.rooms[0]!
    const off = ROOM.map(([x, y]) =>
      Math.min(...corners.map(({ xMm, yMm }) => Math.hypot(xMm - origin[0] - x, yMm - origin[1] - y))),
    )
    expect(corners).toHaveLength(ROOM.length)
    expect(Math.max(...off), `off by ${off.map((mm) => mm.toFixed(1)).join(', ')} mm`).toBeLessThan(5)
  }, 180_000)

  it('carries its picture in the saved file, and in no version kept on the machine', async () => {
    const [underlay] = saved.project.underlays
    expect(underlay?.dataBase64?.length).toBeGreaterThan(1000)
    expect(Buffer.from(underlay!.dataBase64!, 'base64').subarray(0, 2)).toEqual(
      underlay!.mime === 'image/png' ? Buffer.from([0x89, 0x50]) : Buffer.from([0xff, 0xd8]),
    )
    const texts = await keptTexts(hands.page)
    expect(texts.at(-1)).toContain(underlay!.sha256)
    expect(texts.some((text) => text.includes('dataBase64'))).toBe(false)
  })

  it('is there after a reload', async () => {
    await hands.page.reload()
    await hands.untilSaved()
    await hands.press('Fit')
    await look(hands, COLOURS[2]!)
    const before = saved.project.underlays
    expect((await savedProject(hands.page)).project.underlays).toEqual(before)
  })

  it('is there where the saved file is opened on another machine', async () => {
    const other = await openHands(await newContext(), server.address)
    await other.page.getByLabel('Open a project file').setInputFiles(file('traced.json', Buffer.from(saved.text)))
    await other.page.getByRole('button', { name: 'Trace', exact: true }).click()
    await other.press('Fit')
    await look(other, COLOURS[3]!)
    expect((await savedProject(other.page)).project.underlays).toEqual(saved.project.underlays)
    expect(other.complaints).toEqual([])
  })

  it('a file whose picture was changed opens without it, and says so', async () => {
    const other = await openHands(await newContext(), server.address)
    const { sha256 } = saved.project.underlays[0]!
    const changed = saved.text.replace(
      sha256,
      sha256.replace(/^./, (digit) => (digit === '0' ? '1' : '0')),
    )
    await other.page.getByLabel('Open a project file').setInputFiles(file('changed.json', Buffer.from(changed)))
    await expect
      .poll(() => told(other.page).innerText(), SOON)
      .toMatch(/The picture "scan" in the file is not the one that was saved/)
    await other.press('Trace')
    await other.page.getByText(/The picture is not on this machine/).waitFor()
    await other.page.getByLabel('Load the missing picture').setInputFiles(file('scan.png', SCAN))
    await expect.poll(() => other.page.getByText(/The picture is not on this machine/).count(), SOON).toBe(0)
  })

  it('undo takes the loading back, redo brings the picture again', async () => {
    const other = await openHands(await newContext(), server.address)
    await choose(other.page, 'scan.png', SCAN)
    await other.page.getByRole('button', { name: 'Calibrate scan' }).waitFor()
    await other.page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(() => other.page.getByRole('button', { name: 'Calibrate scan' }).count(), SOON).toBe(0)
    await other.page.keyboard.press('ControlOrMeta+Y')
    await other.page.getByRole('button', { name: 'Calibrate scan' }).waitFor()
    expect(other.complaints).toEqual([])
  })

  it('said nothing on its console', () => expect(hands.complaints).toEqual([]))
})

describe('a PDF, and files that are none of these', () => {
  let hands: Hands
  beforeAll(async () => {
    hands = await openHands(await newContext(), server.address)
  })

  it('a page is loaded as a picture', async () => {
    await choose(hands.page, 'house.pdf', pdfOf([LINES]))
    await hands.page.getByRole('button', { name: 'Calibrate house, page 1' }).waitFor()
    const [underlay] = (await savedProject(hands.page)).project.underlays
    // 842 by 595 points at 300 to the inch.
    expect([underlay?.widthPx, underlay?.heightPx]).toEqual([3508, 2479])
  })

  it('of several pages the one asked for is loaded', async () => {
    await choose(hands.page, 'three.pdf', pdfOf([LINES, LINES, LINES]))
    await hands.page.getByText('three.pdf has 3 pages').waitFor()
    await hands.fill('Page to trace', '4')
    await hands.page.getByText('A whole number from 1 to 3 is needed.').waitFor()
    await hands.fill('Page to trace', '2')
    await hands.page.getByRole('img', { name: 'Page 2' }).waitFor()
    await hands.press('Load this page')
    await hands.page.getByRole('button', { name: 'Calibrate three, page 2' }).waitFor()
  })

  it.each(['drop', 'paste'])('a picture that comes by %s lies under the plan', async (way) => {
    const { page } = await openHands(await newContext(), server.address)
    await page.evaluate(
      ({ way, base64 }) => {
        const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
        const data = new DataTransfer()
        data.items.add(new File([bytes], 'brought.png', { type: 'image/png' }))
        const event =
          way === 'drop'
            ? new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true })
            : new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true })
        document.body.dispatchEvent(event)
      },
      { way, base64: SCAN.toString('base64') },
    )
    await page.getByRole('button', { name: 'Calibrate brought' }).waitFor()
  })

  it('a photo larger than is kept is brought down, and says so', async () => {
    const { page } = await openHands(await newContext(), server.address)
    await page.evaluate(async () => {
      const canvas = new OffscreenCanvas(5000, 2000)
      const pen = canvas.getContext('2d')!
      const shade = pen.createLinearGradient(0, 0, 5000, 2000)
      shade.addColorStop(0, '#224')
      shade.addColorStop(1, '#edc')
      pen.fillStyle = shade
      pen.fillRect(0, 0, 5000, 2000)
      const data = new DataTransfer()
      data.items.add(
        new File([await canvas.convertToBlob({ type: 'image/jpeg' })], 'photo.jpg', { type: 'image/jpeg' }),
      )
      document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true }))
    })
    await page.getByText('It was 5000 by 2000 pixels and is kept at 4000 by 1600: at most 4000 a side.').waitFor()
    const [underlay] = (await savedProject(page)).project.underlays
    expect(underlay).toMatchObject({ mime: 'image/jpeg', widthPx: 4000, heightPx: 1600 })
  })

  const huge = Buffer.from(SCAN)
  huge.writeUInt32BE(60_000, 16)
  huge.writeUInt32BE(60_000, 20)
  const encrypt = `/Encrypt << /Filter /Standard /V 1 /R 2 /P -4 /O <${'ab'.repeat(32)}> /U <${'cd'.repeat(32)}> >>`
  it.each([
    ['words.png', Buffer.from('not a picture at all'), /it is no PNG, JPEG or PDF/],
    ['empty.png', Buffer.alloc(0), /it is empty/],
    ['broken.png', SCAN.subarray(0, 3000), /cannot be decoded/],
    ['stub.jpg', Buffer.from([0xff, 0xd8, 0xff, 0xe0]), /it ends before it says how large it is/],
    ['huge.png', huge, /it is 60000 by 60000 pixels/],
    ['garbage.pdf', Buffer.from('%PDF-1.4\nnothing of the kind'), /no PDF that can be read/],
    ['pageless.pdf', pdfOf([]), /has no page/],
    ['secret.pdf', pdfOf([LINES], encrypt), /protected by a password/],
  ])('%s is refused with a sentence, and nothing changes', async (name, bytes, says) => {
    const before = (await savedProject(hands.page)).text
    await choose(hands.page, name, bytes)
    await expect.poll(() => told(hands.page).innerText(), SOON).toMatch(says)
    expect(await told(hands.page).innerText()).toContain(`"${name}" was not loaded`)
    expect((await savedProject(hands.page)).text).toBe(before)
  })

  it('said nothing on its console', () => expect(hands.complaints).toEqual([]))
})
