import { readFileSync } from 'node:fs'
import type { Browser, BrowserContext } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { Room } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, openHands } from '../support/hands.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'
import { analyse, CATALOGUE, openSample } from '../support/samples.ts'

let server: PageServer
let browser: Browser
let context: BrowserContext
let hands: Hands

const DESK = { width: 1440, height: 900 }
const PHONE = { width: 390, height: 844 }

beforeAll(async () => {
  server = await servePage()
  browser = await launchBrowser()
})
afterAll(async () => {
  await browser?.close()
  await server?.close()
})
beforeEach(async () => {
  context = await browser.newContext({ viewport: DESK, acceptDownloads: true })
  hands = await openHands(context, server.address)
})
afterEach(async () => {
  const { complaints } = hands
  await context.close()
  expect(complaints).toEqual([])
})

/** Types a wall into the one field and goes on to the next. */
const wall = async (text: string) => {
  const field = hands.page.getByLabel(/^Length of wall/).first()
  await field.fill(text)
  await field.press('Enter')
}
const placeText = async () => (await hands.planPlace.innerText()).replace(/\s+/g, ' ')
const savedProject = async (): Promise<Project> => {
  const [file] = await Promise.all([hands.page.waitForEvent('download'), hands.press('Save')])
  const read = readProject(readFileSync(await file.path(), 'utf8'), CATALOGUE)
  if (!read.ok) throw new Error(read.error.message)
  return read.value.project
}
const roundedCorners = (room: Room | undefined) =>
  room?.corners.map(({ xMm, yMm }) => [xMm, yMm].map((mm) => Math.round(mm * 10) / 10))

describe('a room typed from a survey', () => {
  it('draws the basement by typed lengths alone, in at most 30 entries', async () => {
    let entries = 0
    const enter = async (label: string, text: string) => {
      const field = hands.bench.getByLabel(label, { exact: true })
      await field.fill(text)
      await field.press('Enter')
      entries += 1
    }
    const enterAll = async (of: string, lengths: Readonly<Record<string, string>>) => {
      for (const [label, text] of Object.entries(lengths)) await enter(`${label}, ${of}`, text)
    }
    /** Walks to a wall with the keyboard and puts an opening into its middle. */
    const addToWall = async (number: number, kind: string) => {
      await hands.plan.focus()
      await hands.keys(...Array<string>(number).fill('PageDown'))
      await hands.press('Add', hands.planPlace)
      await hands.press(kind, hands.planPlace)
      await hands.plan.focus()
      await hands.keys('Enter')
      await hands.press('Add', hands.planPlace)
    }

    await hands.press('New room')
    await hands.fill('Clear height', `7' 8"`)
    entries += 1
    await hands.press('Draw it corner by corner')
    for (const text of [`24' r`, `14' u`, `10' l`, `6' u`, `14' l`]) {
      await wall(text)
      entries += 1
    }
    await hands.press('Close outline')

    await addToWall(4, 'Door')
    await enter('From corner 4', '28')
    await hands.press('Whole room', hands.bench)
    await addToWall(1, 'Window')
    await enter('Width', '32')
    await enter('From corner 1', '3 ft')
    await enter('Height', '36')
    await enter('Sill over the floor', '42')
    await hands.press('Whole room', hands.bench)

    await hands.press('Standing and hanging', hands.bench)
    await hands.press('Add a drop', hands.bench)
    await enterAll('Beam', {
      'x of its left side': '0',
      'y of its lower side': '81',
      'Width, across the page': `24'`,
      'Depth, up the page': '6',
      'Floor to its bare underside': `7' 1"`,
      'Box below it': '2 7/8',
      'Box at its sides': '2 7/8',
    })
    await hands.press('Add a drop', hands.bench)
    await enterAll('Beam 2', {
      'x of its left side': '0',
      'y of its lower side': '190',
      'Width, across the page': `14'`,
      'Depth, up the page': '20',
      'Floor to its bare underside': `6' 11"`,
      'Box below it': '3 3/4',
      'Box at its sides': '3 3/4',
    })
    await hands.press('Add an obstacle', hands.bench)
    await enterAll('Column', {
      'x of its left side': '148',
      'y of its lower side': '82',
      'Width, across the page': '4',
      'Depth, up the page': '4',
      'Lining all round': '3',
    })
    expect(entries).toBeLessThanOrEqual(30)

    const drawn = (await savedProject()).rooms[0]
    if (!drawn) throw new Error('no room')
    const sample = openSample('basement')
    const surveyed = withSurvey(sample, drawn)
    // SCENARIOS of the basement: A, B and C less the boxed column.
    const clear = [35.474, 35.474, 37.018, 34.336]
    sample.schemes.forEach((scheme, i) => {
      const typed = analyse(surveyed, scheme.name)
      const given = analyse(sample, scheme.name)
      expect(typed.ledger.floorAreaM2.clear).toBeCloseTo(clear[i] ?? Number.NaN, 2)
      expect(typed.ledger.floorAreaM2.clear).toBeCloseTo(given.ledger.floorAreaM2.clear, 6)
      expect(typed.ledger.volumeM3.clear).toBeCloseTo(given.ledger.volumeM3.clear, 6)
      typed.ledger.drops.forEach(({ clearHeightMm }, k) => {
        expect(clearHeightMm).toBeCloseTo(given.ledger.drops[k]?.clearHeightMm ?? Number.NaN, 6)
      })
      expect(typed.openings.map(({ problems }) => problems.length)).toEqual(
        given.openings.map(({ problems }) => problems.length),
      )
    })
  }, 180_000)

  it('shows a misclosure wall by wall, and spreads it when told to', async () => {
    await hands.press('mm')
    await hands.press('Draw room')
    for (const text of ['4000 right', '3000 up', '4000 left', '2950 down']) await wall(text)
    await hands.press('Close outline')
    await expect.poll(placeText).toContain('ends 50 mm · 1 31/32" off the first corner (50 mm above), 1 in 279')
    const table = hands.page.getByRole('region', { name: 'Every wall as measured and as closed' })
    await expect.poll(() => table.innerText()).toMatch(/4\s+2950 mm\s+2960\.6 mm\s+\+10\.6 mm/)
    await hands.page.getByLabel(/^Move the last corner onto the first/).check()
    await expect
      .poll(() => table.innerText())
      .toMatch(/1\s+4000 mm\s+4000 mm\s+0[\s\S]*4\s+2950 mm\s+3000 mm\s+\+50 mm/)
    await hands.page.getByLabel(/^Keep it as a short wall/).check()
    await expect.poll(() => table.innerText()).toMatch(/5\s+not measured\s+50 mm\s+new/)
    await hands.keys('Escape')
    await expect.poll(placeText).toContain('5 corners')
    await hands.press('Close outline')
    await hands.press('Close it this way')
    const spread = roundedCorners((await savedProject()).rooms[0])
    // The compass rule by hand: 50 mm over 13 950 mm run.
    const at = (run: number) => Math.round((-50 * run * 10) / 13_950) / 10
    expect(spread).toEqual([
      [0, 0],
      [4000, at(4000)],
      [4000, 3000 + at(7000)],
      [0, 3000 + at(11_000)],
    ])
  })

  it('asks how to close in a way that everybody can read and answer', async () => {
    await hands.press('mm')
    await hands.press('Draw room')
    for (const text of ['4000 right', '3000 up', '4000 left', '2950 down']) await wall(text)
    await hands.press('Close outline')
    await hands.page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
    for (const colorScheme of ['light', 'dark'] as const) {
      await hands.page.emulateMedia({ colorScheme })
      const found = await hands.page.evaluate(async () => {
        const { axe } = window as unknown as { axe: { run(): Promise<{ violations: { id: string }[] }> } }
        return (await axe.run()).violations.map(({ id }) => id)
      })
      expect(found, colorScheme).toEqual([])
    }
    // The chosen way has the focus: an arrow walks on, Enter takes it.
    await hands.keys('ArrowDown', 'Enter')
    expect(roundedCorners((await savedProject()).rooms[0])).toEqual([
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ])
  })

  it('keeps the corners of an outline that is left, until it is begun anew', async () => {
    await hands.press('Draw room')
    await wall(`12' right`)
    await wall(`10' up`)
    await hands.keys('Escape')
    await expect.poll(placeText).toContain('The outline is kept with its 3 corners')
    await hands.press('Draw room')
    await expect.poll(placeText).toContain('3 corners')
    await wall(`12' left turn`)
    await expect.poll(placeText).toContain('4 corners')
    await hands.press('Start anew')
    await expect.poll(placeText).toContain('0 corners')
  })

  it('reads a length and a direction in one field, and guesses neither of two readings', async () => {
    await hands.press('Draw room')
    const field = hands.page.getByLabel('Length of wall 1', { exact: true })
    await field.fill('12-6.5 u')
    await expect.poll(placeText).toContain(`12'-6 1/2" · 3822.7 mm`)
    await expect.poll(placeText).toContain('up, 90°, as typed with the length')
    await field.fill(`12' 90`)
    await field.press('Enter')
    await expect.poll(placeText).toContain('can be read in two ways')
    expect(await field.inputValue()).toBe(`12' 90`)
    await field.fill('')
    await field.press('ArrowUp')
    expect(await hands.page.getByLabel('Direction', { exact: true }).inputValue()).toBe('up')
  })

  it('draws a further room beside the first, and refuses one over it with the corners kept', async () => {
    await hands.press('mm')
    await hands.press('Draw room')
    await expect.poll(placeText).toContain('its 3 openings will go')
    await hands.press('A further room')
    for (const text of ['3 m right', '2.5 m up', '3 m left']) await wall(text)
    await hands.press('Close outline')
    const { rooms } = await savedProject()
    expect(rooms).toHaveLength(2)
    // 1 m to the right of the garage, which is 12 ft wide.
    expect(roundedCorners(rooms[1])?.[0]).toEqual([4657.6, 0])
    await hands.press('Draw room')
    await hands.press('A further room')
    await hands.page
      .getByLabel('First corner', { exact: true })
      .selectOption({ label: 'First corner: Garage, corner 1' })
    for (const text of ['3 m right', '2.5 m up', '3 m left']) await wall(text)
    await hands.press('Close outline')
    await expect.poll(placeText).toMatch(/would lie over Garage/)
    await expect.poll(placeText).toContain('4 corners')
  })
})

describe('on a phone', () => {
  it('keeps the plan in sight while walls are typed, cuts nothing off and can be hit with a finger', async () => {
    await context.close()
    context = await browser.newContext({ viewport: PHONE, hasTouch: true, isMobile: true })
    hands = await openHands(context, server.address)
    await hands.press('Draw room')
    for (const text of [`24' r`, `14' u`, `10' l`, `6' u`, `14' 1/2" l`, `19' 10" d`]) await wall(text)
    const field = hands.page.getByLabel('Length of wall 7', { exact: true })
    await field.focus()
    const isNarrow = () => hands.page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)
    const look = async () => {
      const plan = await hands.plan.boundingBox()
      expect(plan?.height).toBeGreaterThan(100)
      expect((plan?.y ?? 0) + (plan?.height ?? 0)).toBeLessThanOrEqual(PHONE.height)
      expect(await isNarrow()).toBe(true)
      for (const target of await hands.planPlace.locator('button:visible, input:visible, label.survey-way').all()) {
        const box = await target.boundingBox()
        const isRadio = (await target.getAttribute('type')) === 'radio'
        expect([await target.innerText(), (box?.height ?? 0) >= 43.9 || isRadio]).toEqual([expect.anything(), true])
        expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(PHONE.width)
      }
    }
    await look()
    // With a keyboard of 300 px over the lower half, field and drawing are both still in sight.
    const [typed, plan] = [await field.boundingBox(), await hands.plan.boundingBox()]
    expect(typed?.y).toBeLessThan(200)
    expect((plan?.y ?? 0) + 150).toBeLessThan(PHONE.height - 300)
    await hands.press('Close outline')
    await expect.poll(placeText).toContain('The survey does not quite meet')
    await look()
  })
})

/** The sample with everything that was measured replaced by what was drawn; walls and schemes keep what they are made of. */
function withSurvey(sample: Project, drawn: Room): Project {
  const [room] = sample.rooms
  if (!room) throw new Error('no room')
  const wallAt = (id: string) => room.walls[drawn.walls.findIndex((candidate) => candidate.id === id)]?.id ?? id
  return {
    ...sample,
    rooms: [
      {
        ...room,
        corners: room.corners.map((corner, i) => ({ ...corner, ...placeOf(drawn, i) })),
        heights: drawn.heights,
        obstacles: drawn.obstacles,
        drops: drawn.drops,
        openings: drawn.openings.map((opening) => ({ ...opening, wall: wallAt(opening.wall) })),
      },
    ],
  }
}

function placeOf(room: Room, index: number): { readonly xMm: number; readonly yMm: number } {
  const corner = room.corners[index]
  if (!corner || room.corners.length !== 6) throw new Error('the outline has not six corners')
  return { xMm: corner.xMm, yMm: corner.yMm }
}
