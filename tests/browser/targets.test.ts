import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, nextFrame, openHands } from '../support/hands.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'

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
afterEach(async () => {
  const { complaints } = hands
  await context.close()
  expect(complaints).toEqual([])
})

/** A bare room of 5 by 4 m without openings, with nothing said of who hears it. */
async function aNewRoom(options: Parameters<Browser['newContext']>[0] = { viewport: { width: 1440, height: 900 } }) {
  context = await browser.newContext(options)
  hands = await openHands(context, server.address)
  page = hands.page
  const project = page.getByRole('button', { name: 'Project', exact: true })
  if (await project.isVisible()) await project.click()
  await hands.press('mm')
  await hands.press('New room')
  await hands.fill('Width, across the page', '5000')
  await hands.fill('Length, up the page', '4000')
  await hands.press('Start this room')
  await show('targets')
}

async function show(view: 'targets' | 'paths') {
  const tab = page.getByRole('button', { name: view === 'targets' ? 'Targets' : 'Paths', exact: true })
  if (await tab.isVisible()) await tab.click()
  else await hands.bench.getByLabel('View of the bench').selectOption(view)
}

const text = async () => (await hands.bench.innerText()).replace(/\s+/g, ' ')
const field = (label: string | RegExp) => hands.bench.getByLabel(label, { exact: typeof label === 'string' }).first()

async function type(label: string | RegExp, value: string) {
  await field(label).fill(value)
  await field(label).press('Enter')
  await nextFrame(page)
}

async function addKit() {
  await field('A source from the list').selectOption('drum-kit-hard')
  await hands.press('Add it', hands.bench)
}

/** The figure of the receiver in hand. */
const margin = async () =>
  Number((await page.locator('.target-answer strong').innerText()).replace('−', '-').replace(' dB', ''))

describe('targets', () => {
  it('are set from nothing: a source that says what it rests on, a point outdoors, and its margin at once', async () => {
    await aNewRoom()
    expect(await text()).toContain('Nothing yet. Choose what is played')
    await field('A source from the list').selectOption('drum-kit-hard')
    expect(await text()).toContain('Assumed, from memory: design assumption of our own')
    expect(await text()).toContain('Footsteps and thuds, and what a train shakes through the ground, are not airborne')
    await addKit()
    await expect.poll(text).toMatch(/Drum kit, hard sticks 104 dBA assumed, from memory/)
    await hands.press('Add a point outdoors', hands.bench)
    await expect.poll(text).toMatch(/Point outdoors .*[−+]\d+ dB .*likely [−+]?\d+ to [−+]?\d+ dB/)
    expect(await text()).toContain('Structure-borne sound and bass below 50 Hz are not in this figure')
    expect(await text()).toContain('hearing needs protection')
    const near = await margin()
    await type('Distance from the room', '90 m')
    await expect.poll(margin).toBeGreaterThanOrEqual(near + 19)
    await hands.keys('Escape')
    await page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(margin).toBe(near)
    await hands.press('See its paths', hands.bench)
    await expect.poll(text).toContain('Every path in a table')
  })

  it('keep a distance of nothing, a volume of nothing and a room that absorbs nothing, each with its sentence', async () => {
    await aNewRoom()
    await addKit()
    await hands.press('Add a point outdoors', hands.bench)
    await type('Distance from the room', '0')
    await expect.poll(text).toContain('has to be more than 0, for in the open a level belongs to a distance')
    expect(await field('Distance from the room').inputValue()).toBe('0')
    await hands.press('Add a room behind', hands.bench)
    await type('Volume of that room', '0')
    await expect.poll(text).toContain('has to be more than 0 m³')
    await type('Volume of that room', '1059 ft3')
    await expect.poll(text).toContain('29.99 m³ · 1,059 ft³')
    await field('What stands in it').selectOption('typed')
    await type('Its absorption area', '0')
    await expect.poll(text).toContain('no room absorbs nothing')
    await hands.press('Point outdoors', hands.bench)
    expect(await field('Distance from the room').inputValue()).toBe('0')
    expect(await text()).toContain('has to be more than 0, for in the open a level belongs to a distance')
  })

  it('say which octave has no level, keep the rest, and take seven values in one line', async () => {
    await aNewRoom()
    await hands.press('Type levels of my own', hands.bench)
    await expect.poll(text).toContain('No octave has a level yet, so nothing can be judged')
    await type('125, Hz, Level by octave, dB', '92,5')
    await type('250, Hz, Level by octave, dB', 'loud')
    await expect.poll(text).toContain('At 250 Hz a level is a number in dB, such as 95.')
    expect(await text()).toContain(
      'There is no level at 63, 250, 500, 1000, 2000 and 4000 Hz: nothing is judged there.',
    )
    await page.getByText('All seven in one line').click()
    await type(/^Seven values, dB/, '100 103 101 100 98 97')
    await expect.poll(text).toContain('6 values are written, and there are 7 octaves')
    expect(await field(/^Seven values, dB/).inputValue()).toBe('100 103 101 100 98 97')
    await type(/^Seven values, dB/, '100 103 101 100 98 97 95')
    await expect.poll(text).toContain('104 dBA')
    expect(await text()).toContain('Typed by you: they count as measured.')
  })

  it('begin a limit from the list with its source, and hold it lower for a beat', async () => {
    await aNewRoom()
    await addKit()
    await hands.press('Add a point outdoors', hands.bench)
    await field('Limit from the list').selectOption('window-night')
    await expect.poll(text).toContain('WHO Guidelines for Community Noise (1999)')
    expect(await field('No louder than, dBA').inputValue()).toBe('45')
    const steady = await margin()
    await field(/^A beat or a tone/).check()
    await expect.poll(margin).toBe(steady - 5)
    await type('No louder than, dBA', '50')
    await expect.poll(margin).toBe(steady)
    expect(await text()).toContain('Typed by you.')
    await type('No louder than, dBA', '300')
    await expect.poll(text).toContain('its limit has to be from 0 to 120 dBA; the former value was kept.')
    expect(await field('No louder than, dBA').inputValue()).toBe('300')
  })

  it('name the surfaces, each with what is behind it, and say what is missing where none is', async () => {
    await aNewRoom()
    await addKit()
    await hands.press('Add a room behind', hands.bench)
    const boxes = hands.bench.locator('.through input[type="checkbox"]')
    for (const box of await boxes.all()) await box.uncheck()
    await expect.poll(text).toContain('No surface is named, so there is no path to judge: name at least one.')
    expect(await page.locator('.target-answer strong').innerText()).toBe('Not known')
    await field('Ceiling').check()
    await field('From here to there').selectOption('none')
    await expect.poll(margin).toBeLessThan(0)
    const alone = await margin()
    await field('From here to there').selectOption('continuous-joists')
    await expect.poll(text).toContain('An assumption: design limit of our own')
    await expect.poll(margin).toBeLessThanOrEqual(alone)
    await field('Floor').check()
    await expect.poll(text).toContain('Floor: soil is said to be behind it')
  })

  it('hear what comes in, in the other direction, with its own list of limits', async () => {
    await aNewRoom()
    await hands.press('Add this room, noise coming in', hands.bench)
    await expect.poll(text).toContain('Urban road traffic, 65 dBA at the wall')
    expect(await field('Limit from the list').locator('option').allInnerTexts()).toContain(
      'NC-15 · Recording studio, distant microphones',
    )
    expect(await field('What comes in').locator('option').allInnerTexts()).not.toContain('Speech, raised effort')
  })

  it('let a receiver hear a source of the list in one step, and undo it in one', async () => {
    await aNewRoom()
    await hands.press('Add a point outdoors', hands.bench)
    await expect.poll(text).toContain('nobody has said what is played')
    await field('What is played').selectOption('preset:band-amplified')
    await expect.poll(text).toMatch(/Amplified band rehearsal 108 dBA/)
    await page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(text).toContain('nobody has said what is played')
    expect(await text()).toContain('Nothing yet. Choose what is played')
  })

  it('hold what was measured on site, and lose nothing of it while something else is looked at', async () => {
    await aNewRoom()
    await addKit()
    await hands.press('Add a point outdoors', hands.bench)
    await hands.press('Type level differences', hands.bench)
    await hands.press('Keep them', hands.bench)
    await expect.poll(text).toContain('has no value in any octave; type at least one.')
    await type('63, Hz, Level difference by octave, dB', '31')
    await show('paths')
    await show('targets')
    expect(await field('63, Hz, Level difference by octave, dB').inputValue()).toBe('31')
    await type('125, Hz, Level difference by octave, dB', '35')
    await hands.press('Keep them', hands.bench)
    await expect.poll(() => field('Measured').inputValue()).toBe('before')
    await show('paths')
    await expect.poll(text).toContain('Measured against predicted')
  })

  it('are set by the keyboard alone', async () => {
    await aNewRoom()
    await field('A source from the list').focus()
    await hands.keys('Tab', 'Enter')
    await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toBe('target-hand')
    await hands.keys('Tab')
    expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('source-1-name')
    await hands.bench.getByRole('button', { name: 'Add a point outdoors' }).focus()
    await hands.keys('Enter')
    await expect.poll(text).toMatch(/Point outdoors Drum kit/)
    await hands.bench.getByRole('button', { name: 'Delete Point outdoors' }).focus()
    await hands.keys('Enter')
    await expect.poll(text).toContain('Nobody yet.')
    // What was in hand is gone: the keyboard goes on from the lists.
    expect(await page.evaluate(() => document.activeElement?.className)).toBe('target-lists')
  })

  it.each(['light', 'dark'] as const)('have no finding of the accessibility checker in %s', async (colorScheme) => {
    await aNewRoom({ viewport: { width: 1024, height: 768 }, colorScheme })
    await addKit()
    expect(await axe()).toEqual([])
    for (const add of ['Add a point outdoors', 'Add a room behind']) {
      await hands.press(add, hands.bench)
      expect(await axe(), add).toEqual([])
    }
  })

  it('can be hit by a finger and do not overflow a phone', async () => {
    await aNewRoom({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true })
    await addKit()
    for (const add of [null, 'Add a point outdoors', 'Add a room behind', 'Add this room, noise coming in']) {
      if (add) await hands.press(add, hands.bench)
      await nextFrame(page)
      const low = await page.evaluate(() =>
        [
          ...document.querySelectorAll(
            '.targets-view :is(button, select, input[type="text"], label.check-field, summary)',
          ),
        ]
          .filter((element) => element.getClientRects().length > 0)
          .map((element) => ({
            text: element.textContent || element.getAttribute('name'),
            height: Math.round(element.getBoundingClientRect().height),
          }))
          .filter(({ height }) => height < 44),
      )
      expect(low).toEqual([])
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    }
  })
})

async function axe(): Promise<string[]> {
  await page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
  return page.evaluate(async () => {
    const { axe: checker } = window as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
    }
    return (await checker.run()).violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`,
    )
  })
}
