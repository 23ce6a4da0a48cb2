import type { Browser, CDPSession, Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, nextFrame, openHands } from '../support/hands.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'
import { onPage, spoken } from '../support/planPlace.ts'

type Place = readonly [number, number]

/** The plan under fingers, on a phone held upright: real touch events, as the screen itself would send them. */
describe('on site, by touch', () => {
  let server: PageServer
  let browser: Browser
  let hands: Hands
  let page: Page
  let screen: CDPSession

  beforeAll(async () => {
    server = await servePage()
    browser = await launchBrowser()
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
  })
  beforeEach(async () => {
    await page?.context().close()
    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true })
    hands = await openHands(context, server.address)
    page = hands.page
    screen = await context.newCDPSession(page)
  })

  const touch = async (type: 'touchStart' | 'touchMove' | 'touchEnd', ...fingers: readonly Place[]) => {
    const touchPoints = fingers.map(([x, y], id) => ({ x, y, id }))
    await screen.send('Input.dispatchTouchEvent', { type, touchPoints })
    await nextFrame(page)
  }
  const frame = async () => (await hands.plan.getAttribute('data-frame'))?.split(' ').map(Number) ?? []

  it('pinches closer about the middle of two fingers, and takes the paper along', async () => {
    const middle = await onPage(hands.plan, [1800, 3000])
    const [before = 1] = await frame()
    const at = (apart: number, [dx, dy]: Place): readonly Place[] => [
      [middle[0] - apart + dx, middle[1] + dy],
      [middle[0] + apart + dx, middle[1] + dy],
    ]
    await touch('touchStart', ...at(40, [0, 0]))
    for (const apart of [50, 60, 70, 80]) await touch('touchMove', ...at(apart, [0, 0]))
    const [closer = 1] = await frame()
    expect(closer / before).toBeCloseTo(2, 1)
    const under = await onPage(hands.plan, [1800, 3000])
    expect(Math.hypot(under[0] - middle[0], under[1] - middle[1])).toBeLessThan(3)
    for (const step of [10, 20, 30]) await touch('touchMove', ...at(80, [step, step]))
    const moved = await onPage(hands.plan, [1800, 3000])
    expect(moved[0] - middle[0]).toBeCloseTo(30, -1)
    expect(moved[1] - middle[1]).toBeCloseTo(30, -1)
    await touch('touchEnd')
    // A pinch is no press: nothing was selected by it.
    expect(await spoken(page)).toMatch(/^Nothing selected/)
  })

  it('moves the paper with one finger', async () => {
    const from = await onPage(hands.plan, [1800, 3000])
    await touch('touchStart', from)
    for (const step of [10, 25, 40]) await touch('touchMove', [from[0] + step, from[1]])
    await touch('touchEnd')
    const after = await onPage(hands.plan, [1800, 3000])
    expect(after[0] - from[0]).toBeCloseTo(40, -1)
  })

  it('lists the verbs of a wall held for half a second, and does not press it too', async () => {
    const at = await onPage(hands.plan, [0, 2000])
    await touch('touchStart', at)
    await page.getByRole('menu').waitFor()
    await touch('touchEnd')
    expect(await page.getByRole('menuitem').allInnerTexts()).toContain('Add door here')
    expect(await spoken(page)).toMatch(/^Nothing selected/)
    for (const item of await page.getByRole('menuitem').all()) {
      expect((await item.boundingBox())?.height).toBeGreaterThanOrEqual(44)
    }
    const [menu, plan] = [await page.getByRole('menu').boundingBox(), await hands.plan.boundingBox()]
    if (!menu || !plan) throw new Error('no menu')
    expect(menu.x).toBeGreaterThanOrEqual(plan.x)
    expect(menu.y).toBeGreaterThanOrEqual(plan.y)
    expect(menu.x + menu.width).toBeLessThanOrEqual(plan.x + plan.width)
    expect(menu.y + menu.height).toBeLessThanOrEqual(plan.y + plan.height)
    await page.getByRole('menuitem', { name: 'Add door here' }).tap()
    await expect.poll(() => spoken(page)).toMatch(/^Door, .* Wall 4, selected/)
  })

  it('selects with a tap and does not open the list', async () => {
    await page.touchscreen.tap(...(await onPage(hands.plan, [0, 2000])))
    await expect.poll(() => spoken(page)).toMatch(/^Wall 4/)
    expect(await page.getByRole('menu').count()).toBe(0)
  })

  it('drags the door that is selected with one finger', async () => {
    const at = await onPage(hands.plan, [3657, 5000])
    await page.touchscreen.tap(...at)
    await expect.poll(() => spoken(page)).toMatch(/^Side door/)
    const before = await spoken(page)
    const start = await onPage(hands.plan, [3657, 5000])
    await touch('touchStart', start)
    for (const step of [12, 24, 36]) await touch('touchMove', [start[0], start[1] + step])
    await touch('touchEnd')
    await expect.poll(() => spoken(page)).not.toBe(before)
    // It was moved, not made wider, though both of its ends lie within a finger's reach.
    expect(await spoken(page)).toContain(`2'-8" wide`)
  })

  it('does not move the paper when something is picked', async () => {
    const before = await hands.plan.boundingBox()
    await page.touchscreen.tap(...(await onPage(hands.plan, [3657, 5000])))
    await expect.poll(() => spoken(page)).toMatch(/^Side door/)
    expect((await hands.plan.boundingBox())?.y).toBe(before?.y)
  })

  it('shows a survey large while it asks how to close it', async () => {
    await hands.press('Draw room')
    for (const wall of [`12' 6" r`, `10' u`, `12' 5" l`, `9' 11" d`]) {
      const field = page.getByLabel(/^Length of wall/)
      await field.fill(wall)
      await field.press('Enter')
    }
    await hands.press('Close outline')
    await page.getByRole('heading', { name: 'The survey does not quite meet' }).waitFor()
    await nextFrame(page)
    const [scale = 0] = await frame()
    const box = await hands.plan.boundingBox()
    expect((3048 * scale) / (box?.height ?? 1)).toBeGreaterThan(0.5)
  })

  it('gives every verb of the plan 44 px and cuts nothing off sideways', async () => {
    await hands.press('Add')
    for (const verb of await hands.planPlace.getByRole('button').all()) {
      const box = await verb.boundingBox()
      expect(Math.min(box?.height ?? 0, box?.width ?? 0), await verb.innerText()).toBeGreaterThanOrEqual(44)
    }
    const beyond = await page.evaluate(() => {
      const edges = [...document.querySelectorAll('main button, main p, main canvas')]
        .filter((element) => element.getClientRects().length > 0 && !element.closest('.visually-hidden'))
        .map((element) => ({ text: element.textContent, right: element.getBoundingClientRect().right }))
      return edges.filter(({ right }) => right > window.innerWidth + 0.5).map(({ text }) => text)
    })
    expect(beyond).toEqual([])
    const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    expect(wider).toBe(0)
  })

  it('keeps the plan in sight while a length is typed', async () => {
    await page.touchscreen.tap(...(await onPage(hands.plan, [0, 2000])))
    await hands.press('As it stands')
    const field = page.getByLabel(/^Length/).first()
    await field.tap()
    await nextFrame(page)
    const box = await hands.plan.boundingBox()
    if (!box) throw new Error('no plan')
    expect(box.y).toBeGreaterThanOrEqual(0)
    expect(box.height).toBeGreaterThan(120)
    const typed = await field.boundingBox()
    expect(typed && typed.y >= box.y + box.height).toBe(true)
  })
})
