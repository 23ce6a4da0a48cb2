import { readFileSync } from 'node:fs'
import type { Browser, BrowserContext } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, nextFrame, openHands } from '../support/hands.ts'
import { enter, focusedName, tabTo } from '../support/keyboard.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'

let server: PageServer
let browser: Browser
let context: BrowserContext
let hands: Hands

beforeAll(async () => {
  server = await servePage()
  browser = await launchBrowser()
})
afterAll(async () => {
  await browser?.close()
  await server?.close()
})
afterEach(async () => {
  const { complaints } = hands
  await context.close()
  expect(complaints).toEqual([])
})

async function open(options: Parameters<Browser['newContext']>[0] = { viewport: { width: 1440, height: 900 } }) {
  context = await browser.newContext(options)
  hands = await openHands(context, server.address)
}

const SOURCE = {
  id: 'source-1',
  name: 'Kit',
  preset: null,
  levelsDb: { 63: 100, 125: 103, 250: 101, 500: 100, 1000: 98, 2000: 97, 4000: 95 },
  place: 'room-average',
  basis: 'memory',
  sdDb: 3,
  shakes: true,
}
const RECEIVER = {
  id: 'receiver-1',
  name: 'Bedroom window',
  room: 'room-1',
  source: 'source-1',
  place: { kind: 'outdoors', distanceMm: 9000, atFacade: false },
  through: [{ surface: 'wall-2' }, { surface: 'ceiling-1' }],
  limit: { kind: 'NC', index: 33 },
  limitPreset: null,
  hasBeat: false,
  backgroundNc: 25,
  junction: 'none',
  linedBeyond: 'none',
  measured: [],
}
const GARDEN = { ...RECEIVER, id: 'receiver-2', name: 'Garden', limit: { kind: 'dBA', levelDb: 55 } }

/** The garage with a kit in it, a bedroom window and a garden; what its side door is, is said or not. */
function garage(door: { type: string; seal: string } | null): Buffer {
  const project = JSON.parse(readFileSync('samples/garage/project.json', 'utf8'))
  const [room] = project.rooms
  delete room.ducts
  for (const opening of room.openings) {
    delete opening.made
    if (door && opening.wall === 'wall-2') opening.made = door
  }
  for (const scheme of project.schemes) {
    for (const key of ['openings', 'ducts', 'boxes', 'leaks', 'airtightness']) delete scheme[key]
  }
  return Buffer.from(JSON.stringify({ ...project, sources: [SOURCE], receivers: [RECEIVER, GARDEN] }))
}

async function openGarage(door: Parameters<typeof garage>[0], options?: Parameters<typeof open>[0]) {
  await open(options)
  const file = { name: 'garage.json', mimeType: 'application/json', buffer: garage(door) }
  await hands.page.getByLabel('Open a project file').setInputFiles(file)
  await hands.ledger.getByText('Quiet for Bedroom window').waitFor()
  await show('Paths')
}

async function show(view: string) {
  const tab = hands.bench.getByRole('button', { name: view, exact: true })
  if (await tab.isVisible()) await tab.click()
  else await hands.bench.getByRole('combobox', { name: 'View of the bench' }).selectOption({ label: view })
}

const line = (name: string) => hands.ledger.locator(`[data-line^="${name}"]`)
const numberIn = (text: string) => Number(/[−+]?[\d.]+/.exec(text)?.[0]?.replace('−', '-') ?? Number.NaN)
const figure = async (name: string) => numberIn(await line(name).locator('.ledger-figure').innerText())
const margin = () => figure('Quiet for')
const floor = () => figure('Floor kept')
const ledger = async () => (await hands.ledger.innerText()).replace(/\s+/g, ' ')
const bench = async () => (await hands.bench.innerText()).replace(/\s+/g, ' ')
const steps = () => hands.bench.getByRole('region', { name: 'What next' }).getByRole('listitem')

describe('the answer on the page', () => {
  it('is set, fails, is bettered by one press of what next, and comes back by one Undo', async () => {
    await open()
    await hands.press('mm')
    await hands.press('New room')
    await hands.fill('Width, across the page', '5000')
    await hands.fill('Length, up the page', '4000')
    await hands.press('Start this room')
    expect(await ledger()).toContain('Quiet, lowest rated surface')
    await hands.press('Set who must not hear it', hands.ledger)
    await hands.bench.getByLabel('A source from the list').selectOption('drum-kit-hard')
    await hands.press('Add it', hands.bench)
    await hands.press('Add a point outdoors', hands.bench)
    await expect.poll(margin).toBeLessThan(0)
    await expect.poll(ledger).toMatch(/Quiet for .*−\d+ dB (open|does not meet)/)
    expect(await ledger()).toContain('Structure-borne sound and bass below 50 Hz are not in this figure')
    const [failing, whole] = [await margin(), await floor()]

    await hands.press('Paths', hands.bench)
    const step = steps()
      .filter({ hasText: /takes [\d.]+ m² · [\d.]+ ft² of floor/ })
      .first()
    await step.waitFor()
    const promised = numberIn(await step.innerText())
    expect(promised).toBeGreaterThan(0)
    const press = step.getByRole('button', { name: /^Do it/ })
    // Pointing shows what it would be, and leaves nothing behind.
    await press.hover()
    await expect.poll(floor).toBeLessThan(whole)
    expect(await ledger()).toContain('if chosen')
    await hands.page.mouse.move(5, 5)
    await expect.poll(floor).toBe(whole)

    await press.click()
    await hands.page.mouse.move(5, 5)
    await expect.poll(margin).toBeGreaterThan(failing)
    await expect.poll(floor).toBeLessThan(whole)
    expect(await ledger()).toContain(`+${promised} dB, from −${-failing} dB`)

    await hands.page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(margin).toBe(failing)
    await expect.poll(floor).toBe(whole)
  })

  it('is tried from the ledger with one press, and undone with one', async () => {
    await openGarage({ type: 'door-hollow-core', seal: 'worn' })
    const before = await margin()
    await hands.press('Try it', hands.ledger)
    await expect.poll(margin).toBeGreaterThan(before)
    await hands.page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(margin).toBe(before)
  })

  it('names the weakest path in a sentence, in bars and in a table, at the octave that decides and overall', async () => {
    await openGarage({ type: 'door-hollow-core', seal: 'worn' })
    const shares = hands.bench.getByRole('region', { name: 'What carries it' }).getByRole('row')
    const weakest = (await shares.nth(1).innerText()).trim()
    const name = weakest.split(/\s{2,}|\t|\n/)[0] ?? ''
    expect((await bench()).toLowerCase()).toContain(`the ${name.toLowerCase()} carries`)
    await expect.poll(() => line('Weakest path').innerText()).toContain(name)
    await hands.press('Overall', hands.bench)
    await expect.poll(async () => (await shares.allInnerTexts()).join(' ')).not.toContain(weakest)
    await hands.bench.getByText('Every path in a table').click()
    const rows = hands.bench.getByRole('table', { name: 'Every path to Bedroom window' }).getByRole('row')
    const all = (await rows.allInnerTexts()).slice(1)
    expect(all.length).toBeGreaterThan(4)
    for (const row of all) expect(row).toMatch(/calculated|published|assumed|typed/)
    await hands.bench
      .getByRole('region', { name: 'What carries it' })
      .getByRole('button', { name, exact: true })
      .click()
    await expect.poll(bench).not.toContain('What next')
  })

  it('lets every octave be read by pointing, by arrow keys and in a table', async () => {
    await openGarage({ type: 'door-solid-core', seal: 'good' })
    const reader = hands.bench.getByRole('slider', { name: 'Level at Bedroom window, octave read' })
    await reader.focus()
    await hands.keys('Home')
    expect(await reader.getAttribute('aria-valuetext')).toMatch(
      /^63 Hz: \d+ dB at the receiver, likely \d+ to \d+ dB; limit \d+ dB; source 100 dB$/,
    )
    await hands.keys('ArrowRight', 'ArrowRight')
    const read = await reader.getAttribute('aria-valuetext')
    expect(read).toMatch(/^250 Hz/)
    await expect.poll(bench).toContain(read)
    const box = await reader.boundingBox()
    if (!box) throw new Error('the chart is not on the page')
    await hands.page.mouse.move(box.x + box.width - 20, box.y + 60)
    await expect.poll(bench).toContain('4000 Hz:')
    await hands.bench.getByText('Levels in a table').click()
    const rows = hands.bench.getByRole('table', { name: 'Level at Bedroom window by octave' }).getByRole('row')
    expect(await rows.count()).toBe(8)
  })

  it('goes to another receiver, whose weighted limit has no octave of its own', async () => {
    await openGarage({ type: 'door-solid-core', seal: 'good' })
    await hands.bench.getByLabel('Heard by').selectOption('receiver-2')
    await expect.poll(bench).toContain('limit 55 dBA')
    expect(await bench()).toMatch(/in dBA, where \d+ Hz counts most/)
    expect(await ledger()).toContain('Quiet for Garden')
    // The other one is not folded away, and one press brings it back.
    await hands.press(/^Bedroom window/, hands.ledger)
    await expect.poll(ledger).toContain('Quiet for Bedroom window')
  })

  it('says of a door nobody has described that it is not known, and leads to it', async () => {
    await openGarage(null)
    await expect.poll(ledger).toMatch(/Quiet for Bedroom window \+? ?Not known/)
    expect(await ledger()).not.toContain('Weakest path')
    await hands.bench.getByRole('region', { name: 'Not known' }).getByRole('button').first().click()
    await expect.poll(bench).toContain('Side door')
    await expect.poll(bench).not.toContain('Heard by')
  })

  it('stands in the comparison, a receiver a row, with its range under every scheme', async () => {
    await openGarage({ type: 'door-solid-core', seal: 'good' })
    await show('Compare')
    const row = hands.bench.getByRole('row', { name: /^Bedroom window, NC-33/ })
    expect((await row.innerText()).match(/dB, likely/g)?.length).toBe(await hands.bench.getByRole('figure').count())
  })

  it('is walked, tried and undone with the keyboard alone', async () => {
    await openGarage({ type: 'door-hollow-core', seal: 'worn' })
    const { page } = hands
    const [before, area] = [await margin(), await floor()]
    await steps().first().waitFor()
    await page.evaluate(() => document.querySelector<HTMLElement>('.bench')?.focus())
    await tabTo(page, /^Level at Bedroom window/)
    await tabTo(page, /^Do it/)
    // What has the focus is previewed, as what is pointed at is.
    await expect.poll(ledger).toContain('if chosen')
    const label = (await focusedName(page)).replace(/^Do it: /, '')
    await page.keyboard.press('Enter')
    await expect.poll(ledger).toContain(`with "${label.charAt(0).toLowerCase()}${label.slice(1)}"`)
    await expect.poll(margin).toBeGreaterThan(before)
    // The step that was done is gone: the keyboard stays with those that are left, and what it came to is read aloud.
    await expect.poll(() => focusedName(page)).toBe('What next')
    expect(await hands.bench.getByRole('status').first().innerText()).toMatch(/^Bedroom window: [+−]?\d+ dB, likely/)
    await enter(page, /^Undo/)
    await expect.poll(margin).toBe(before)
    await expect.poll(floor).toBe(area)
  })

  it.each(['light', 'dark'] as const)('has no finding of the accessibility checker in %s', async (scheme) => {
    await openGarage({ type: 'door-hollow-core', seal: 'worn' })
    const { page } = hands
    await page.emulateMedia({ colorScheme: scheme })
    await page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
    await steps().first().waitFor()
    await hands.bench.getByText('Every path in a table').click()
    await hands.bench.getByText('Levels in a table').click()
    expect(await axeFindings('.bench')).toEqual([])
    expect(await axeFindings('.ledger')).toEqual([])
    await show('Compare')
    expect(await axeFindings('.bench')).toEqual([])
  })

  it.each([
    [390, 844],
    [1024, 768],
  ])('at %d x %d nothing is cut off and every press is wide enough', async (width, height) => {
    await openGarage({ type: 'door-hollow-core', seal: 'worn' }, { viewport: { width, height }, hasTouch: true })
    const { page } = hands
    await steps().first().waitFor()
    await hands.bench.getByText('Every path in a table').click()
    await nextFrame(page)
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
    for (const button of await page.locator('.paths-view button:visible, .ledger button:visible').all()) {
      const box = await button.boundingBox()
      const said = await button.innerText()
      expect(box?.height ?? 0, said).toBeGreaterThanOrEqual(44)
      expect(box?.width ?? 0, said).toBeGreaterThanOrEqual(44)
    }
  })
})

async function axeFindings(place: string): Promise<readonly string[]> {
  return hands.page.evaluate(async (selector) => {
    const { axe } = window as unknown as {
      axe: { run(of: Element | null): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
    }
    const { violations } = await axe.run(document.querySelector(selector))
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)
  }, place)
}
