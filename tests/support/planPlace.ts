import type { Locator, Page } from 'playwright-core'
import { nextFrame } from './hands.ts'

/** A place of the plan, mm, as a place on the page, px. */
export async function onPage(plan: Locator, [xMm, yMm]: readonly [number, number]): Promise<[number, number]> {
  const box = await plan.boundingBox()
  const [scale = 1, x = 0, y = 0] = (await plan.getAttribute('data-frame'))?.split(' ').map(Number) ?? []
  if (!box) throw new Error('the plan is not on the page')
  return [box.x + x + xMm * scale, box.y + y - yMm * scale]
}

/** What a keyboard reader hears of the selection. */
export function spoken(page: Page): Promise<string> {
  return page.locator('.plan-foot p[role=status]').innerText()
}

/** Moves the mouse to a place of the plan and presses there. */
export async function pressAt(page: Page, plan: Locator, mm: readonly [number, number]): Promise<void> {
  await page.mouse.move(...(await onPage(plan, mm)))
  await nextFrame(page)
  await page.mouse.click(...(await onPage(plan, mm)))
  await nextFrame(page)
}

/** Takes hold at one place of the plan and holds it at another; the hand does not let go yet. */
export async function dragTo(
  page: Page,
  plan: Locator,
  from: readonly [number, number],
  to: readonly [number, number],
): Promise<void> {
  const [start, end] = [await onPage(plan, from), await onPage(plan, to)]
  await page.mouse.move(...start)
  await nextFrame(page)
  await page.mouse.down()
  await page.mouse.move(...end, { steps: 6 })
  await nextFrame(page)
}
