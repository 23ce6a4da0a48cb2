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

async function open(width: number, height: number): Promise<void> {
  context = await browser.newContext({ viewport: { width, height } })
  hands = await openHands(context, server.address)
  await hands.press('Wall 1', hands.bench)
}

const how = () => hands.bench.getByRole('region', { name: /^How .+ is rated$/ })
const benchText = async () => (await hands.bench.innerText()).replace(/\s+/g, ' ')
const faults = async () => {
  await hands.page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
  return hands.page.evaluate(async () => {
    const axe = (
      window as unknown as {
        axe: { run(place: string): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
      }
    ).axe
    return (await axe.run('.place-bench')).violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
  })
}

describe('the curve of a wall', () => {
  it('stands with its contour and dips named, its likely range and what is in print', async () => {
    await open(1440, 900)
    const chart = hands.bench.getByRole('img', { name: /^Transmission loss of .+ with its STC contour/ })
    const drawn = await chart.evaluate((svg) => svg.textContent)
    expect(drawn).toMatch(/STC \d+ contour/)
    expect(drawn).toMatch(/air gap resonates, \d+ Hz/)
    const text = await benchText()
    expect(text).toMatch(/STC \d+, likely \d+-\d+/)
    expect(text).toMatch(
      /Dashed: the STC \d+ contour\..+Pale: likely range of each band\. Dips: air gap resonates, \d+ Hz/,
    )
    expect(text).toMatch(/no published value for this build-up|published \d+ \(/)
    expect(await hands.bench.locator('.bench-curve .visually-hidden').textContent()).toMatch(
      / dB at 125 Hz.+Dips: .+limited by/,
    )
  })

  it('says how it came about: both numbers, the range, every rating, every band', async () => {
    await open(1440, 900)
    const title = (await hands.bench.locator('.curve-title').innerText()).replace(/\s+/g, ' ')
    const [, stc, low, high] = /^STC (\d+), likely (\d+)-(\d+)/.exec(title) ?? []
    await hands.press('How?', hands.bench)
    const text = (await how().innerText()).replace(/\s+/g, ' ')
    expect(text).toMatch(new RegExp(`Physics \\d+, anchored ${stc}: `))
    expect(text).toContain(`STC ${stc}, likely ${low}-${high}`)
    expect(text).toContain('never taken below 2.0')
    expect(text).toContain('What counts as the same build-up')
    expect(text).toMatch(/STC \d+ is limited by/)
    for (const name of ['STC without the rule', 'Rw', 'C50-5000', 'Ctr,50-5000', 'OITC']) expect(text).toContain(name)
    expect(await how().locator('.how-bands tbody tr').count()).toBe(21)
    expect(await faults()).toEqual([])
  })

  it('is opened and closed from the keyboard, and the focus comes back', async () => {
    await open(1440, 900)
    const asker = hands.bench.getByRole('button', { name: 'How?' })
    await asker.focus()
    await hands.keys('Enter')
    await how().waitFor()
    expect(await asker.getAttribute('aria-expanded')).toBe('true')
    await hands.keys('Tab')
    expect(await how().evaluate((panel) => panel.contains(document.activeElement))).toBe(true)
    await hands.keys('Escape')
    await how().waitFor({ state: 'detached' })
    expect(await asker.evaluate((button) => button === document.activeElement)).toBe(true)
  })

  it('fits a phone: nothing but the table of bands is scrolled sideways', async () => {
    await open(390, 844)
    await hands.press('Curve', hands.bench)
    await hands.press('How?', hands.bench)
    await how().waitFor()
    const wide = await hands.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
    expect(wide).toBeLessThanOrEqual(0)
    const box = await how().boundingBox()
    expect(box?.width).toBeLessThanOrEqual(390)
    expect(await faults()).toEqual([])
  })

  it('keeps the page as tall as the window on a tablet, however much there is to say', async () => {
    await open(1024, 768)
    await hands.press('Curve', hands.bench)
    await hands.press('How?', hands.bench)
    await how().waitFor()
    const beyond = await hands.page.evaluate(() => document.documentElement.scrollHeight - window.innerHeight)
    expect(beyond).toBe(0)
  })
})
