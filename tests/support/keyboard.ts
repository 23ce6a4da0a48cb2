import type { Page } from 'playwright-core'

/** More presses of Tab than the page has stops. */
const MOST_STOPS = 160

/** Walks with Tab until the control with this name has the focus; nothing but the keyboard is used. */
export async function tabTo(page: Page, name: string | RegExp, back = false): Promise<void> {
  for (let i = 0; i < MOST_STOPS; i += 1) {
    await page.keyboard.press(back ? 'Shift+Tab' : 'Tab')
    const focused = await focusedName(page)
    if (typeof name === 'string' ? focused === name : name.test(focused)) return
  }
  throw new Error(`Tab never reached ${name}; it rests on "${await focusedName(page)}"`)
}

/** Tabs to a control and presses Enter on it. */
export async function enter(page: Page, name: string | RegExp): Promise<void> {
  await tabTo(page, name)
  await page.keyboard.press('Enter')
}

/** Tabs to a field, replaces what stands in it and leaves it with Enter. */
export async function typeInto(page: Page, name: string | RegExp, text: string): Promise<void> {
  await tabTo(page, name)
  await page.keyboard.press('ControlOrMeta+A')
  await page.keyboard.type(text)
  await page.keyboard.press('Enter')
}

/** Tabs to a native list and picks the option that begins with these words, by typing them. */
export async function pick(page: Page, name: string | RegExp, words: string): Promise<void> {
  await tabTo(page, name)
  await page.keyboard.type(words, { delay: 5 })
  await page.keyboard.press('Enter')
}

/** The accessible name of what has the focus, as a screen reader would say it. */
export function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const element = document.activeElement
    if (!element || element === document.body) return ''
    const own = element.getAttribute('aria-label')
    if (own) return own
    const labels = 'labels' in element ? (element.labels as NodeListOf<HTMLLabelElement> | null) : null
    const text = labels?.[0]?.textContent ?? element.textContent ?? ''
    return text.replace(/\s+/g, ' ').trim()
  })
}
