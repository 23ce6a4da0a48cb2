import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, nextFrame, openHands } from '../support/hands.ts'
import { focusedName } from '../support/keyboard.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'
import { dragTo, onPage, pressAt, spoken } from '../support/planPlace.ts'

/** Doors, columns, beams, furniture and partitions put down and moved on the plan, by hand and by keys. */
describe('things on the plan', () => {
  let server: PageServer
  let browser: Browser
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
  /** The garage: 3657.6 by 6096 mm, wall 4 on its left runs from the upper corner down; nothing stands in it. */
  beforeEach(async () => {
    await page?.context().close()
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
    hands = await openHands(context, server.address)
    page = hands.page
    await hands.press('mm')
    await nextFrame(page)
  })
  const hint = () => page.locator('#plan-status').innerText()

  it('adds a door where a wall is pressed, and slides it along the wall', async () => {
    await hands.press('Add')
    await hands.press('Door')
    await pressAt(page, hands.plan, [0, 3000])
    await expect.poll(() => spoken(page)).toMatch(/^Door, \d+ mm wide, \d+ mm along Wall 4, selected/)
    const [, before] = /(\d+) mm along/.exec(await spoken(page)) ?? []
    await dragTo(page, hands.plan, [0, 3000], [0, 2000])
    expect(await hint()).toMatch(/mm from corner 4, \d+ mm from corner 1/)
    await page.mouse.up()
    await nextFrame(page)
    const [, after] = /(\d+) mm along/.exec(await spoken(page)) ?? []
    // 1000 mm further from the wall's first corner, to the grid of 10 mm or what holds it within 9 px.
    expect(Math.abs(Number(after) - Number(before) - 1000)).toBeLessThan(250)
    await page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(() => spoken(page)).toContain(`${before} mm along`)
    expect(hands.complaints).toEqual([])
  })

  it('puts a dragged door back on Escape, as if the hand had never moved', async () => {
    await hands.press('Add')
    await hands.press('Door')
    await pressAt(page, hands.plan, [0, 3000])
    const before = await spoken(page)
    await dragTo(page, hands.plan, [0, 3000], [0, 4500])
    await page.keyboard.press('Escape')
    await page.mouse.up()
    await nextFrame(page)
    expect(await spoken(page)).toBe(before)
  })

  it('widens a door by its end', async () => {
    await hands.press('Add')
    await hands.press('Door')
    await pressAt(page, hands.plan, [0, 3000])
    const [, width, from] = /(\d+) mm wide, (\d+) mm along/.exec(await spoken(page)) ?? []
    const end = 6096 - Number(from) - Number(width)
    await dragTo(page, hands.plan, [0, end], [0, end - 400])
    await page.mouse.up()
    await nextFrame(page)
    const [, wider, still] = /(\d+) mm wide, (\d+) mm along/.exec(await spoken(page)) ?? []
    expect(still).toBe(from)
    expect(Math.abs(Number(wider) - Number(width) - 400)).toBeLessThan(60)
  })

  it('says that a piece of furniture meets the swing of a door while it is dragged there', async () => {
    await hands.press('Add')
    await hands.press('Door')
    await pressAt(page, hands.plan, [0, 3000])
    await expect.poll(() => spoken(page)).toMatch(/^Door, /)
    await hands.press('Desk')
    await pressAt(page, hands.plan, [2500, 1500])
    await expect.poll(() => spoken(page)).toMatch(/^Desk, selected/)
    // The door is hung to swing into the room: the desk comes to stand in its way.
    await dragTo(page, hands.plan, [2500, 1500], [900, 2900])
    expect(await hint()).toMatch(/Door/)
    await page.mouse.up()
    await nextFrame(page)
    await expect.poll(() => hands.bench.innerText()).toMatch(/swing of "?Door|Door.*swing/)
  })

  it('makes a column of two presses and refuses one without a place in the room', async () => {
    await hands.press('Add')
    await hands.press('Column or pier')
    await pressAt(page, hands.plan, [1500, 1500])
    await pressAt(page, hands.plan, [2000, 2100])
    await expect.poll(() => spoken(page)).toMatch(/^Column, selected/)
    await expect.poll(() => hands.planPlace.getByRole('button', { name: 'Delete obstacle' }).count()).toBe(1)
    await page.keyboard.press('Escape')
    await pressAt(page, hands.plan, [1750, 1800])
    await expect.poll(() => spoken(page)).toMatch(/^Column, selected/)
  })

  it('cuts the room in two, goes to the other room by a press, and joins them again', async () => {
    await hands.press('Add')
    await hands.press('Cut in two')
    await pressAt(page, hands.plan, [0, 3000])
    await pressAt(page, hands.plan, [3657, 3000])
    await expect.poll(() => spoken(page)).toMatch(/^Partition, selected/)
    const here = await hands.plan.getAttribute('aria-label')
    const other = here === 'Plan of Garage' ? 'Plan of Garage 2' : 'Plan of Garage'
    await pressAt(page, hands.plan, [1800, 1200])
    await pressAt(page, hands.plan, [1800, 4900])
    await expect.poll(() => hands.plan.getAttribute('aria-label')).not.toBeNull()
    const now = await hands.plan.getAttribute('aria-label')
    expect([here, other]).toContain(now)
    await pressAt(page, hands.plan, [1800, 3000])
    await expect.poll(() => spoken(page)).toMatch(/^Partition, selected/)
    await page.keyboard.press('Delete')
    await expect.poll(() => hands.ledger.innerText()).toContain('22.30')
  })

  it('lists what can be done with a wall on the other button, keeps the list inside the plan, and lets go on Escape', async () => {
    const [x, y] = await onPage(hands.plan, [0, 2000])
    await page.mouse.click(x, y, { button: 'right' })
    const menu = page.getByRole('menu')
    await menu.waitFor()
    expect(await menu.getByRole('menuitem').allInnerTexts()).toEqual([
      'Insert corner here',
      'Add door here',
      'Add window here',
      'Move by typed distance',
      'Select',
    ])
    expect(await focusedName(page)).toBe('Insert corner here')
    await page.keyboard.press('ArrowDown')
    expect(await focusedName(page)).toBe('Add door here')
    await page.keyboard.press('Escape')
    await expect.poll(() => menu.count()).toBe(0)
    expect(await focusedName(page)).toBe('Plan of Garage')
    await page.mouse.click(x, y, { button: 'right' })
    await page.getByRole('menuitem', { name: 'Add window here' }).click()
    await expect.poll(() => spoken(page)).toMatch(/^Window, .* Wall 4, selected/)
  })

  it('goes from the menu to the field where a wall is moved by a typed distance', async () => {
    await page.mouse.click(...(await onPage(hands.plan, [0, 2000])), { button: 'right' })
    await page.getByRole('menuitem', { name: 'Move by typed distance' }).click()
    await expect.poll(() => focusedName(page)).toMatch(/Move wall 4 parallel/)
  })

  it('adds, moves and deletes a beam, and turns a piano, from the keyboard alone', async () => {
    await hands.press('Add')
    await page.getByRole('button', { name: 'Beam or duct' }).focus()
    await page.keyboard.press('Enter')
    expect(await focusedName(page)).toBe('Plan of Garage')
    await page.keyboard.press('Enter')
    await expect.poll(() => spoken(page)).toMatch(/^Beam, selected/)
    await page.keyboard.press('Shift+ArrowUp')
    await expect.poll(() => page.getByRole('button', { name: /^Undo: move/ }).count()).toBe(1)
    await page.keyboard.press('Delete')
    await expect.poll(() => spoken(page)).toMatch(/^Nothing selected/)
    await page.getByRole('button', { name: 'Piano', exact: true }).focus()
    await page.keyboard.press('Enter')
    await page.keyboard.press('Enter')
    await expect.poll(() => spoken(page)).toMatch(/^Piano, selected/)
    await page.keyboard.press('r')
    await expect.poll(() => page.getByLabel(/^Turned/).inputValue()).toBe('15°')
    await page.keyboard.press('Shift+F10')
    await page.getByRole('menu').waitFor()
    await page.keyboard.press('Escape')
    expect(hands.complaints).toEqual([])
  })
})
