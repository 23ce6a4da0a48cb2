import { writeProject } from '#project/write.ts'
import { launchBrowser } from '../support/browser.ts'
import { bigHall } from '../support/hall.ts'
import { type Hands, nextFrame, openHands } from '../support/hands.ts'
import { servePage } from '../support/pageServer.ts'
import { type BenchRow, median } from './scheme.bench.ts'

/** The goal: 50 frames a second. */
const GOAL_MS = 20
/** Moves of the mouse in one drag, one for every frame of five seconds. */
const MOVES = 300

/** Time between frames while a corner of a plan with 200 walls and 40 openings is dragged in Chromium. */
export async function benchDrag(folder?: string): Promise<readonly BenchRow[]> {
  const server = await servePage(folder)
  const browser = await launchBrowser()
  try {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
    const hands = await openHands(context, server.address)
    await openHall(hands)
    const frames = await dragCorner(hands)
    const sorted = [...frames].sort((a, b) => a - b)
    const middle = median(frames)
    const slow = sorted[Math.floor(sorted.length * 0.95)] ?? Number.NaN
    const whole = (1000 * frames.length) / frames.reduce((sum, frame) => sum + frame, 0)
    const note = `${(1000 / middle).toFixed(0)} frames a second, ${whole.toFixed(0)} over the whole drag; 95 % of frames within ${slow.toFixed(1)} ms`
    return [{ name: 'a frame while a corner of 200 walls is dragged', medianMs: middle, goalMs: GOAL_MS, note }]
  } finally {
    await browser.close()
    await server.close()
  }
}

async function openHall({ page }: Hands): Promise<void> {
  const text = writeProject(bigHall())
  await page
    .getByLabel('Open a project file')
    .setInputFiles({ name: 'hall.json', mimeType: 'application/json', buffer: Buffer.from(text) })
  await page.waitForFunction(() => document.title.startsWith('Hall'))
  await nextFrame(page)
}

/** Selects a wall by its table, takes its first corner and moves it to and fro. */
async function dragCorner({ page, plan }: Hands): Promise<readonly number[]> {
  await plan.focus()
  await page.keyboard.press('PageDown')
  await nextFrame(page)
  const [scale = 1, x = 0, y = 0] = (await plan.getAttribute('data-frame'))?.split(' ').map(Number) ?? []
  const box = await plan.boundingBox()
  const corner = bigHall().rooms[0]?.corners[0]
  if (!box || !corner) throw new Error('there is no plan')
  const at = [box.x + x + corner.xMm * scale, box.y + y - corner.yMm * scale] as const
  await page.mouse.move(...at)
  await page.mouse.down()
  await page.mouse.move(at[0] - 12, at[1], { steps: 4 })
  const times = await page.evaluate<number[]>(moveEveryFrame(at))
  await page.mouse.up()
  return times.slice(1).map((time, i) => time - (times[i] ?? time))
}

/**
 * One move of the mouse for every frame, sent inside the page: over the wire they would come too slowly to show what a
 * frame costs. As text: the runner would name the functions in it by a helper the page does not have.
 */
function moveEveryFrame([x, y]: readonly [number, number]): string {
  return `new Promise((resolve) => {
    const plan = document.querySelector('[role=application]')
    const times = []
    const step = (time) => {
      times.push(time)
      if (times.length > ${MOVES}) return resolve(times)
      const turn = (times.length / ${MOVES}) * 4 * Math.PI
      const place = { clientX: ${x} - 12 + 8 * Math.cos(turn), clientY: ${y} + 8 * Math.sin(turn) }
      plan.dispatchEvent(new PointerEvent('pointermove', { ...place, pointerId: 1, pointerType: 'mouse', buttons: 1, bubbles: true }))
      requestAnimationFrame(step)
    }
    requestAnimationFrame(step)
  })`
}
