import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readProject } from '#project/read.ts'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, openHands } from '../support/hands.ts'
import { enter, focusedName, pick, tabTo, typeInto } from '../support/keyboard.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'
import { CATALOGUE } from '../support/samples.ts'

/** The main job once more, without ever touching the mouse: every step is Tab, Enter, arrows and typing. */
describe('the main job from the keyboard alone', () => {
  let server: PageServer
  let browser: Browser
  let hands: Hands
  let page: Page

  beforeAll(async () => {
    server = await servePage()
    browser = await launchBrowser()
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true })
    hands = await openHands(context, server.address)
    page = hands.page
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
  })

  const ledgerText = async () => (await hands.ledger.innerText()).replace(/\s+/g, ' ')

  it('draws an outline wall by wall', async () => {
    await enter(page, 'mm')
    await enter(page, 'New room')
    expect(await focusedName(page)).toMatch(/^Width/)
    await typeInto(page, 'Clear height', '2400')
    // Enter in a form starts a rectangle, which is refused while width and length are empty: nothing is lost.
    await enter(page, 'Draw it corner by corner')
    await expect.poll(() => focusedName(page)).toMatch(/^Length of wall/)
    for (const [length, direction] of [
      ['5000', 'right'],
      ['4000', 'up'],
      ['2000', 'left'],
      ['1000', 'down'],
      ['3000', 'left'],
    ] as const) {
      await page.keyboard.type(length)
      await page.keyboard.press('Tab')
      await page.keyboard.press('ControlOrMeta+A')
      await page.keyboard.type(direction)
      await page.keyboard.press('Enter')
      await expect.poll(() => focusedName(page)).toMatch(/^Length of wall/)
    }
    await enter(page, 'Close outline')
    await expect.poll(ledgerText).toContain('17.00 m²')
  })

  it('sets a length and the height by typing', async () => {
    await enter(page, 'Outline')
    await typeInto(page, 'Length of wall 1', '6 m')
    await expect.poll(ledgerText).toContain('21.00 m²')
    await page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(ledgerText).toContain('17.00 m²')
    await enter(page, 'Heights')
    await tabTo(page, /^Height of the room/)
    await page.keyboard.press('ControlOrMeta+A')
    await page.keyboard.type('2500')
    await page.keyboard.press('Enter')
    await expect.poll(ledgerText).toContain('2500 mm')
  })

  it('walks the plan with arrows, moves a corner by 10 mm and takes it back', async () => {
    await tabTo(page, /^Plan of/)
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Enter')
    await page.keyboard.press('ArrowLeft')
    await expect.poll(ledgerText).toMatch(/17\.0[1-5] m²/)
    await page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(ledgerText).toContain('17.00 m²')
    await page.keyboard.press('Escape')
  })

  it('assigns assemblies and removes linings', async () => {
    await enter(page, 'All walls')
    await pick(page, 'Assembly', 'Independent 2x4 studs with a small gap')
    await tabTo(page, 'Remove the existing lining')
    await page.keyboard.press('Space')
    await expect.poll(() => hands.bench.innerText()).toContain('asbestos or lead')
    // 17 m² less 133.35 mm along 18 m of wall, five convex corners and one reflex: 17 - 2.4003 + 4 x 0.01778
    await expect.poll(ledgerText).toContain('14.67 m²')
  })

  it('walks the depth ruler with arrow keys', async () => {
    await tabTo(page, /STC \d+, likely/)
    const before = await ledgerText()
    await page.keyboard.press('ArrowRight')
    await expect.poll(ledgerText).not.toBe(before)
    await page.keyboard.press('Escape')
    await expect.poll(ledgerText).toContain('14.67 m²')
  })

  it('copies the scheme and compares', async () => {
    await enter(page, '+ scheme')
    await enter(page, 'All walls')
    await pick(page, 'Assembly', 'Sound clips and channel on the studs, two')
    await expect.poll(ledgerText).not.toContain('14.67 m²')
    await enter(page, 'Whole room')
    await enter(page, 'Compare')
    await expect
      .poll(async () => (await hands.bench.innerText()).replace(/\s+/g, ' '))
      .toMatch(/keeps 1\.26 m² (more|less)/)
  })

  it('hands over and saves', async () => {
    await enter(page, 'Hand over')
    await tabTo(page, 'Save PNG 2x')
    const [png] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')])
    expect(
      readFileSync(await png.path())
        .subarray(1, 4)
        .toString(),
    ).toBe('PNG')
    await tabTo(page, 'Save')
    const [file] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')])
    const read = readProject(readFileSync(await file.path(), 'utf8'), CATALOGUE)
    expect(read.ok && read.value.project.schemes).toHaveLength(2)
    expect(hands.complaints).toEqual([])
  })
})
