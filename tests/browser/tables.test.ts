import type { Browser, BrowserContext, Locator } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, openHands } from '../support/hands.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'

let server: PageServer
let browser: Browser
let context: BrowserContext
let hands: Hands

const DESK = { width: 1440, height: 900 }

/** The views of the whole room that mirror what is drawn. */
const VIEWS = ['Outline', 'Heights', 'Openings', 'Standing and hanging', 'Furniture', 'Corners as built', 'Rooms']

beforeAll(async () => {
  server = await servePage()
  browser = await launchBrowser()
})
afterAll(async () => {
  await browser?.close()
  await server?.close()
})
beforeEach(async () => {
  context = await browser.newContext({ viewport: DESK })
  hands = await openHands(context, server.address)
  await hands.press('Samples')
  await hands.press('Basement')
  await expect.poll(() => hands.page.title()).toBe('Hollow Well basement · Leafgap')
})
afterEach(async () => {
  const { complaints } = hands
  await context.close()
  expect(complaints).toEqual([])
})

const benchText = async () => (await hands.bench.innerText()).replace(/\s+/g, ' ')
const ledgerText = async () => (await hands.ledger.innerText()).replace(/\s+/g, ' ')
const show = (view: string) => hands.press(view, hands.bench)
const field = (label: string | RegExp): Locator =>
  hands.bench.getByLabel(label, { exact: typeof label === 'string' }).first()
const type = async (label: string | RegExp, text: string) => {
  await field(label).fill(text)
  await field(label).press('Enter')
}
const choose = (label: string, option: string) =>
  hands.bench.getByRole('combobox', { name: label, exact: true }).selectOption(option)
const pickedRow = () => hands.bench.locator('tr[aria-current="true"]').first()

describe('openings in a table', () => {
  it('says of the stair door what the duct box and the floor do to it', async () => {
    await show('Openings')
    // SCENARIOS: the box of the duct hangs to 79 1/4 in, the door's head is at 80 in.
    await expect.poll(benchText).toMatch(/Duct trunk: .*they overlap by 19 mm \(3\/4"\)/)
    // It stands in the ledger's cautions in full, too.
    expect(await ledgerText()).toMatch(/Duct trunk: .*they overlap by 19 mm/)
    expect(await benchText()).toContain('step 1/2"')
  })

  it('adds a door, marks its row, and lets the two distances follow each other', async () => {
    await show('Openings')
    await hands.press('Add a door', hands.bench)
    await expect.poll(() => pickedRow().getByRole('button', { name: 'Door', exact: true }).count()).toBe(1)
    await type('From corner 1, Door', "6'")
    // Wall 1 is 24 ft long and the door 2'-8" wide.
    await expect.poll(() => field('From corner 2, Door').inputValue()).toBe(`15'-4"`)
    await type('From corner 2, Door', "10'")
    await expect.poll(() => field('From corner 1, Door').inputValue()).toBe(`11'-4"`)
    await hands.press('Delete Door', hands.bench)
    await expect.poll(() => hands.bench.getByRole('button', { name: 'Delete Door' }).count()).toBe(0)
    await hands.press(/^Undo: delete/)
    await expect.poll(() => hands.bench.getByRole('button', { name: 'Delete Door' }).count()).toBe(1)
  })

  it('refuses an opening wider than its wall in a sentence, and keeps the former width', async () => {
    await show('Openings')
    await type('Width, Escape window', "30'")
    await expect.poll(() => hands.bench.getByRole('alert').innerText()).toMatch(/Escape window.*\.$/)
    expect(await field('Width, Escape window').inputValue()).toBe("30'")
    await field('Width, Escape window').press('Escape')
    expect(await field('Width, Escape window').inputValue()).toBe(`2'-8"`)
  })

  it('opens a thing of its own: every field, its check, the caution, and back', async () => {
    await show('Openings')
    await hands.press('All of it for Stair door', hands.bench)
    await expect.poll(() => hands.bench.getByRole('form', { name: 'Stair door' }).count()).toBe(1)
    expect(await benchText()).toContain('building department which way it has to open')
    await choose('Swings', 'Out of the room')
    await expect.poll(benchText).not.toContain('swings into the box of Duct trunk')
    await hands.press('All openings', hands.bench)
    await expect.poll(() => pickedRow().innerText()).toContain('Stair door')
    await hands.press('All of it for Stair door', hands.bench)
    await hands.press('Whole room', hands.bench)
    await expect.poll(() => hands.bench.getByRole('button', { name: 'Add a door' }).count()).toBe(1)
  })
})

describe('heights, drops and obstacles in tables', () => {
  it('shows what is left: away from drops, under each, the mean, and over 7 ft', async () => {
    await show('Heights')
    // SCENARIOS: 90 in away from drops, 81 5/8 in under the beam, 78 3/4 in under the duct.
    const text = await benchText()
    expect(text).toMatch(/Lowest, away from drops 7'-6" · 2286 mm/)
    expect(text).toMatch(/Under Steel beam 6'-9 5\/8" · 2073 mm/)
    expect(text).toMatch(/Under Duct trunk 6'-6 3\/4" · 2000 mm/)
    expect(text).toMatch(/Floor with 7'-0" · 2134 mm or more/)
  })

  it('reads a second height as a slope, and a level ceiling at the lowest', async () => {
    await show('Heights')
    await hands.press('Add a height', hands.bench)
    await type('x, height 2', "24'")
    await type('y, height 2', '0')
    await type('Floor to what the tape touched, height 2', "7'")
    // 8 in down over 24 ft: 27.8 mm in a metre.
    await expect.poll(benchText).toContain('Ceiling: rises to the left by 27.8 mm in a metre')
    await choose('The ceiling is read', 'level, at its lowest height')
    await expect.poll(benchText).toContain('Ceiling: level.')
  })

  it('takes the column out in this scheme alone and says who must be asked', async () => {
    await show('Standing and hanging')
    const before = await ledgerText()
    await hands.bench.getByRole('checkbox').first().check()
    await expect.poll(benchText).toContain('a structural engineer must say what takes its place')
    await expect.poll(ledgerText).not.toBe(before)
    // SCENARIOS: 381.84 ft² with the column's box, 382.53 without.
    expect(await ledgerText()).toContain('382.5 ft²')
  })

  it('deepens the box of the duct, and the height under it follows', async () => {
    await show('Standing and hanging')
    await type('Box below it, Duct trunk', '4 3/4')
    await expect.poll(() => hands.bench.getByRole('row', { name: /Duct trunk/ }).innerText()).toContain(`6'-5 3/4"`)
  })
})

describe('the outline in tables', () => {
  it('moves the end that was chosen, and a wall by a typed distance', async () => {
    await show('Outline')
    await choose('When a length is typed', 'its start moves')
    await type('Length of wall 1', "23'")
    await expect.poll(() => field('Corner 1, x').inputValue()).toBe(`1'-0"`)
    expect(await field('Corner 2, x').inputValue()).toBe(`24'-0"`)
    await type('Move wall 1 parallel, inward by', '6')
    await expect.poll(() => field('Corner 1, y').inputValue()).toBe('6"')
    expect(await field('Move wall 1 parallel, inward by').inputValue()).toBe('0"')
  })

  it('says how far a measured diagonal is out, and squares a four-cornered room to it', async () => {
    await hands.press('Samples')
    await hands.press('Garage')
    await show('Outline')
    // The garage is drawn square: 12 by 20 ft, its diagonal 23'-3 7/8".
    await type('measured across', "23' 5")
    await expect.poll(benchText).toMatch(/Corner 2 measures 90\.\d\d°: out of square by 0\.\d\d°, .* open/)
    await hands.press(/^Square the room to it/, hands.bench)
    await expect.poll(benchText).toMatch(/Difference.*none/i)
    expect(await field('Length of wall 1').inputValue()).toBe(`12'-0"`)
    expect(await field('Length of wall 2').inputValue()).toBe(`20'-0"`)
  })
})

describe('furniture in a table', () => {
  it('says whether a piece fits, and where not why', async () => {
    await show('Furniture')
    await hands.press('Add a drum kit', hands.bench)
    await expect.poll(benchText).toContain('It fits.')
    await type('x of its middle, Drum kit', '0')
    await expect.poll(benchText).toMatch(/Drum kit .*\./)
    expect(await benchText()).not.toContain('It fits.')
    expect(await ledgerText()).toContain('Drum kit')
  })

  it('shows on request the largest circle and the narrowest clear width', async () => {
    await show('Furniture')
    expect(await benchText()).not.toContain('Narrowest')
    await hands.press('Show what fits', hands.bench)
    // From the boxed column's lower face at 79 in to the lining of the wall below at 5 3/4 in.
    await expect.poll(benchText).toContain(`Narrowest clear width: 6'-1 1/4"`)
    await hands.press('Hide what fits', hands.bench)
    await expect.poll(benchText).not.toContain('Narrowest')
  })
})

describe('corners and rooms in tables', () => {
  it('lets the other lining run through, and goes back to what is usual', async () => {
    await show('Corners as built')
    await expect.poll(benchText).toContain('Corner 1: the lining of Wall 1 runs through')
    await choose('Lining that runs through at Corner 1', 'Wall 6')
    await expect.poll(benchText).toContain('Corner 1: the lining of Wall 6 runs through')
    await hands.press(/^Undo: say which lining runs through/)
    await expect.poll(benchText).toContain('Corner 1: the lining of Wall 1 runs through')
  })

  it('adds a room, picks between the two by name, and deletes it', async () => {
    await show('Rooms')
    await hands.press('Add a room of this size', hands.bench)
    await expect.poll(ledgerText).toContain('80.0 ft²')
    await hands.page.getByRole('combobox', { name: 'Room', exact: true }).selectOption('Basement')
    await expect.poll(ledgerText).toContain('381.8 ft²')
    await hands.press('Delete Room', hands.bench)
    await expect.poll(() => hands.page.getByRole('combobox', { name: 'Room', exact: true }).count()).toBe(0)
  })

  it('cuts the room in two along a typed line with its caution, and joins it again', async () => {
    const before = await ledgerText()
    await show('Rooms')
    await hands.press('Cut this room in two', hands.bench)
    await expect.poll(benchText).toContain('Each of the two rooms needs a way out of its own')
    await type('at x', "7'")
    await hands.press('Cut along this line', hands.bench)
    await expect.poll(benchText).toContain('Partition 1')
    expect(await ledgerText()).not.toBe(before)
    await hands.press(/^Join again/, hands.bench)
    await expect.poll(() => hands.bench.getByRole('button', { name: /^Join again/ }).count()).toBe(0)
  })
})

describe('for everybody', () => {
  it.each(['light', 'dark'] as const)('no view has a finding of the accessibility checker in %s', async (scheme) => {
    await hands.page.emulateMedia({ colorScheme: scheme })
    await hands.page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
    for (const view of VIEWS) {
      await show(view)
      if (view === 'Furniture') await hands.press('Add a piano', hands.bench)
      if (view === 'Rooms') await hands.press('Cut this room in two', hands.bench)
      expect(await axeFindings(), view).toEqual([])
    }
    for (const [view, thing] of [
      ['Openings', 'Stair door'],
      ['Standing and hanging', 'Duct trunk'],
      ['Furniture', 'Piano'],
    ] as const) {
      await show(view)
      await hands.press(`All of it for ${thing}`, hands.bench)
      expect(await axeFindings(), thing).toEqual([])
      await hands.press('Whole room', hands.bench)
    }
  })

  it.each([
    [390, 844],
    [1024, 768],
  ])('at %d x %d the views fold into a list and nothing is cut off', async (width, height) => {
    await hands.page.setViewportSize({ width, height })
    for (const view of VIEWS) {
      await choose('View of the bench', view)
      expect(await hands.page.evaluate(() => document.documentElement.scrollWidth), view).toBeLessThanOrEqual(width)
      const cut = await hands.bench.evaluate((bench) =>
        [...bench.querySelectorAll('input, select, button')]
          .filter((control) => control.getClientRects().length > 0)
          .filter((control) => control.getBoundingClientRect().right > innerWidth)
          .map((control) => control.outerHTML),
      )
      expect(cut, view).toEqual([])
    }
  })
})

async function axeFindings(): Promise<readonly string[]> {
  return hands.page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run(of: Element | null): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
    }
    const { violations } = await axe.run(document.querySelector('.bench'))
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)
  })
}
