import { deflateSync } from 'node:zlib'

/** Red, green, blue, 0 to 255. */
export type Colour = readonly [number, number, number]

export interface Dot {
  readonly at: readonly [number, number]
  readonly colour: Colour
}

/** A plan as a scanner would see it: grey paper, dark walls of some width, a coloured dot on every corner. Places in pixels, y down. */
export interface PlanImage {
  readonly width: number
  readonly height: number
  readonly walls: readonly (readonly [number, number])[]
  readonly wallPx: number
  readonly dots: readonly Dot[]
  readonly dotPx: number
}

const PAPER = 244
const INK = 40

/** The plan image as the bytes of a PNG, its edges softened over one pixel. */
export function planPng(image: PlanImage): Buffer {
  const { width, height } = image
  const rows = Buffer.alloc(height * (1 + 3 * width), PAPER)
  for (let y = 0; y < height; y += 1) {
    rows[y * (1 + 3 * width)] = 0
    for (let x = 0; x < width; x += 1) {
      const colour = colourAt(image, x + 0.5, y + 0.5)
      if (colour) rows.set(colour, y * (1 + 3 * width) + 1 + 3 * x)
    }
  }
  return pngOf(width, height, rows)
}

function colourAt({ walls, wallPx, dots, dotPx }: PlanImage, x: number, y: number): number[] | null {
  for (const { at, colour } of dots) if (Math.hypot(x - at[0], y - at[1]) <= dotPx) return [...colour]
  const away = Math.min(...walls.map((from, i) => distanceTo(from, walls[(i + 1) % walls.length]!, x, y)))
  const cover = Math.min(1, Math.max(0, wallPx / 2 + 0.5 - away))
  return cover === 0 ? null : Array(3).fill(Math.round(PAPER + (INK - PAPER) * cover))
}

function distanceTo(a: readonly [number, number], b: readonly [number, number], x: number, y: number): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy)
}

/** A PNG of 8-bit RGB rows, each led by its filter byte. */
export function pngOf(width: number, height: number, rows: Buffer): Buffer {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([8, 2, 0, 0, 0], 8)
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(name: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const whole = Buffer.alloc(named.length + 8)
  whole.writeUInt32BE(data.length, 0)
  whole.set(named, 4)
  whole.writeUInt32BE(crc32(named), named.length + 4)
  return whole
}

function crc32(bytes: Buffer): number {
  let crc = 0xffffffff
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1
  }
  return (crc ^ 0xffffffff) >>> 0
}

/** A PDF written by hand: each page a drawing in points, y up. */
export function pdfOf(pages: readonly string[], encrypt = ''): Buffer {
  const kids = pages.map((_, i) => `${3 + 2 * i} 0 R`).join(' ')
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    `<< /Type /Pages /Kids [${kids}] /Count ${pages.length} >>`,
    ...pages.flatMap((drawing, i) => [
      `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 842 595] /Contents ${4 + 2 * i} 0 R /Resources << /Font << /F1 << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >> >> >>`,
      `<< /Length ${drawing.length} >>\nstream\n${drawing}\nendstream`,
    ]),
  ]
  let text = '%PDF-1.4\n'
  const starts = objects.map((object, i) => {
    const start = text.length
    text += `${i + 1} 0 obj\n${object}\nendobj\n`
    return start
  })
  const table = starts.map((start) => `${String(start).padStart(10, '0')} 00000 n \n`).join('')
  const size = objects.length + 1
  const trailer = `trailer\n<< /Size ${size} /Root 1 0 R ${encrypt} /ID [<00112233445566778899aabbccddeeff> <00112233445566778899aabbccddeeff>] >>`
  text += `xref\n0 ${size}\n0000000000 65535 f \n${table}${trailer}\nstartxref\n${text.length}\n%%EOF\n`
  return Buffer.from(text, 'latin1')
}
