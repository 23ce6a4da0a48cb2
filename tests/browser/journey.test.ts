import { readFileSync } from 'node:fs'
import type { Browser, BrowserContext, Download, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import { sheetDrawing } from '#drawing/sheet.ts'
import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, openHands } from '../support/hands.ts'
import { inkInLabels } from '../support/ink.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'
import { CATALOGUE } from '../support/samples.ts'

/** The main job, once, with mouse and keyboard: the steps follow one another on one page. */
describe('a room drawn, described, lined, compared and handed over', () => {
  let server: PageServer
  let browser: Browser
  let context: BrowserContext
  let hands: Hands
  let saved: Project

  beforeAll(async () => {
    server = await servePage()
    browser = await launchBrowser()
    context = await browser.newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true })
    hands = await openHands(context, server.address)
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
  })

  const ledgerText = async () => (await hands.ledger.innerText()).replace(/\s+/g, ' ')
  const download = async (button: string): Promise<Download> => {
    const [file] = await Promise.all([hands.page.waitForEvent('download'), hands.press(button)])
    return file
  }
  const bytesOf = async (file: Download): Promise<Buffer> => readFileSync(await file.path())
  const projectOf = async (): Promise<Project> => {
    const read = readProject((await bytesOf(await download('Save'))).toString('utf8'), CATALOGUE)
    if (!read.ok) throw new Error(read.error.message)
    return read.value.project
  }

  it('draws the outline corner by corner', async () => {
    await hands.press('mm')
    await hands.press('New room')
    await hands.fill('Clear height', '2500')
    await hands.press('Draw it corner by corner')
    for (const [x, y] of [
      [0.35, 0.7],
      [0.6, 0.7],
      [0.6, 0.25],
      [0.35, 0.25],
      [0.35, 0.7],
    ] as const) {
      await hands.clickPlan(x, y)
    }
    await expect.poll(ledgerText).toMatch(/Floor kept.*100\.0 %/)
    const { corners } = (await projectOf()).rooms[0] ?? { corners: [] }
    expect(corners).toHaveLength(4)
    for (const { xMm, yMm } of corners) expect([xMm % 10, yMm % 10].map(Math.abs)).toEqual([0, 0])
    const [a, b, c, d] = corners
    expect(a?.yMm).toBe(b?.yMm)
    expect(b?.xMm).toBe(c?.xMm)
    expect(c?.yMm).toBe(d?.yMm)
  })

  it('takes typed lengths and keeps the angles', async () => {
    await hands.press('Outline', hands.bench)
    for (const [wall, length] of [
      [1, '4 m'],
      [2, `16' 4 7/8"`],
    ] as const) {
      const field = hands.page.getByLabel(`Length of wall ${wall}`, { exact: true })
      await field.fill(length)
      await field.press('Enter')
    }
    await expect.poll(ledgerText).toContain('20.00 m²')
    const field = hands.page.getByLabel('Length of wall 1', { exact: true })
    await field.fill('0')
    await field.press('Enter')
    await expect.poll(() => hands.bench.innerText()).toMatch(/more than 0/)
    await field.press('Escape')
    expect(await ledgerText()).toContain('20.00 m²')
  })

  it('drags a corner with the numbers following, and takes it back', async () => {
    await hands.press('Fit')
    const before = await ledgerText()
    const first = (await projectOf()).rooms[0]?.corners[0]
    if (!first) throw new Error('no corner')
    const corner = await onScreen(hands.page, first.xMm, first.yMm)
    await hands.page.mouse.click(corner.x + 60, corner.y)
    await hands.page.mouse.move(corner.x, corner.y)
    await hands.page.mouse.down()
    await hands.page.mouse.move(corner.x - 40, corner.y + 30, { steps: 6 })
    await expect.poll(ledgerText).not.toBe(before)
    await hands.page.mouse.up()
    expect(await ledgerText()).not.toBe(before)
    await hands.page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(ledgerText).toContain('20.00 m²')
    await hands.page.keyboard.press('ControlOrMeta+Shift+Z')
    await expect.poll(ledgerText).not.toContain('20.00 m²')
    await hands.page.keyboard.press('ControlOrMeta+Z')
    await hands.page.keyboard.press('Escape')
  })

  it('says what stands there', async () => {
    await hands.press('All walls', hands.bench)
    await hands.press('As it stands', hands.bench)
    await hands.page.getByLabel('Existing construction').selectOption('stud-2x4-board-far-side')
    await hands.page.getByLabel('Behind it').selectOption('neighbour')
    await hands.page.getByLabel('Measured to').selectOption('finished-face')
    expect(await hands.page.getByLabel('Lining needed for fire').inputValue()).toBe('unknown')
    await hands.press('Ceiling', hands.bench)
    await hands.page.getByLabel('Lining needed for fire').selectOption('no')
    const room = (await projectOf()).rooms[0]
    expect(room?.walls.map((wall) => [wall.existing, wall.farSide, wall.lining?.thicknessMm])).toEqual(
      Array(4).fill(['stud-2x4-board-far-side', 'neighbour', 12.7]),
    )
    expect(room?.ceiling.lining?.neededForFire).toBe('no')
  })

  it('assigns assemblies, and shows at once what taking a lining off brings up', async () => {
    await hands.press('All walls', hands.bench)
    await hands.press('Choose', hands.bench)
    await hands.page.getByLabel('Assembly', { exact: true }).selectOption('W14')
    await hands.page.getByLabel('Remove the existing lining', { exact: true }).check()
    for (const word of ['fire separation', 'brace', 'cables, pipes', 'asbestos or lead']) {
      await expect.poll(() => hands.bench.innerText()).toContain(word)
    }
    // Each wall takes 146.05 mm less the 12.7 mm lining: 4000 x 5000 becomes 3733.3 x 4733.3.
    await expect.poll(ledgerText).toContain('17.67 m²')
    await hands.press('Ceiling', hands.bench)
    await hands.page.getByLabel('Assembly', { exact: true }).selectOption('C08')
    await hands.page.getByLabel('Remove the existing lining', { exact: true }).check()
    await hands.press('Floor', hands.bench)
    await hands.page.getByLabel('Assembly', { exact: true }).selectOption('F01')
    // 2500 - (196.85 - 12.7) - 12.7
    await expect.poll(ledgerText).toMatch(/Lowest clear height \+? ?2303 mm/)
    await expect.poll(ledgerText).toMatch(/STC \d+, likely \d+-\d+/)
    await expect.poll(ledgerText).toContain('doors, windows, leaks')
  })

  it('previews on pointing and builds on pressing a mark of the depth ruler', async () => {
    await hands.press('All walls', hands.bench)
    const before = await ledgerText()
    const mark = hands.bench.getByRole('radio', { name: /^clips \+ 2 boards/i }).first()
    await mark.hover()
    await expect.poll(ledgerText).not.toBe(before)
    await hands.page.mouse.move(5, 5)
    await expect.poll(ledgerText).toContain('17.67 m²')
  })

  it('compares with a second scheme that began as a copy', async () => {
    await hands.press('+ scheme')
    await hands.press('All walls', hands.bench)
    await hands.page.getByLabel('Assembly', { exact: true }).selectOption('W07')
    // 73.025 - 12.7 a side: 3879.35 x 4879.35
    await expect.poll(ledgerText).toContain('18.93 m²')
    await hands.press('Whole room', hands.bench)
    await hands.press('Compare', hands.bench)
    const compared = (await hands.bench.innerText()).replace(/\s+/g, ' ')
    expect(compared).toContain('17.67 m²')
    expect(compared).toContain('18.93 m²')
    expect(compared).toMatch(/keeps 1\.26 m² (more|less)/)
    expect((await projectOf()).schemes).toHaveLength(2)
  })

  it('hands over a sheet with ink in every label, at both densities', async () => {
    await hands.press('Hand over')
    await hands.page.getByLabel('Note on the sheet').fill('Invented demo data')
    await hands.page.getByLabel('Note on the sheet').press('Enter')
    saved = await projectOf()
    const room = saved.rooms[0]
    const scheme = saved.schemes[1]
    if (!room || !scheme) throw new Error('no scheme')
    const result = analyseScheme({ room, scheme, catalogue: CATALOGUE, quality: 'plot' })
    if (!result.ok) throw new Error(result.error.message)
    const { name, note, units } = saved
    const date = await hands.page.evaluate(() => {
      const now = new Date()
      return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((n) => String(n).padStart(2, '0')).join('-')
    })
    const drawing = sheetDrawing({ projectName: name, note, room, result: result.value, units, date, paper: 'a4' })
    for (const times of [2, 4]) {
      const png = await bytesOf(await download(`Save PNG ${times}x`))
      const ink = await inkInLabels(hands.page, png, drawing)
      expect(ink.blank).toEqual([])
      expect(ink.width).toBe(Math.round((drawing.widthMm / 25.4) * 96 * times))
      expect(ink.height).toBe(Math.round((drawing.heightMm / 25.4) * 96 * times))
    }
    const svg = (await bytesOf(await download('Save SVG'))).toString('utf8')
    expect(svg).toContain('18.93 m²')
    expect(svg).toContain('@font-face')
    expect((await bytesOf(await download('Save ledger CSV'))).toString('utf8')).toContain('floor area clear')
  })

  it('refuses a broken file with a sentence and keeps the open project', async () => {
    const before = await ledgerText()
    await openFile(hands.page, 'samples/broken/missing-fields.json')
    await expect.poll(() => hands.page.locator('body').innerText()).toContain('"units" is missing')
    expect(await ledgerText()).toBe(before)
  })

  it('opens what it saved, and one undo brings the former project back', async () => {
    await openFile(hands.page, 'samples/garage/project.json')
    await expect.poll(ledgerText).not.toContain('18.93 m²')
    await hands.page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(ledgerText).toContain('18.93 m²')
    expect(await projectOf()).toEqual(saved)
  })

  it('said nothing on the console', () => {
    expect(hands.complaints).toEqual([])
  })
})

/** Where a place of the plan (mm) stands on the screen: the plan says how it lies. */
async function onScreen(page: Page, xMm: number, yMm: number): Promise<{ x: number; y: number }> {
  const plan = page.getByRole('application')
  const [scale, x, y] = ((await plan.getAttribute('data-frame')) ?? '').split(' ').map(Number)
  const box = await plan.boundingBox()
  if (!scale || x === undefined || y === undefined || !box) throw new Error('the plan does not say how it lies')
  return { x: box.x + x + xMm * scale, y: box.y + y - yMm * scale }
}

async function openFile(page: Page, path: string): Promise<void> {
  await page.locator('input[type="file"]').setInputFiles(path)
}
