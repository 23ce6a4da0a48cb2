import { readFileSync } from 'node:fs'
import type { Browser, BrowserContext, Locator } from 'playwright-core'
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

/** The garage with somebody to be protected; what its side door is, is said or not. */
function garage(door: { type: string; seal: string } | null): Buffer {
  const project = JSON.parse(readFileSync('samples/garage/project.json', 'utf8'))
  for (const opening of project.rooms[0].openings) {
    if (opening.id !== 'opening-2') continue
    delete opening.made
    if (door) opening.made = door
  }
  delete project.rooms[0].ducts
  for (const scheme of project.schemes) {
    for (const key of ['openings', 'leaks', 'ducts', 'boxes']) delete scheme[key]
  }
  return Buffer.from(JSON.stringify({ ...project, sources: [SOURCE], receivers: [RECEIVER] }))
}

const SAID = { type: 'door-acoustic-180', seal: 'good' }

async function open(surface: string, buffer = garage(SAID), width = 1440, height = 900): Promise<void> {
  context = await browser.newContext({ viewport: { width, height } })
  hands = await openHands(context, server.address)
  const file = { name: 'garage.json', mimeType: 'application/json', buffer }
  await hands.page.getByLabel('Open a project file').setInputFiles(file)
  await hands.page
    .getByText(/garage\.json/)
    .first()
    .waitFor()
  await hands.press(surface, hands.bench)
}

const against = () => hands.bench.getByLabel('Against')
const ruler = () => hands.bench.locator('.depth-ruler')
const mark = (name: RegExp): Locator => hands.bench.getByRole('radio', { name })
const chosenText = (select: Locator) => select.evaluate((field: HTMLSelectElement) => field.selectedOptions[0]?.text)

describe('the depth ruler by the margin', () => {
  it('is what is offered first once there is a target, with the limit drawn and every mark told in full', async () => {
    await open('Wall 2')
    expect(await chosenText(against())).toBe('Margin at Bedroom window')
    expect(await against().evaluate((field: HTMLSelectElement) => field.options.length)).toBe(4)
    expect(await ruler().textContent()).toContain('0 dB: the limit at Bedroom window')
    expect(await ruler().locator('.ruler-goal').count()).toBe(1)
    const names = await hands.bench.getByRole('radio').evaluateAll((all) => all.map((one) => one.ariaLabel))
    for (const name of names)
      expect(name).toMatch(/, margin [+−]?\d+ dB, likely [+−]?\d+ to [+−]?\d+ dB at Bedroom window, /)
    expect(await hands.bench.innerText()).toContain('Structure-borne sound and bass below 50 Hz are not in this figure')
  })

  it('gives way to STC and to losses, and comes back', async () => {
    await open('Wall 2')
    await against().selectOption({ label: 'STC' })
    expect(await ruler().locator('.ruler-goal').count()).toBe(0)
    expect(await mark(/^Own 2x4 studs, small gap/).getAttribute('aria-label')).not.toContain('margin')
    await against().selectOption({ label: 'Margin at Bedroom window' })
    expect(await ruler().locator('.ruler-goal').count()).toBe(1)
  })

  it('says of every mark the margin that building it gives', async () => {
    await open('Ceiling')
    const poor = mark(/^Channel \+ 1 board/)
    const said = /, (likely [+−]?\d+ to [+−]?\d+ dB) at/.exec((await poor.getAttribute('aria-label')) ?? '')?.[1]
    expect(said).toBeDefined()
    await hands.ledger.getByText(said!).first().waitFor({ state: 'detached' })
    await poor.focus()
    await hands.keys('Enter')
    await hands.ledger.getByText(said!).first().waitFor()
    await hands.keys('Control+z')
    await hands.ledger.getByText(said!).first().waitFor({ state: 'detached' })
  })

  it('says that nothing is heard by way of a surface, and shows STC there', async () => {
    await open('Wall 4')
    expect(await chosenText(against())).toBe('STC')
    expect(await hands.bench.innerText()).toMatch(/The bedroom window hears nothing by way of Wall 4/)
  })

  it('says why the margin is not known, and shows STC', async () => {
    await open('Wall 2', garage(null))
    expect(await chosenText(against())).toBe('STC')
    expect(await hands.bench.innerText()).toMatch(/The margin at Bedroom window is not known.+Side door/)
  })

  it('stands on a phone, and passes the accessibility check', async () => {
    await open('Wall 2', garage(SAID), 390, 844)
    expect(await ruler().textContent()).toContain('0 dB: the limit at Bedroom window')
    await hands.page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
    const faults = await hands.page.evaluate(async () => {
      const { axe } = window as unknown as { axe: { run(place: string): Promise<{ violations: { id: string }[] }> } }
      return (await axe.run('.place-bench')).violations.map(({ id }) => id)
    })
    expect(faults).toEqual([])
  })
})
