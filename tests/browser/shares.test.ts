import { readFileSync } from 'node:fs'
import type { Browser, BrowserContext } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, openHands } from '../support/hands.ts'
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
  limit: { kind: 'dBA', levelDb: 50 },
  limitPreset: null,
  hasBeat: false,
  backgroundNc: 25,
  junction: 'none',
  linedBeyond: 'none',
  measured: [],
}

/** The garage with one person named and a poor side door, or one of whom nothing is known. */
function garage(door: { type: string; seal: string } | null): Buffer {
  const project = JSON.parse(readFileSync('samples/garage/project.json', 'utf8'))
  const [room] = project.rooms
  room.ducts = []
  for (const opening of room.openings) {
    if (opening.id !== 'opening-2') continue
    delete opening.made
    if (door) opening.made = door
  }
  for (const scheme of project.schemes) {
    for (const key of ['openings', 'ducts', 'boxes', 'leaks', 'airtightness']) delete scheme[key]
  }
  return Buffer.from(JSON.stringify({ ...project, sources: [SOURCE], receivers: [RECEIVER] }))
}

const POOR = { type: 'door-hollow-core', seal: 'worn' }

async function open(buffer: Buffer, width = 1440, height = 900): Promise<void> {
  context = await browser.newContext({ viewport: { width, height } })
  hands = await openHands(context, server.address)
  const file = { name: 'shares.json', mimeType: 'application/json', buffer }
  await hands.page.getByLabel('Open a project file').setInputFiles(file)
  await hands.page
    .getByText(/shares\.json/)
    .first()
    .waitFor()
}

const verb = () => hands.planPlace.getByRole('button', { name: /^Shares/ })
const said = () => hands.planPlace.getByText(/shares of what is heard there/)
const picture = async () => (await hands.plan.screenshot()).toString('base64')

describe('shares on the plan', () => {
  it('stand there with words for what they are of, and go when they are not wanted', async () => {
    await open(garage(POOR))
    await verb().waitFor()
    expect(await verb().textContent()).toBe('Shares in dBA')
    expect(await said().textContent()).toMatch(/^Bedroom window: shares of what is heard there in dBA/)
    const marked = await picture()
    await verb().click()
    await said().waitFor({ state: 'detached' })
    expect(await verb().getAttribute('aria-pressed')).toBe('false')
    await expect.poll(picture).not.toBe(marked)
    await verb().press('Enter')
    await said().waitFor({ state: 'attached' })
  })

  it('are not offered while a path is unknown', async () => {
    await open(garage(null))
    await hands.ledger
      .getByText(/Bedroom window/)
      .first()
      .waitFor()
    expect(await verb().count()).toBe(0)
    expect(await said().count()).toBe(0)
  })

  it('are off on a phone until asked for, and then told under its plan', async () => {
    await open(garage(POOR), 390, 844)
    await verb().waitFor()
    expect(await said().count()).toBe(0)
    await verb().click()
    await said().waitFor({ state: 'visible' })
    const { width, height } = (await said().boundingBox())!
    expect(width).toBeGreaterThan(200)
    expect(height).toBeGreaterThan(12)
  })
})

describe('the sheet', () => {
  it('says who hears what', async () => {
    await open(garage(POOR))
    await verb().waitFor()
    await hands.press('Hand over')
    const paper = hands.page.getByRole('region', { name: 'The sheet on paper' })
    await paper.locator('text', { hasText: 'Who hears what: Bedroom window' }).waitFor()
    await paper.locator('text', { hasText: /^Bedroom window: [+−]?\d+ dB, likely/ }).waitFor()
    await paper.locator('text', { hasText: /shares of what/ }).waitFor()
  })
})
