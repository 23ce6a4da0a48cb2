import type { Browser, BrowserContext } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, nextFrame, openHands } from '../support/hands.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'

let server: PageServer
let browser: Browser
let context: BrowserContext
let hands: Hands

const DESK = { width: 1440, height: 900 }

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
  // What to do next is worked out after the rest; a ledger that is compared has it.
  await hands.ledger.getByRole('button', { name: 'Try it' }).waitFor()
})
afterEach(async () => {
  const { complaints } = hands
  await context.close()
  expect(complaints).toEqual([])
})

const ledger = async () => (await hands.ledger.innerText()).replace(/\s+/g, ' ')
const ledgerArea = async () => /of [\d.]+ (ft²|m²)/.exec(await ledger())?.[0]
/** Draws a rectangle over the room and closes it on its first corner. */
const drawRectangle = async () => {
  await hands.press('Draw room')
  for (const [x, y] of [
    [0.3, 0.2],
    [0.7, 0.2],
    [0.7, 0.8],
    [0.3, 0.8],
    [0.3, 0.2],
  ] as const)
    await hands.clickPlan(x, y)
}

describe('the shell', () => {
  it('opens on the garage sample and draws it', async () => {
    expect(await hands.page.title()).toBe('Larch Lane practice room · Leafgap')
    expect(await ledger()).toContain('210.3 ft²')
    expect(await inkOnPlan()).toBeGreaterThan(1000)
  })

  it('draws a room by mouse; undo and redo name the step', async () => {
    const before = await ledger()
    await drawRectangle()
    await expect.poll(ledger).not.toBe(before)
    await hands.press('Undo: draw the outline')
    await expect.poll(ledger).toBe(before)
    await hands.press('Redo: draw the outline')
    await expect.poll(ledger).not.toBe(before)
    await hands.page.keyboard.press('ControlOrMeta+Z')
    await expect.poll(ledger).toBe(before)
  })

  it('refuses an outline that crosses itself, keeps the corners for mending and the room as it was', async () => {
    const before = await ledger()
    await hands.press('Draw room')
    for (const [x, y] of [
      [0.3, 0.2],
      [0.7, 0.8],
      [0.7, 0.2],
      [0.3, 0.8],
    ] as const)
      await hands.clickPlan(x, y)
    await hands.press('Close outline')
    await expect.poll(() => hands.planPlace.getByRole('alert').innerText()).toMatch(/Wall 1 and Wall 3 cross or touch/)
    await hands.plan.focus()
    await hands.keys('Backspace')
    await expect.poll(() => hands.planPlace.innerText()).toContain('3 corners')
    await hands.keys('Escape')
    expect(await ledger()).toBe(before)
  })

  it('draws a room from the keyboard alone, lengths and directions typed', async () => {
    await hands.page.getByRole('button', { name: 'Draw room' }).focus()
    await hands.keys('Enter')
    for (const [length, direction] of [
      ["20'", 'right'],
      ["12'", 'up'],
      ["20'", 'left'],
    ] as const) {
      await hands.page.keyboard.type(length)
      await hands.keys('Tab', 'ControlOrMeta+A')
      await hands.page.keyboard.type(direction)
      await hands.keys('Enter')
    }
    await hands.keys('Enter')
    await expect.poll(ledger).toContain('of 240.0 ft²')
    expect(await hands.page.getByRole('button', { name: 'Undo: draw the outline' }).isEnabled()).toBe(true)
  })

  it('says how a typed length was not read and keeps it', async () => {
    await hands.press('Draw room')
    await hands.fill(/^Length of wall/, '12 furlongs')
    await hands.press('Add corner')
    await expect.poll(() => hands.planPlace.innerText()).toContain('expected mm, cm, m, ft or in after 12')
    expect(await hands.page.getByLabel(/^Length of wall/).inputValue()).toBe('12 furlongs')
  })

  it('selects with the pointer, adds with Shift, lets go inside; arrow keys move a corner', async () => {
    await hands.plan.focus()
    await hands.keys('PageDown')
    const spoken = hands.planPlace.getByRole('status')
    await expect.poll(() => spoken.innerText()).toBe(`Wall 1, 12'-0" long, selected.`)
    await hands.keys('Enter', 'ArrowRight')
    await expect.poll(() => spoken.innerText()).toBe('Corner 1 selected. Arrow keys move it.')
    await hands.press('Undo: move corner')
    // Beside the vehicle door, which a press on it would select.
    await clickRoom(300, 0)
    await clickRoom(0, 3048, true)
    await expect.poll(() => spoken.innerText()).toBe('Wall 1, Wall 4 selected.')
    await clickRoom(1828.8, 2500)
    await expect.poll(() => spoken.innerText()).toBe('Nothing selected: the whole room.')
  })

  it('takes in the next wall with Shift and an arrow key, and lets it go on the way back', async () => {
    const spoken = hands.planPlace.getByRole('status')
    await hands.plan.focus()
    await hands.keys('PageDown', 'Shift+ArrowRight', 'Shift+ArrowRight')
    await expect.poll(() => spoken.innerText()).toBe('Wall 1, Wall 2, Wall 3 selected.')
    await hands.keys('Shift+ArrowLeft')
    await expect.poll(() => spoken.innerText()).toBe('Wall 1, Wall 2 selected.')
  })

  it('picks several surfaces one by one without a held key, the focus staying with the hand', async () => {
    const spoken = hands.planPlace.getByRole('status')
    await hands.press('Several', hands.bench)
    await hands.keys('Tab', 'Enter')
    await expect.poll(() => spoken.innerText()).toMatch(/^Wall 1, .* selected/)
    await hands.keys('Tab', 'Tab', 'Enter')
    await expect.poll(() => spoken.innerText()).toBe('Wall 1, Wall 3 selected.')
    await hands.keys('Enter')
    await expect.poll(() => spoken.innerText()).toMatch(/^Wall 1, .* long, selected/)
  })

  it('takes back a corner, not a step of the document, while an outline is drawn', async () => {
    await hands.press('mm')
    await hands.press('Draw room')
    for (const x of [0.3, 0.5, 0.7]) await hands.clickPlan(x, 0.2)
    await hands.keys('ControlOrMeta+Z')
    await expect.poll(() => hands.planPlace.innerText()).toContain('2 corners')
    await hands.press('Undo: corner')
    await expect.poll(() => hands.planPlace.innerText()).toContain('1 corner')
    await hands.keys('ControlOrMeta+Z', 'ControlOrMeta+Z', 'ControlOrMeta+Shift+Z')
    expect(await ledger()).toContain('2382 mm 7')
    await hands.press('Leave')
    expect(await hands.page.getByRole('button', { name: 'Undo: show millimetres' }).isEnabled()).toBe(true)
  })

  it('tells what a new outline takes with it, until it is undone', async () => {
    await drawRectangle()
    const told = hands.planPlace
    await told.getByText('3 openings of the old one are gone').waitFor()
    await hands.press('Undo: draw the outline')
    await expect.poll(() => told.getByText('openings of the old one').count()).toBe(0)
  })

  it('says why a wall can go no further and leaves it at the last place that works', async () => {
    await clickRoom(3657.6, 2500)
    await hands.page.mouse.move(...(await onScreen(3657.6, 2500)))
    await hands.page.mouse.down()
    for (const x of [3400, 3100, -800]) {
      await hands.page.mouse.move(...(await onScreen(x, 2500)), { steps: 4 })
      await nextFrame(hands.page)
    }
    await expect.poll(() => hands.planPlace.innerText()).toContain('it stays at the last place that works')
    const held = await ledgerArea()
    await hands.page.mouse.up()
    expect(await ledgerArea()).toBe(held)
    expect(held).not.toContain('240.0 ft²')
    await hands.press('Undo: move wall')
    expect(await ledgerArea()).toContain('240.0 ft²')
  })

  it('Escape takes a drag back', async () => {
    const before = await ledger()
    await clickRoom(3657.6, 2500)
    const [x, y] = await onScreen(3657.6, 2500)
    await hands.page.mouse.move(x, y)
    await hands.page.mouse.down()
    await hands.page.mouse.move(x + 80, y, { steps: 5 })
    await expect.poll(ledger).not.toBe(before)
    await hands.keys('Escape')
    await hands.page.mouse.up()
    await expect.poll(ledger).toBe(before)
    expect(await hands.page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true)
  })

  it('starts a room from width, length and height, refusing what is no length', async () => {
    await hands.press('New room')
    await hands.press('Start this room')
    await expect.poll(() => hands.page.locator('#drawer-new-room').innerText()).toContain('Type a length, for example')
    await hands.fill('Width, across the page', '4 m')
    await hands.fill('Length, up the page', `16' 5"`)
    await hands.press('Start this room')
    await expect.poll(ledger).toContain('20.02 m²')
    await hands.press('Undo: start a new room')
    await expect.poll(ledger).toContain('210.3 ft²')
  })

  it('keeps the project over a reload, and offline', async () => {
    await drawRectangle()
    await hands.press('mm')
    await hands.untilSaved()
    const area = /of ([\d.]+ m²)/
    const drawn = area.exec(await ledger())?.[1]
    await hands.page.waitForFunction(() =>
      navigator.serviceWorker.ready.then((worker) => worker.active?.state === 'activated'),
    )
    await hands.page.reload()
    await hands.plan.waitFor()
    expect(area.exec(await ledger())?.[1]).toBe(drawn)
    await context.setOffline(true)
    await hands.page.reload()
    await hands.plan.waitFor()
    expect(area.exec(await ledger())?.[1]).toBe(drawn)
  })

  it('starts in spite of a kept version that is broken or newer', async () => {
    await hands.untilSaved()
    await hands.page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('leafgap', 1)
          opening.onerror = () => reject(opening.error)
          opening.onsuccess = () => {
            const work = opening.result.transaction('versions', 'readwrite')
            for (const text of ['{"format":"leafgap-project","version":99}', 'not json']) {
              work.objectStore('versions').add({ savedAt: Date.now(), text })
            }
            work.oncomplete = () => resolve()
          }
        }),
    )
    await hands.page.reload()
    await hands.plan.waitFor()
    expect(await ledger()).toContain('210.3 ft²')
    expect(await hands.planPlace.getByRole('alert').innerText()).toMatch(/last 2 versions .* could not be read/)
    await hands.press('Dismiss')
  })
})

describe('when the machine keeps nothing', () => {
  it('says so and offers the project as a file', async () => {
    await hands.page.addInitScript(() => {
      Object.defineProperty(window, 'indexedDB', {
        value: {
          open: () => {
            throw new Error('storage is shut off')
          },
        },
      })
    })
    await hands.page.reload()
    await hands.plan.waitFor()
    await hands.page.getByText(/not saved on this machine/).waitFor()
    const [file] = await Promise.all([hands.page.waitForEvent('download'), hands.press('download a copy')])
    expect(file.suggestedFilename()).toBe('larch-lane-practice-room.leafgap.json')
  })
})

describe('for everybody', () => {
  it.each(['light', 'dark'] as const)('has no finding of the accessibility checker in %s', async (colorScheme) => {
    await hands.page.emulateMedia({ colorScheme })
    await hands.page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
    for (const drawer of ['', 'Samples', 'New room', 'Keys', 'Rename or delete', 'Draw room']) {
      if (drawer) await hands.press(drawer)
      const found = await hands.page.evaluate(async () => {
        const axe = (
          window as unknown as { axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }
        ).axe
        return (await axe.run()).violations.map(
          ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`,
        )
      })
      expect(found, drawer).toEqual([])
    }
  })
})

describe('narrow and coarse', () => {
  it.each([
    [390, 844],
    [320, 700],
    [600, 900],
    [860, 700],
    [1024, 768],
  ])('at %d x %d nothing overflows sideways', async (width, height) => {
    await hands.page.setViewportSize({ width, height })
    for (const prepare of ['', 'Draw room']) {
      if (prepare) await hands.press(prepare)
      expect(await hands.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
    }
  })

  it('at 390 the plan stays in sight while a number is typed', async () => {
    await hands.page.setViewportSize({ width: 390, height: 844 })
    await hands.bench.getByRole('combobox', { name: 'View of the bench' }).selectOption('Outline')
    const field = hands.page.getByLabel('Length of wall 3', { exact: true })
    await field.scrollIntoViewIfNeeded()
    await field.focus()
    const plan = await hands.plan.boundingBox()
    expect(plan?.y).toBeGreaterThanOrEqual(0)
    expect((plan?.y ?? 0) + (plan?.height ?? 0)).toBeLessThan(844 * 0.6)
    const typed = await field.boundingBox()
    expect(typed?.y).toBeGreaterThan((plan?.y ?? 0) + (plan?.height ?? 0))
  })
})

/** A place of the plan (mm) on the screen. */
async function onScreen(xMm: number, yMm: number): Promise<[number, number]> {
  const [scale = 1, x = 0, y = 0] = ((await hands.plan.getAttribute('data-frame')) ?? '').split(' ').map(Number)
  const box = await hands.plan.boundingBox()
  if (!box) throw new Error('no plan')
  return [box.x + x + xMm * scale, box.y + y - yMm * scale]
}

async function clickRoom(xMm: number, yMm: number, shift = false): Promise<void> {
  if (shift) await hands.page.keyboard.down('Shift')
  await hands.page.mouse.click(...(await onScreen(xMm, yMm)))
  if (shift) await hands.page.keyboard.up('Shift')
}

/** Dark pixels of the drawing. */
function inkOnPlan(): Promise<number> {
  return hands.plan.locator('canvas').evaluateAll((canvases) => {
    let dark = 0
    for (const canvas of canvases) {
      const context = canvas instanceof HTMLCanvasElement ? canvas.getContext('2d') : null
      if (!context) continue
      const { data } = context.getImageData(0, 0, context.canvas.width, context.canvas.height)
      for (let i = 0; i < data.length; i += 4) {
        if ((data[i + 3] ?? 0) > 200 && (data[i] ?? 255) + (data[i + 1] ?? 255) + (data[i + 2] ?? 255) < 200) dark += 1
      }
    }
    return dark
  })
}
