import { readFileSync } from 'node:fs'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { layersDepth } from '#assemblies/layer.ts'
import { readAssembly } from '#project/assemblyFile.ts'
import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { launchBrowser } from '../support/browser.ts'
import { type Hands, openHands } from '../support/hands.ts'
import { enter, focusedName, pick, tabTo, typeInto } from '../support/keyboard.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'
import { CATALOGUE } from '../support/samples.ts'

/** An assembly of one's own, from nothing to the client and on to somebody else: the steps follow one another. */
describe('an assembly of one’s own', () => {
  let server: PageServer
  let browser: Browser
  let context: BrowserContext
  let hands: Hands
  let page: Page

  beforeAll(async () => {
    server = await servePage()
    browser = await launchBrowser()
    context = await browser.newContext({ viewport: { width: 1440, height: 900 }, acceptDownloads: true })
    hands = await openHands(context, server.address)
    page = hands.page
  })
  afterAll(async () => {
    await browser?.close()
    await server?.close()
  })

  const plain = (text: string) => text.replace(/\s+/g, ' ')
  const benchText = async () => plain(await hands.bench.innerText())
  const ledgerText = async () => plain(await hands.ledger.innerText())
  /** With what to do next in it, which is worked out after the rest. */
  const restedLedger = async () => {
    let last = ''
    for (;;) {
      const now = await ledgerText()
      if (now === last && !now.includes('Working out')) return now
      last = now
      await page.waitForTimeout(400)
    }
  }
  const figures = async () => plain(await hands.bench.locator('.build-figures').innerText())
  const curve = () => hands.bench.locator('.curve-shown').getAttribute('d')
  const layers = async () => (await hands.bench.locator('.layer-head').allInnerTexts()).map(plain)
  const verb = (name: string | RegExp) => hands.bench.getByRole('button', { name, exact: typeof name === 'string' })
  const textOfDownload = async (name: string): Promise<string> => {
    const [file] = await Promise.all([page.waitForEvent('download'), hands.press(name)])
    return readFileSync(await file.path(), 'utf8')
  }
  const projectOf = async (): Promise<Project> => {
    const read = readProject(await textOfDownload('Save'), CATALOGUE)
    if (!read.ok) throw new Error(read.error.message)
    return read.value.project
  }
  const fieldIs = async (label: string, text: string) => {
    await hands.fill(label, text)
    await page.getByLabel(label, { exact: true }).press('Enter')
  }

  it('begins from nothing, on a wall picked in the bench', async () => {
    await hands.press('mm')
    await hands.press('Wall 1', hands.bench)
    await hands.press('Build your own', hands.bench)
    expect(await benchText()).toContain('no wall assembly of its own yet')
    await hands.press('Start from nothing', hands.bench)
    expect(await layers()).toEqual([])
  })

  it('is built from the keyboard, layer by layer, and every layer is opened at its first field', async () => {
    await enter(page, 'Board or slab')
    await expect.poll(() => focusedName(page)).toBe('What it is')
    await expect.poll(figures).toMatch(/Depth 15\.9 mm.*Weight 11\.1 kg\/m².*STC \d+, likely \d+-\d+/)
    const alone = await curve()
    await enter(page, 'Insert before')
    await expect.poll(() => focusedName(page)).toBe('What it is')
    await pick(page, 'Material', 'Plywood')
    await expect.poll(figures).toContain('Depth 34.9 mm')
    await expect.poll(curve).not.toBe(alone)
    expect(await layers()).toEqual(['1 Plywood 19.1 mm', '2 Gypsum board, type X 15.9 mm'])
  })

  it('changes a layer into a cavity, with everything that stands in it', async () => {
    await enter(page, 'Insert before')
    await page.keyboard.press('ArrowDown')
    await expect.poll(layers).toEqual(['1 Cavity, empty 50 mm', '2 Plywood 19.1 mm', '3 Gypsum board, type X 15.9 mm'])
    const before = await curve()
    await typeInto(page, 'Depth', '100')
    await pick(page, 'What stands in it', 'Its own wood')
    await typeInto(page, 'Stud depth', '63')
    await typeInto(page, 'Stud spacing', '600')
    await pick(page, 'Mineral wool in it', 'Part')
    await typeInto(page, 'Depth of the wool', '2 1/2"')
    await expect.poll(figures).toContain('Depth 134.9 mm')
    expect(await curve()).not.toBe(before)
    expect(await benchText()).toMatch(/\d+ Hz Gap \d of \d+ mm resonates/)
    // 38.1 x 63 mm of timber of 450 kg/m3 every 600 mm, plywood of 560 kg/m3, board of 700 kg/m3
    expect(await figures()).toContain('Weight 23.6 kg/m²')
  })

  it('moves layers with the focus staying on them', async () => {
    await tabTo(page, 'Down')
    await page.keyboard.press('Enter')
    await expect
      .poll(layers)
      .toEqual(['1 Plywood 19.1 mm', '2 Cavity, wood studs, untied, wool 100 mm', '3 Gypsum board, type X 15.9 mm'])
    expect(await focusedName(page)).toBe('Down')
    await tabTo(page, 'Up', true)
    await page.keyboard.press('Enter')
    await expect.poll(async () => (await layers())[0]).toContain('Cavity')
    expect(await focusedName(page)).toBe('Down')
  })

  it('tells a mistake beside its layer, keeps what was typed, and goes on showing the last version that can be built', async () => {
    const good = await figures()
    await verb(/^2 ?Plywood/).click()
    await fieldIs('Thickness', '-18 mm')
    const layer = hands.bench.locator('.layer').nth(1)
    await expect
      .poll(async () => plain(await layer.innerText()))
      .toContain('Layer 2 (board): the thickness of -18 mm must be above 0 and at most 1500 mm.')
    expect(await figures()).toBe(good)
    expect(await benchText()).toContain('this is the last version that can')
    await hands.press('Save to this project', hands.bench)
    await expect.poll(benchText).toContain('It was not saved. Layer 2 (board)')
    expect((await projectOf()).assemblies).toEqual([])
    await fieldIs('Thickness', '12 furlongs')
    await hands.press('Choose', hands.bench)
    await hands.press('Whole room', hands.bench)
    await hands.press('Wall 1', hands.bench)
    await hands.press('Build your own, unsaved', hands.bench)
    expect(await page.getByLabel('Thickness', { exact: true }).inputValue()).toBe('12 furlongs')
    await expect.poll(benchText).toContain('expected mm, cm, m, ft or in after 12')
    await fieldIs('Thickness', '18 mm')
    await expect.poll(figures).toContain('Depth 133.9 mm')
  })

  it('refuses two cavities in a row and a cavity with nothing in front of it, and takes steps back', async () => {
    const sound = await layers()
    await verb(/^1 ?Cavity/).click()
    await hands.press('Insert after', hands.bench)
    await page.getByLabel('What it is', { exact: true }).selectOption('cavity')
    await expect.poll(benchText).toContain('Layer 2 (cavity): it follows another cavity')
    await hands.press('Take back a step', hands.bench)
    await hands.press('Take back a step', hands.bench)
    await expect.poll(layers).toEqual(sound)
    await hands.press('Cavity', hands.bench)
    await expect.poll(benchText).toContain('Layer 4 (cavity): its link needs a leaf on both sides')
    await hands.press('Delete', hands.bench)
    await expect.poll(layers).toEqual(sound)
  })

  it('shows the cautions that come with the way it is tied', async () => {
    await verb(/^1 ?Cavity/).click()
    await page.getByLabel('What ties its sides').selectOption('resilient-channel')
    await expect.poll(benchText).toContain('Never fix channel over an existing board')
    expect(await page.getByLabel(/^A lining has to come off first/).isChecked()).toBe(true)
    expect(await page.getByLabel('Channel spacing').inputValue()).toBe('600 mm')
    await hands.press('Take back a step', hands.bench)
  })

  it('is saved under its name, and the list of choices has it as one’s own', async () => {
    await fieldIs('Name', 'Drum wall')
    await fieldIs('Short name', 'drum wall')
    await hands.press('Save to this project', hands.bench)
    await expect.poll(benchText).toContain('Saved in this project.')
    const [saved] = (await projectOf()).assemblies
    expect(saved?.name).toBe('Drum wall')
    expect(layersDepth(saved?.layers ?? [])).toBeCloseTo(133.875, 9)
    await hands.press('Choose', hands.bench)
    const options = await page.getByLabel('Assembly', { exact: true }).locator('option').allInnerTexts()
    expect(options.filter((text) => text.startsWith('Own: Drum wall · 134 mm · STC'))).toHaveLength(1)
    expect(await hands.bench.getByRole('radio', { name: /^drum wall \(own\)/i }).count()).toBe(1)
  })

  it('is used on the wall, undone and redone', async () => {
    const before = await restedLedger()
    await hands.press('Build your own', hands.bench)
    await hands.press('Use it on Wall 1', hands.bench)
    const used = await restedLedger()
    expect(used).not.toBe(before)
    expect(
      (await projectOf()).schemes.flatMap(({ choices }) => Object.values(choices)).map(({ assembly }) => assembly),
    ).toContain('own-1')
    await page.keyboard.press('ControlOrMeta+Z')
    await expect
      .poll(async () =>
        (await projectOf()).schemes
          .flatMap(({ choices }) => Object.values(choices))
          .some(({ assembly }) => assembly === 'own-1'),
      )
      .toBe(false)
    await page.keyboard.press('ControlOrMeta+Shift+Z')
    expect(await restedLedger()).toBe(used)
  })

  it('passes axe while it is built, in light and in dark', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await axe(page)).toEqual([])
    }
    await page.emulateMedia({ colorScheme: 'light' })
  })

  it('is there again after the page was closed', async () => {
    await hands.untilSaved()
    await page.reload()
    await hands.plan.waitFor()
    await hands.press('Wall 1', hands.bench)
    expect(await page.getByLabel('Assembly', { exact: true }).inputValue()).toBe('own-1')
    await hands.press('Build your own', hands.bench)
    expect(await benchText()).toMatch(/Drum wall Rename.* 133\.9 mm .*1 surface in one scheme/)
  })

  it('duplicates a built-in one, and asks before an unsaved one gives way', async () => {
    await page.getByLabel('or from a copy of').selectOption('W07')
    await hands.press('Duplicate and edit', hands.bench)
    expect(await page.getByLabel('Name', { exact: true }).inputValue()).toMatch(/^Copy of Sound clips/)
    await verb(/^3 ?Gypsum/).click()
    await page.getByLabel('Material').selectOption('osb')
    await hands.press('Look inside', hands.bench)
    await page.getByLabel('Look inside').selectOption('W14')
    await hands.press('Duplicate and edit', hands.bench)
    await expect.poll(benchText).toMatch(/"Copy of Sound clips.*" is not saved and would give way/)
    await hands.press('Save it and go on', hands.bench)
    await expect.poll(() => page.getByLabel('Name', { exact: true }).inputValue()).toMatch(/^Copy of Independent/)
    await hands.press('Close', hands.bench)
    const [, copy] = (await projectOf()).assemblies
    expect(copy?.layers.at(-1)).toMatchObject({ kind: 'board', material: 'osb' })
    expect(copy?.layerSources?.map(({ status }) => status)).toEqual(['common practice, no source', 'seen', 'derived'])
  })

  it('is shared as a file and opened again under an id and a name that are free', async () => {
    const text = await textOfDownload('Share Drum wall')
    const read = readAssembly(text)
    expect(read.ok && read.value.name).toBe('Drum wall')
    await open(page, 'drum.assembly.json', text)
    const told = hands.planPlace.getByRole('alert')
    await expect
      .poll(async () => plain(await told.innerText()))
      .toMatch(
        /"Drum wall 2" for a wall is now one of this project's own assemblies\. Its id "own-1" is already used here, so it was given "own-3"/,
      )
    const { assemblies } = await projectOf()
    expect(assemblies.map(({ id, name }) => `${id} ${name}`).slice(-1)).toEqual(['own-3 Drum wall 2'])
    expect(assemblies.at(-1)?.layers).toEqual(assemblies[0]?.layers)
  })

  it('refuses a file that is broken with sentences, and changes nothing', async () => {
    const before = await projectOf()
    const broken = JSON.stringify({
      format: 'leafgap-assembly',
      version: 1,
      assembly: {
        ...before.assemblies[0],
        layers: [{ kind: 'board', material: 'cheese', thicknessMm: -1 }],
        layerSources: undefined,
      },
    })
    await open(page, 'broken.json', broken)
    const told = hands.planPlace.getByRole('alert')
    await expect
      .poll(async () => plain(await told.innerText()))
      .toMatch(/"broken\.json" was not opened\..*the material "cheese" is not known/)
    expect(await projectOf()).toEqual(before)
    await hands.press('Dismiss')
  })

  it('takes an own one out, and says which surfaces go back to as they stand', async () => {
    await hands.press('Delete Drum wall', hands.bench)
    await expect
      .poll(async () => plain(await hands.planPlace.getByRole('alert').innerText()))
      .toContain('"Drum wall" was deleted: 1 surface goes back to as it stands, in one scheme.')
    expect((await projectOf()).assemblies.map(({ id }) => id)).toEqual(['own-2', 'own-3'])
    await hands.press(/^Undo: delete drum wall, 1 surface back to as is/)
    await expect.poll(async () => (await projectOf()).assemblies[0]?.id).toBe('own-1')
  })

  it('lets every built-in one and every material be looked into, each number with its source', async () => {
    await hands.press('Look inside', hands.bench)
    await page.getByLabel('Look inside').selectOption('W07')
    await expect.poll(benchText).toMatch(/Sound clips and channel.*Rows 609\.6 mm apart, clips 1219\.2 mm apart/)
    expect(await benchText()).toMatch(
      /10\.7 kg\/m² seen Thickness 5\/8 in, exact\. Mass 2\.2 lb\/ft2 from a retail trade/,
    )
    await page.getByLabel('Look inside').selectOption('existing')
    await expect.poll(benchText).toContain('From the far side to the bare face')
    await hands.press('Materials', page.locator('header'))
    const drawer = page.getByRole('region', { name: 'What everything is made of' })
    const plywood = drawer.getByRole('row', { name: /^Plywood/ })
    // c2 / (2 pi) x sqrt(12 x 560 x (1 - 0.3 x 0.3) / 6.0e9), c = 343 m/s
    expect(plain(await plywood.innerText())).toMatch(/^Plywood 560 6 0\.30 0\.02 18\.9 memory memory; fc x h = 18\.9/)
    await hands.press('Assemblies', drawer)
    await page.getByLabel('Assembly', { exact: true }).last().selectOption('C06')
    expect(plain(await drawer.innerText())).toContain(
      'Trusses do not get three boards without a letter from an engineer.',
    )
    expect(await axe(page)).toEqual([])
    await hands.press('Duplicate and edit', drawer)
    await expect
      .poll(() => page.getByLabel('Name', { exact: true }).inputValue())
      .toMatch(/^Copy of Sound clips and channel under the joists/)
    expect(await benchText()).toMatch(/^Ceiling/)
    await expect.poll(benchText).toMatch(/adds 33\.\d kg\/m².*structural engineer|trusses.*confirm it in writing/)
  })

  it('fits a phone without scrolling sideways', async () => {
    await page.setViewportSize({ width: 390, height: 844 })
    for (const view of ['Build your own', 'Look inside']) {
      await hands.press(view, hands.bench)
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    }
    expect(await axe(page)).toEqual([])
  })

  it('has targets that a finger can hit', async () => {
    const phone = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true })
    const { page: small, bench, press } = await openHands(phone, server.address)
    await press('Wall 1', bench)
    await press('Build your own', bench)
    await press('Start from nothing', bench)
    await press('Cavity', bench)
    await press('Board or slab', bench)
    const low = await small.evaluate(() =>
      [...document.querySelectorAll('.build-view :is(button, select, input[type="text"], label.check-field)')]
        .map((element) => ({
          text: element.textContent || element.getAttribute('name'),
          height: element.clientHeight + 2,
        }))
        .filter(({ height }) => height < 44),
    )
    expect(low).toEqual([])
    expect(await small.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    await phone.close()
  })

  it('said nothing on the console', () => {
    expect(hands.complaints).toEqual([])
  })
})

/** Chooses a file as the assembly picker in the bench would. */
async function open(page: Page, name: string, text: string): Promise<void> {
  await page
    .getByLabel('Open an assembly file')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) })
}

async function axe(page: Page): Promise<readonly string[]> {
  await page.addScriptTag({ path: 'node_modules/axe-core/axe.min.js' })
  return page.evaluate(async () => {
    const { axe: checker } = window as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
    }
    return (await checker.run()).violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
  })
}
