import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { launchBrowser } from '../support/browser.ts'
import { openHands } from '../support/hands.ts'
import { type PageServer, servePage } from '../support/pageServer.ts'

let server: PageServer
let browser: Browser

beforeAll(async () => {
  server = await servePage()
  browser = await launchBrowser()
})
afterAll(async () => {
  await browser?.close()
  await server?.close()
})

/** Names of the projects kept in the browser's database, oldest first. */
function keptNames(page: Page): Promise<string[]> {
  return page.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const opening = indexedDB.open('leafgap')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const all = opening.result.transaction('versions').objectStore('versions').getAll()
          all.onsuccess = () => resolve(all.result.map(({ text }) => JSON.parse(text).name))
        }
      }),
  )
}

it('a sample opened over one’s own room does not take its place on this machine', async () => {
  const hands = await openHands(await browser.newContext(), server.address)
  await hands.untilSaved()
  await hands.press('New room')
  await hands.fill('Width, across the page', '3333 mm')
  await hands.fill('Length, up the page', '4444 mm')
  await hands.press('Start this room')
  await expect.poll(() => keptNames(hands.page)).toEqual(['Larch Lane practice room', 'New room'])
  await hands.press('Samples')
  await hands.page.getByRole('button', { name: /Basement/ }).click()
  await expect
    .poll(() => keptNames(hands.page))
    .toEqual(['Larch Lane practice room', 'New room', 'Hollow Well basement'])
  await hands.page.reload()
  await hands.untilSaved()
  expect(await keptNames(hands.page)).toHaveLength(3)
})
