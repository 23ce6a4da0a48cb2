import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, nextFrame, openHands } from '../support/hands.ts'
import { tabTo, typeInto } from '../support/keyboard.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'
import { dragTo, onPage } from '../support/planPlace.ts'

/** Air, ducts, leaks and silencer boxes on the garage that the page opens with. */
describe('air and leaks', () => {
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

  const open = async (options: Parameters<Browser['newContext']>[0] = { viewport: { width: 1440, height: 900 } }) => {
    context = await browser.newContext(options)
    hands = await openHands(context, server.address)
    page = hands.page
  }
  const openAir = async () => {
    await open()
    await hands.press('mm')
    await hands.press('Air and leaks', hands.bench)
    await nextFrame(page)
  }
  const part = (name: string) => hands.bench.getByRole('region', { name })
  const textOf = async (name: string) => (await part(name).innerText()).replace(/\s+/g, ' ')
  const field = (label: string) => hands.bench.getByLabel(label, { exact: true })
  const fill = async (label: string, text: string) => {
    await field(label).fill(text)
    await field(label).press('Enter')
    await nextFrame(page)
  }
  const floorKept = () => hands.ledger.locator('[data-line="Floor kept"] .ledger-figure').innerText()
  const undo = () => page.keyboard.press('ControlOrMeta+Z')

  it('says what air the people need and how fast a duct carries it, and what would do instead', async () => {
    await openAir()
    await fill('People in the room at once', '4')
    expect(await textOf('Air for people')).toMatch(
      /4 people and \d+\.\d\d m² .* need 2\d\.\d L\/s \(\d+ cfm\) of outdoor air/,
    )
    const supply = hands.bench.getByRole('article', { name: 'Supply duct', exact: true })
    expect(await supply.innerText()).toContain('at most 1.8 m/s (350 ft/min) for NC-25')
    await supply.getByLabel('Clear diameter').fill('100')
    await supply.getByLabel('Clear diameter').press('Enter')
    await expect
      .poll(() => supply.innerText())
      .toMatch(/faster than 1\.8 m\/s .* a round duct of 1[34]0 mm \(.*\) would be slow enough/)
    await undo()
    await expect.poll(() => supply.innerText()).not.toContain('would be slow enough')
    // What cannot be stays in its field with a sentence, and nothing else is lost.
    await fill('People in the room at once', '2.5')
    await expect.poll(() => textOf('Air for people')).toContain('People have to be a whole number from 0 to 200')
    expect(await field('People in the room at once').inputValue()).toBe('2.5')
    expect(await textOf('Air for people')).toMatch(/4 people/)
    expect(hands.complaints).toEqual([])
  })

  it('shows what the scheme does to a duct beside what stands there', async () => {
    await openAir()
    const supply = hands.bench.getByRole('article', { name: 'Supply duct', exact: true })
    const rows = supply.locator('.duct-loss tbody tr')
    const figures = async (row: number) => (await rows.nth(row).locator('td').allInnerTexts()).map(Number)
    const scheme = 'In C independent room, Supply duct'
    await supply.getByLabel(scheme).selectOption('stands')
    await expect.poll(() => rows.count()).toBe(2)
    await supply.getByLabel(scheme).selectOption('changed')
    await supply.getByLabel(/^Lining on all sides, Supply duct, What C/).fill('50')
    await supply.getByLabel(/^Lining on all sides, Supply duct, What C/).press('Enter')
    await expect.poll(() => rows.count()).toBe(3)
    const [stands, lined] = [await figures(0), await figures(1)]
    expect(lined[4]!).toBeGreaterThan(stands[4]! + 10)
    await supply.getByLabel(/^Silencer, Supply duct, What C/).selectOption('Lined box with a fold')
    await expect.poll(async () => (await figures(1))[3]! - lined[3]!).toBe(20)
    expect(await supply.innerText()).toContain('memory')
    expect(await figures(0)).toEqual(stands)
    await supply.getByLabel(/^Lined over, Supply duct, What C/).fill('9000')
    await supply.getByLabel(/^Lined over, Supply duct, What C/).press('Enter')
    await expect.poll(() => supply.innerText()).toMatch(/9000 mm of it would be lined and it is only \d+ mm long/)
    expect(hands.complaints).toEqual([])
  })

  it('a silencer box takes floor where it stands and height where it hangs, on the plan, in the table and in one scheme', async () => {
    await openAir()
    const before = await floorKept()
    await hands.press('Add a silencer box', hands.bench)
    await expect.poll(floorKept).not.toBe(before)
    await hands.ledger.locator('[data-line="Floor kept"] > summary').click()
    expect((await hands.ledger.innerText()).replace(/\s+/g, ' ')).toContain('Silencer boxes that stand 0.50 m²')
    await fill('x of its middle, Silencer box', '1500')
    await fill('y of its middle, Silencer box', '3000')
    await dragTo(page, hands.plan, [1500, 3000], [1500, 3500])
    await page.mouse.up()
    await nextFrame(page)
    // A thing in the hand shows all of it.
    await expect.poll(() => field('y of its middle').inputValue()).toBe('3500 mm')
    await hands.plan.focus()
    await hands.keys('ArrowUp', 'r')
    await expect.poll(() => field('y of its middle').inputValue()).toBe('3510 mm')
    await expect.poll(() => field('Turned, counter-clockwise').inputValue()).toMatch(/^15/)
    await hands.press('Air and leaks', hands.bench)
    // Into the lining of Wall 4: said, not refused.
    await fill('x of its middle, Silencer box', '300')
    await expect
      .poll(() => textOf('Silencer boxes'))
      .toContain("Silencer box stands in Wall 4's lining: move or turn it.")
    await undo()
    await field('It stands or hangs, Silencer box').selectOption('hangs')
    await expect.poll(floorKept).toBe(before)
    expect(await textOf('Silencer boxes')).toMatch(/Clear height under it: 20\d\d mm/)
    await hands.press('B clips')
    await nextFrame(page)
    expect(await textOf('Silencer boxes')).toContain('No box is placed in B clips yet')
    expect(hands.complaints).toEqual([])
  })

  it('is put down from the plan and taken out by Delete', async () => {
    await open()
    await hands.press('Add', hands.planPlace)
    await hands.press('Silencer box', hands.planPlace)
    const at = await onPage(hands.plan, [1800, 4000])
    await page.mouse.move(...at)
    await nextFrame(page)
    await page.mouse.click(...at)
    await expect.poll(() => hands.bench.getByRole('heading', { level: 2 }).innerText()).toBe('Silencer box')
    expect(await hands.bench.innerText()).toContain('It takes of the floor')
    await hands.plan.focus()
    await hands.keys('Delete')
    await expect.poll(() => hands.bench.getByRole('heading', { level: 2 }).innerText()).not.toBe('Silencer box')
    expect(hands.complaints).toEqual([])
  })

  it('airtightness says what it means and caps, and a gap or hole typed for one surface goes before it', async () => {
    await openAir()
    expect(await textOf('Airtightness')).toMatch(
      /Poor .* Caps Wall \d near \d\d dB at 500 Hz, however good it is; by itself it is rated STC \d\d/,
    )
    await hands.bench.getByRole('radio', { name: /^Sealed/ }).check()
    await expect.poll(() => textOf('Leaks by surface')).toMatch(/Wall 1 .*no cap: closed/)
    await field('Gap at the edges of Wall 2').selectOption('typed')
    await fill('Width of the gap, Wall 2', '3')
    await expect
      .poll(() =>
        part('Leaks by surface')
          .getByRole('row', { name: /^Wall 2/ })
          .innerText(),
      )
      .toMatch(/near \d\d dB/)
    await hands.press('Add a hole in Wall 3', hands.bench)
    await expect.poll(() => textOf('Leaks by surface')).toMatch(/Caps Wall 3 at 500 Hz near \d\d dB/)
    await fill('How many, Cable hole in Wall 3', '0')
    await expect.poll(() => textOf('Leaks by surface')).toContain('has to be a whole number from 1 to 1000')
    await undo()
    await expect.poll(() => textOf('Leaks by surface')).not.toContain('Cable hole')
    expect(hands.complaints).toEqual([])
  })

  it('has every caution on air in full beside the choice', async () => {
    await openAir()
    const cautions = await textOf('Before the room is closed up')
    expect(cautions).toContain('A sealed room needs fresh air for the people in it')
    expect(cautions).toContain('carbon monoxide')
    expect(cautions).toContain('never from a garage where cars run')
    expect(await part('Before the room is closed up').locator('details').count()).toBe(0)
  })

  it('is reached and changed by keys alone', async () => {
    await open()
    await tabTo(page, 'Air and leaks')
    await page.keyboard.press('Enter')
    await typeInto(page, 'People in the room at once', '3')
    await expect.poll(() => textOf('Air for people')).toMatch(/3 people/)
    await tabTo(page, 'Add a silencer box')
    await page.keyboard.press('Enter')
    await typeInto(page, 'Height, Silencer box', `1'-2"`)
    await expect.poll(() => field('Height, Silencer box').inputValue()).toBe(`1'-2"`)
    expect(hands.complaints).toEqual([])
  })

  it.each([
    [1440, 900, 'light'],
    [1024, 768, 'dark'],
    [390, 844, 'light'],
  ] as const)('passes axe and stays inside the page at %i by %i, %s', async (width, height, colorScheme) => {
    await open({ viewport: { width, height }, colorScheme, hasTouch: width < 500 })
    const tab = hands.bench.getByRole('button', { name: 'Air and leaks', exact: true })
    if (await tab.isVisible()) await tab.click()
    else await field('View of the bench').selectOption({ label: 'Air and leaks' })
    await hands.press('Add a silencer box', hands.bench)
    await nextFrame(page)
    expect(await axe(page)).toEqual([])
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0)
    expect(hands.complaints).toEqual([])
  })
})

async function axe(page: Page): Promise<readonly string[]> {
  await page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
  return page.evaluate(async () => {
    const { axe: checker } = window as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
    }
    const { violations } = await checker.run()
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)
  })
}
