import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, nextFrame, openHands } from '../support/hands.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'

/** What the openings are and what comes through them, said by a hand and by keys. */
describe('the sound of openings', () => {
  let server: PageServer
  let browser: Browser
  let context: BrowserContext
  let hands: Hands
  let page: Page

  beforeAll(async () => {
    server = await servePage()
    browser = await launchBrowser()
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
  })
  beforeEach(async () => {
    await context?.close()
  })

  const open = async (options: Parameters<Browser['newContext']>[0]) => {
    context = await browser.newContext(options)
    hands = await openHands(context, server.address)
    page = hands.page
  }
  const wide = () => open({ viewport: { width: 1440, height: 900 } })
  const benchText = async () => (await hands.bench.innerText()).replace(/\s+/g, ' ')
  /** Opens the table and puts a new opening into it, of which nothing is said. */
  const addOpening = async (kind: 'door' | 'window') => {
    await hands.press('Openings', hands.bench)
    await hands.press(`Add a ${kind}`, hands.bench)
    await nextFrame(page)
  }
  const field = (label: string) => hands.bench.getByLabel(label, { exact: true })

  it('is not known until it is said what stands there, and then has a range and its octaves', async () => {
    await wide()
    await addOpening('door')
    await expect.poll(benchText).toContain('Nobody has said what Door is, so nothing is known of its sound')
    await field('As it stands, Door').selectOption('door-solid-core')
    await expect.poll(benchText).toMatch(/STC 27, likely 21-33.*63 Hz 16 dB \(assumed\).*125 Hz 22 dB.*4000 Hz 32 dB/)
    expect(await benchText()).not.toContain('Nobody has said what Door is')
    await field('Its seals, Door').selectOption('undercut')
    await expect.poll(benchText).toContain('STC 18')
    await page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(benchText).toContain('STC 27')
    await page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(benchText).toContain('Nobody has said what Door is')
    expect(hands.complaints).toEqual([])
  })

  it('of what a scheme puts in stands with its source and its cautions, and leaves what stands there alone', async () => {
    await wide()
    await addOpening('door')
    await field('As it stands, Door').selectOption('door-hollow-core')
    await field('In this scheme, Door').selectOption('pair-solid-core')
    await expect.poll(benchText).toMatch(/STC 5[12], likely/)
    expect(await benchText()).toContain('A fire door stays a fire door')
    await hands.press('All of it for Door', hands.bench)
    const text = await benchText()
    expect(text).toMatch(/Published 50, Harris .*Table 31\.6.*, read\./)
    expect(text).toContain('both have to open from inside without a key')
    await field('Second door').selectOption('door-metal-filled')
    await expect.poll(benchText).not.toContain('Published 50')
    await field('Seals of the second door').selectOption('worn')
    await expect.poll(benchText).toMatch(/Worn seals are counted as an open gap of 4 mm/)
    await field('This scheme puts in').selectOption('nothing')
    await expect.poll(benchText).toMatch(/STC 1\d, likely/)
    expect(hands.complaints).toEqual([])
  })

  it('of two panes follows their thickness and gap, and a gap that cannot be is said and not taken', async () => {
    await wide()
    await hands.press('mm')
    await addOpening('window')
    await hands.press('All of it for Window', hands.bench)
    await field('It is').selectOption('window-pane-pair')
    await expect.poll(benchText).toContain('Published 46')
    const gap = field('Air between the panes')
    await gap.fill('50')
    await gap.press('Enter')
    await expect.poll(benchText).not.toContain('Published 46')
    await gap.fill('900')
    await gap.press('Enter')
    await expect
      .poll(benchText)
      .toContain('The air between the panes of Window has to be 4 to 600 mm; it was kept as it was.')
    expect(await gap.inputValue()).toBe('900')
    await gap.press('Escape')
    await expect.poll(() => gap.inputValue()).toMatch(/^50/)
  })

  it('warns in full, in the ledger and beside the choice, where a scheme plugs a window people may escape through', async () => {
    await wide()
    await hands.press('mm')
    await addOpening('window')
    await hands.press('All of it for Window', hands.bench)
    const sill = field('Sill over the floor')
    await sill.fill('800')
    await sill.press('Enter')
    await field('It is').selectOption('window-sash-4')
    await field('This scheme puts in').selectOption('plug')
    await expect.poll(benchText).toContain('Never plug, fill in or fix shut a window people may have to escape through')
    await expect
      .poll(() => hands.ledger.innerText())
      .toContain(
        'Window: this scheme shuts it for good (plug). A window people may have to escape through must never be plugged',
      )
    await page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(() => hands.ledger.innerText()).not.toContain('this scheme shuts it for good')
  })

  it('can be said by keys alone', async () => {
    await wide()
    await addOpening('door')
    await field('As it stands, Door').focus()
    await hands.keys('ArrowDown')
    await expect.poll(benchText).not.toContain('Nobody has said what Door is')
    await hands.keys('Tab')
    expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toMatch(/-seal$/)
  })

  it('passes axe in light and in dark, and fits a phone with targets a finger can hit', async () => {
    await wide()
    await addOpening('door')
    await field('In this scheme, Door').selectOption('pair-solid-core')
    await hands.press('All of it for Door', hands.bench)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await axe()).toEqual([])
    }
    await context.close()
    await open({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true })
    await page.getByLabel('View of the bench').selectOption('openings')
    await nextFrame(page)
    const fields = await hands.bench.locator('.row-made select').all()
    expect(fields.length).toBeGreaterThan(3)
    for (const one of fields) expect((await one.boundingBox())!.height).toBeGreaterThanOrEqual(44)
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  })

  async function axe(): Promise<readonly string[]> {
    await page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
    return page.evaluate(async () => {
      const found = (window as unknown as { axe: { run(): Promise<{ violations: { id: string }[] }> } }).axe
      return (await found.run()).violations.map(({ id }) => id)
    })
  }
})
