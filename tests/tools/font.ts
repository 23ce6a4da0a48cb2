/**
 * Makes the bundled font files and their metrics from @fontsource/open-sans. Run it only to change the font:
 * npx tsx tests/tools/font.ts
 */
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { fontFacts, nameFamily, readWoff, writeTrueType } from '../support/drawingFont.ts'

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '../..')
const SOURCE = join(ROOT, 'node_modules/@fontsource/open-sans')
const ASSETS = join(ROOT, 'src/assets')
const DATA = join(ROOT, 'src/drawing/data')
const WEIGHTS = [
  { weight: '400', style: 'Regular' },
  { weight: '600', style: 'SemiBold' },
]

mkdirSync(ASSETS, { recursive: true })
mkdirSync(DATA, { recursive: true })
const weights: Record<string, unknown> = {}
const woff2: Record<string, string> = {}
for (const { weight, style } of WEIGHTS) {
  const file = join(SOURCE, `files/open-sans-latin-${weight}-normal`)
  const name = `OpenSans-${style}`
  const tables = nameFamily(readWoff(readFileSync(`${file}.woff`)), 'Open Sans', style)
  writeFileSync(join(ASSETS, `${name}.ttf`), writeTrueType(tables))
  copyFileSync(`${file}.woff2`, join(ASSETS, `${name}.woff2`))
  weights[weight] = fontFacts(tables)
  woff2[weight] = readFileSync(`${file}.woff2`).toString('base64')
}
copyFileSync(join(SOURCE, 'LICENSE'), join(ASSETS, 'OpenSans-LICENSE.txt'))
const source = 'Open Sans, SIL Open Font License 1.1, from @fontsource/open-sans (latin), seen'
writeFileSync(join(DATA, 'font.json'), `${JSON.stringify({ family: 'Open Sans', source, weights }, null, 1)}\n`)
writeFileSync(join(DATA, 'fontData.json'), `${JSON.stringify({ source, woff2 }, null, 1)}\n`)
