import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import react from '@vitejs/plugin-react'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { build } from 'vite'
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { ncCurve } from '#acoustics/criteria.ts'
import { FULL_SCALE_DB, SAMPLE_RATE_HZ } from '#acoustics/listen/calibration.ts'
import { octaveLevelsOf } from '#acoustics/listen/octaveBands.ts'
import { launchBrowser } from '../support/browser.ts'
import { BEDROOM_DB, type HearCase, hearCase, KIT_DB, kitSource } from '../support/hear/case.ts'
import { enter, tabTo } from '../support/keyboard.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'

/** The section by itself: what it plays for an answer is not a matter of how the answer came about. */
describe('hear it', () => {
  let folder: string
  let server: PageServer
  let browser: Browser
  let context: BrowserContext
  let page: Page
  let complaints: string[]

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'hear-'))
    // The test runner's own NODE_ENV would build React's development edition.
    vi.stubEnv('NODE_ENV', 'production')
    await build({
      configFile: false,
      root: new URL('../support/hear/', import.meta.url).pathname,
      base: './',
      plugins: [react()],
      logLevel: 'warn',
      build: { outDir: folder, emptyOutDir: true, target: 'es2023' },
    })
    vi.unstubAllEnvs()
    server = await servePage(folder)
    browser = await launchBrowser()
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
    await rm(folder, { recursive: true, force: true })
  })
  afterEach(async () => {
    await context.close()
    expect(complaints).toEqual([])
  })

  const open = async (shown: HearCase, prepare: () => void = recordSound, viewport = { width: 1440, height: 900 }) => {
    context = await browser.newContext({ viewport })
    page = await context.newPage()
    complaints = []
    page.on('console', (message) => complaints.push(`${message.type()}: ${message.text()}`))
    page.on('pageerror', (error) => complaints.push(`threw: ${error.stack ?? error.message}`))
    await page.addInitScript((value) => Object.assign(window, { hearCase: value }), shown)
    await page.addInitScript(prepare)
    await page.goto(server.address)
    await page.getByRole('heading', { name: 'Hear it' }).waitFor()
  }
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click()
  const said = () => page.getByRole('status').innerText()
  const counts = () => page.evaluate(() => (window as unknown as Recorded).counts())
  /** Levels of what played last, as sound. */
  const heard = async () => {
    const samples = await page.evaluate(() => (window as unknown as Recorded).rendered())
    return octaveLevelsOf(samples, SAMPLE_RATE_HZ).map((level) => level + FULL_SCALE_DB)
  }

  it('warns before anything can be played', async () => {
    await open(hearCase())
    expect(await page.getByText('Before the first sound').innerText()).toMatch(/volume .* right down.*headphones/)
    expect(await page.getByRole('button').allInnerTexts()).toEqual(['The volume is down: go on'])
    expect(await counts()).toEqual({ made: 0, started: 0, stopped: 0 })
    await press('The volume is down: go on')
    expect(await page.getByText('Before the first sound').isVisible()).toBe(true)
    expect(await counts()).toEqual({ made: 0, started: 0, stopped: 0 })
  })

  it('plays on a press, says what, and stops', async () => {
    await open(hearCase())
    await press('The volume is down: go on')
    expect(await said()).toBe('Nothing is playing.')
    await press('Play noise as loud as talk')
    expect(await said()).toMatch(/^Playing: noise as loud as somebody talking one metre away, as loud as it is/)
    await press('Play at the bedroom')
    expect(await said()).toMatch(/^Playing: kit pattern at the bedroom against NC-25, 35 dBA, as loud as it is/)
    expect(await page.getByRole('button', { name: 'Play at the bedroom' }).getAttribute('aria-pressed')).toBe('true')
    expect(await counts()).toEqual({ made: 1, started: 2, stopped: 1 })
    await press('Stop')
    expect(await said()).toBe('Stopped.')
    expect(await counts()).toEqual({ made: 1, started: 2, stopped: 2 })
  })

  it('differs between the two places by the predicted noise reduction', async () => {
    // A background far below what comes through, so that it does not fill it up.
    await open(hearCase({}, { backgroundNc: 0 }))
    await press('The volume is down: go on')
    await press('Play in the room')
    const reducedDb = Number(/turned down by (\d+) dB/.exec(await said())?.[1])
    expect(reducedDb).toBeGreaterThan(20)
    const room = await heard()
    await press('Play at the bedroom')
    expect(await said()).not.toContain('turned down')
    const bedroom = await heard()
    for (const [octave, level] of KIT_DB.entries()) {
      const reduction = room[octave]! + reducedDb - bedroom[octave]!
      expect(Math.abs(reduction - (level - BEDROOM_DB[octave]!))).toBeLessThan(0.5)
    }
  })

  it('plays the background on its NC curve', async () => {
    await open(hearCase({}, { backgroundNc: 30 }))
    await press('The volume is down: go on')
    await press('Play the background alone')
    for (const [octave, level] of (await heard()).entries()) {
      expect(Math.abs(level - ncCurve(30)[octave]!)).toBeLessThan(0.5)
    }
  })

  it('stops when what it was made from changes', async () => {
    await open(hearCase())
    await press('The volume is down: go on')
    await press('Play at the bedroom')
    await page.evaluate(
      (next) => (window as unknown as Recorded).changeHearCase(next),
      hearCase({ levelsDb: BEDROOM_DB.map((level) => level - 6) }),
    )
    await expect.poll(said).toBe('Stopped, because what it was made from has changed.')
    expect(await counts()).toEqual({ made: 1, started: 1, stopped: 1 })
  })

  it('works by keyboard alone', async () => {
    await open(hearCase())
    await enter(page, 'The volume is down: go on')
    await enter(page, 'Play noise as loud as talk')
    await tabTo(page, 'What plays')
    await page.keyboard.type('Bass')
    await enter(page, 'Play at the bedroom')
    expect(await said()).toMatch(/^Playing: bass line at the bedroom/)
    await page.keyboard.press('Enter')
    expect(await said()).toBe('Stopped.')
    await enter(page, 'Play the background alone')
    await enter(page, 'Stop')
    expect(await said()).toBe('Stopped.')
  })

  it('says what is missing from it, and how sure it is', async () => {
    await open(hearCase())
    const text = await page.getByRole('main').innerText()
    expect(text).toContain('it could be 8 dB louder')
    expect(text).toContain('travels through the structure is not in it')
    expect(text).toMatch(/Small loudspeakers have no bass/)
  })

  it.each([
    { name: 'no source', shown: hearCase({}, { source: null }), sentence: /No source is chosen for the bedroom/ },
    {
      name: 'an unknown path',
      shown: hearCase({
        levelsDb: BEDROOM_DB.map(() => null),
        unknown: [{ id: 'door-1', kind: 'opening', label: 'Door', element: 'door-1', why: 'Say what the door is.' }],
      }),
      sentence: /What the bedroom hears is not known, so there is nothing to play\. Say what the door is\./,
    },
    {
      name: 'a source without levels',
      shown: hearCase({ sourceDb: KIT_DB.map(() => null) }),
      sentence: /Drum kit has no level in any octave/,
    },
  ])('plays nothing with $name, and says why', async ({ shown, sentence }) => {
    await open(shown)
    expect(await page.getByRole('main').innerText()).toMatch(sentence)
    expect(await page.getByRole('button').count()).toBe(0)
  })

  it('says so where the browser has no Web Audio', async () => {
    await open(hearCase(), () => Object.assign(window, { AudioContext: undefined }))
    expect(await page.getByRole('main').innerText()).toContain('it has no Web Audio')
    expect(await page.getByRole('button').count()).toBe(0)
  })

  it('says so where the browser lets no sound out', async () => {
    await open(hearCase(), () => {
      Object.assign(window, {
        AudioContext: class {
          constructor() {
            throw new Error('no device')
          }
        },
      })
    })
    await press('The volume is down: go on')
    await press('Play at the bedroom')
    expect(await said()).toBe(
      'This browser did not let the sound out (no device). Check that it may play sound on this page, then press again.',
    )
  })

  it('names the place outside, and the octaves it cannot play', async () => {
    const traffic = kitSource({ name: 'Road traffic', preset: 'traffic_urban_65', place: 'facade', shakes: false })
    const some = [60, 58, 50, 44, 38, 33, null]
    await open(hearCase({ sourceDb: some, levelsDb: some }, { source: traffic }))
    await press('The volume is down: go on')
    expect(await page.getByText('At 4000 Hz no level is known').isVisible()).toBe(true)
    await press('Play outside at the wall')
    expect(await said()).toMatch(/^Playing: steady noise outside at the wall, as loud as it is/)
  })

  it.each([
    { width: 1440, height: 900 },
    { width: 390, height: 844 },
  ])('passes axe and fits at $width x $height', async (viewport) => {
    await open(hearCase(), recordSound, viewport)
    await press('The volume is down: go on')
    await press('Play at the bedroom')
    for (const theme of ['light', 'dark']) {
      await page.evaluate((shown) => document.documentElement.setAttribute('data-theme', shown), theme)
      expect(await axe(page)).toEqual([])
    }
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
    expect(overflow).toBeLessThanOrEqual(0)
  })
})

/** What the page under test says of its sound. */
interface Recorded {
  counts(): { made: number; started: number; stopped: number }
  rendered(): Promise<number[]>
  changeHearCase(next: HearCase): void
}

/** Puts an offline context in the place of the machine's sound: the same nodes, rendered instead of heard. */
function recordSound(): void {
  const counted = { made: 0, started: 0, stopped: 0 }
  let last: AudioBuffer | null = null
  const { start, stop } = AudioBufferSourceNode.prototype
  AudioBufferSourceNode.prototype.start = function (this: AudioBufferSourceNode, ...when: [] | [number]) {
    counted.started += 1
    last = this.buffer
    start.apply(this, when)
  }
  AudioBufferSourceNode.prototype.stop = function (this: AudioBufferSourceNode, ...when: [] | [number]) {
    counted.stopped += 1
    stop.apply(this, when)
  }
  class Silent extends OfflineAudioContext {
    constructor() {
      super(1, 24_000, 24_000)
      counted.made += 1
    }
    override async resume(): Promise<void> {}
    async close(): Promise<void> {}
  }
  const rendered = async () => {
    if (!last) throw new Error('nothing has played')
    const offline = new OfflineAudioContext(1, last.length, last.sampleRate)
    const source = offline.createBufferSource()
    source.buffer = last
    source.connect(offline.destination)
    start.call(source)
    return Array.from((await offline.startRendering()).getChannelData(0))
  }
  Object.assign(window, { AudioContext: Silent, counts: () => ({ ...counted }), rendered })
}

async function axe(page: Page): Promise<readonly string[]> {
  await page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
  return page.evaluate(async () => {
    const { axe: checker } = window as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
    }
    const { violations } = await checker.run()
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`))
  })
}
