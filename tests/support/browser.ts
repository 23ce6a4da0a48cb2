import { existsSync } from 'node:fs'
import { type Browser, chromium } from 'playwright-core'

/** Where a browser is usually installed, in the order tried. */
const INSTALLED = [
  '/usr/bin/google-chrome',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/microsoft-edge',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
]

/**
 * Starts a real Chromium. LEAFGAP_BROWSER names another one; on Linux x64 it is the one that came with `npm ci`,
 * elsewhere an installed Chrome, Chromium or Edge.
 */
export async function launchBrowser(): Promise<Browser> {
  const named = process.env['LEAFGAP_BROWSER']
  if (named) return chromium.launch({ executablePath: named, args: ['--no-sandbox'] })
  if (process.platform === 'linux' && process.arch === 'x64') return launchPacked()
  const executablePath = INSTALLED.find((path) => existsSync(path))
  if (!executablePath) {
    throw new Error('No Chrome, Chromium or Edge was found: install one, or name it in LEAFGAP_BROWSER.')
  }
  return chromium.launch({ executablePath })
}

/**
 * What asks for an emulated graphics card. No reader's machine has one, and it takes more time than the page: drawing goes
 * straight to the processor instead, as on a machine without a card.
 */
const CARD = /^--(use-gl|use-angle|enable-unsafe-swiftshader|ignore-gpu-blocklist|in-process-gpu)/

async function launchPacked(): Promise<Browser> {
  // Unpacks the shared libraries a bare Debian lacks; read while the package loads.
  process.env['AWS_LAMBDA_JS_RUNTIME'] ??= 'nodejs20.x'
  const { default: packed } = await import('@sparticuz/chromium')
  const args = packed.args.filter((argument) => argument !== '--single-process' && !CARD.test(argument))
  return chromium.launch({
    executablePath: await packed.executablePath(),
    args: [...args, '--disable-gpu', '--no-sandbox'],
  })
}
