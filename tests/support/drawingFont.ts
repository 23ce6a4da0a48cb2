import { inflateSync } from 'node:zlib'

/** Tables of an uncompressed outline font, by their four-letter name. */
export type FontTables = ReadonlyMap<string, Buffer>

/** What a drawing needs to know of a font, in font units. */
export interface FontFacts {
  readonly unitsPerEm: number
  readonly ascent: number
  readonly descent: number
  readonly capHeight: number
  readonly xHeight: number
  /** Advance width by character. */
  readonly widths: Readonly<Record<string, number>>
}

/** Unpacks a WOFF 1.0 file. @source WOFF File Format 1.0, W3C 2012, section 3, memory */
export function readWoff(file: Buffer): FontTables {
  const tables = new Map<string, Buffer>()
  const count = file.readUInt16BE(12)
  for (let index = 0; index < count; index++) {
    const entry = 44 + index * 20
    const offset = file.readUInt32BE(entry + 4)
    const packed = file.readUInt32BE(entry + 8)
    const plain = file.readUInt32BE(entry + 12)
    const bytes = file.subarray(offset, offset + packed)
    tables.set(file.toString('latin1', entry, entry + 4), packed < plain ? inflateSync(bytes) : Buffer.from(bytes))
  }
  return tables
}

/** Reads the table directory of a TrueType file. */
export function readTrueType(file: Buffer): FontTables {
  const tables = new Map<string, Buffer>()
  const count = file.readUInt16BE(4)
  for (let index = 0; index < count; index++) {
    const entry = 12 + index * 16
    const offset = file.readUInt32BE(entry + 8)
    tables.set(file.toString('latin1', entry, entry + 4), file.subarray(offset, offset + file.readUInt32BE(entry + 12)))
  }
  return tables
}

/** Writes the tables as a TrueType file; kerning is left out, so that every program sets text as wide as we measure it. */
export function writeTrueType(tables: FontTables): Buffer {
  const names = [...tables.keys()].filter((name) => name !== 'GPOS' && name !== 'GSUB').sort()
  const power = 2 ** Math.floor(Math.log2(names.length))
  const header = Buffer.alloc(12 + 16 * names.length)
  header.writeUInt32BE(0x00010000, 0)
  header.writeUInt16BE(names.length, 4)
  header.writeUInt16BE(power * 16, 6)
  header.writeUInt16BE(Math.log2(power), 8)
  header.writeUInt16BE((names.length - power) * 16, 10)
  const bodies: Buffer[] = []
  let offset = header.length
  names.forEach((name, index) => {
    const body = tables.get(name)!
    const padded = Buffer.alloc(Math.ceil(body.length / 4) * 4)
    body.copy(padded)
    const entry = 12 + index * 16
    header.write(name, entry, 'latin1')
    header.writeUInt32BE(checksum(padded), entry + 4)
    header.writeUInt32BE(offset, entry + 8)
    header.writeUInt32BE(body.length, entry + 12)
    bodies.push(padded)
    offset += padded.length
  })
  return Buffer.concat([header, ...bodies])
}

/**
 * Gives both weights one family name, so that a renderer finds them as weights of it; copyright and licence stay.
 * @param style  Regular or SemiBold
 */
export function nameFamily(tables: FontTables, family: string, style: string): FontTables {
  const old = tables.get('name')!
  const strings = old.readUInt16BE(4)
  const kept: [number, Buffer][] = []
  for (let index = 0; index < old.readUInt16BE(2); index++) {
    const entry = 6 + 12 * index
    const id = old.readUInt16BE(entry + 6)
    const start = strings + old.readUInt16BE(entry + 10)
    if (id <= 14) kept.push([id, old.subarray(start, start + old.readUInt16BE(entry + 8))])
  }
  const fresh = new Map([
    [1, family],
    [2, style],
    [4, `${family} ${style}`],
  ])
  const records = kept.map(([id, text]): [number, Buffer] => {
    const replacement = fresh.get(id)
    return [id, replacement === undefined ? text : Buffer.from(replacement, 'utf16le').swap16()]
  })
  return new Map([...tables, ['name', nameTable(records)]])
}

/** Windows, Unicode, American English. @source OpenType specification, name, memory */
function nameTable(records: readonly [number, Buffer][]): Buffer {
  const header = Buffer.alloc(6 + 12 * records.length)
  header.writeUInt16BE(records.length, 2)
  header.writeUInt16BE(header.length, 4)
  let offset = 0
  records.forEach(([id, text], index) => {
    const fields = [3, 1, 0x409, id, text.length, offset]
    fields.forEach((field, column) => {
      header.writeUInt16BE(field, 6 + 12 * index + 2 * column)
    })
    offset += text.length
  })
  return Buffer.concat([header, ...records.map(([, text]) => text)])
}

function checksum(bytes: Buffer): number {
  let sum = 0
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + bytes.readUInt32BE(at)) >>> 0
  return sum
}

/** Metrics and advance widths of every printable character the font maps. */
export function fontFacts(tables: FontTables): FontFacts {
  const head = tables.get('head')!
  const across = tables.get('hhea')!
  const general = tables.get('OS/2')!
  const advances = tables.get('hmtx')!
  const advanceCount = across.readUInt16BE(34)
  const widths: Record<string, number> = {}
  for (const [code, glyph] of characterMap(tables.get('cmap')!)) {
    if (code < 0x20 || isUnseen(code)) continue
    widths[String.fromCodePoint(code)] = advances.readUInt16BE(Math.min(glyph, advanceCount - 1) * 4)
  }
  return {
    unitsPerEm: head.readUInt16BE(18),
    ascent: across.readInt16BE(4),
    descent: -across.readInt16BE(6),
    capHeight: general.readInt16BE(88),
    xHeight: general.readInt16BE(86),
    widths,
  }
}

/** Combining marks, zero-width and replacement characters: never set on a drawing. */
function isUnseen(code: number): boolean {
  return (code >= 0x300 && code <= 0x36f) || (code >= 0x2000 && code <= 0x200f) || code >= 0xfe00 || code === 0xad
}

/** Character code to glyph, from a format 4 table. @source OpenType specification, cmap, memory */
function characterMap(cmap: Buffer): Map<number, number> {
  const glyphs = new Map<number, number>()
  const table = cmap.readUInt32BE(8)
  if (cmap.readUInt16BE(table) !== 4) throw new Error('expected a format 4 character map')
  const segments = cmap.readUInt16BE(table + 6) / 2
  for (let segment = 0; segment < segments; segment++) {
    const last = cmap.readUInt16BE(table + 14 + 2 * segment)
    const first = cmap.readUInt16BE(table + 16 + 2 * segments + 2 * segment)
    const delta = cmap.readUInt16BE(table + 16 + 4 * segments + 2 * segment)
    const rangeAt = table + 16 + 6 * segments + 2 * segment
    const range = cmap.readUInt16BE(rangeAt)
    for (let code = first; code <= last && code !== 0xffff; code++) {
      const listed = range === 0 ? code : cmap.readUInt16BE(rangeAt + range + 2 * (code - first))
      if (listed !== 0) glyphs.set(code, (listed + delta) & 0xffff)
    }
  }
  return glyphs
}
