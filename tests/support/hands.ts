import type { BrowserContext, Locator, Page } from 'playwright-core'

/** A page under test, and everything it said on its console or threw. */
export interface Hands {
  readonly page: Page
  readonly complaints: string[]
  /** The drawing. */
  readonly plan: Locator
  readonly ledger: Locator
  readonly bench: Locator
  /** The plan's place: its verbs, the drawing, the sentence under it. */
  readonly planPlace: Locator
  /** Presses a button by its words, anywhere or in one place of the page. */
  press(name: string | RegExp, within?: Locator): Promise<void>
  /** Types into the field with this label. */
  fill(label: string | RegExp, text: string): Promise<void>
  /** Clicks a place on the plan, in shares of its width and height. */
  clickPlan(x: number, y: number, options?: { readonly shift?: boolean }): Promise<void>
  /** Presses at one place of the plan, moves in steps and lets go at another. */
  dragPlan(from: readonly [number, number], to: readonly [number, number]): Promise<void>
  movePlan(x: number, y: number): Promise<void>
  /** Presses keys one after the other where the focus is. */
  keys(...keys: readonly string[]): Promise<void>
  /** Waits until what was done last is kept on this machine. */
  untilSaved(): Promise<void>
}

/** Opens the page in a context of its own and waits until it stands. */
export async function openHands(context: BrowserContext, address: string): Promise<Hands> {
  const page = await context.newPage()
  const complaints: string[] = []
  page.on('console', (message) => complaints.push(`${message.type()}: ${message.text()}`))
  page.on('pageerror', (error) => complaints.push(`threw: ${error.stack ?? error.message}`))
  await page.goto(address)
  const plan = page.getByRole('application')
  await plan.waitFor()
  return handsOn(page, complaints, plan)
}

function handsOn(page: Page, complaints: string[], plan: Locator): Hands {
  const place = async (x: number, y: number): Promise<[number, number]> => {
    const box = await plan.boundingBox()
    if (!box) throw new Error('the plan is not on the page')
    return [box.x + x * box.width, box.y + y * box.height]
  }
  return {
    page,
    complaints,
    plan,
    ledger: page.getByRole('complementary', { name: 'Ledger' }),
    bench: page.getByRole('region', { name: 'Bench' }),
    planPlace: page.getByRole('main'),
    press: (name, within = page.locator('body')) =>
      within.getByRole('button', { name, exact: typeof name === 'string' }).click(),
    fill: async (label, text) => {
      await page.getByLabel(label, { exact: typeof label === 'string' }).fill(text)
    },
    clickPlan: async (x, y, { shift = false } = {}) => {
      const at = await place(x, y)
      if (shift) await page.keyboard.down('Shift')
      await page.mouse.move(...at)
      await nextFrame(page)
      await page.mouse.click(...at)
      if (shift) await page.keyboard.up('Shift')
    },
    dragPlan: async (from, to) => {
      const start = await place(...from)
      const end = await place(...to)
      await page.mouse.move(...start)
      await page.mouse.down()
      await page.mouse.move(...end, { steps: 8 })
      await nextFrame(page)
      await page.mouse.up()
    },
    movePlan: async (x, y) => {
      await page.mouse.move(...(await place(x, y)))
      await nextFrame(page)
    },
    keys: async (...keys) => {
      for (const key of keys) await page.keyboard.press(key)
    },
    untilSaved: () => page.getByText(/^saved on this machine/).waitFor(),
  }
}

/** Lets the page draw what it has. */
export async function nextFrame(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))))
}
