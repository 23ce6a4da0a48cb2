import { fail, ok, type Result } from '#units/result.ts'

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'
const PAD = 61
/** Text is put together in pieces: one call takes only so many letters. A whole number of threes and fours. */
const PIECE = 12_288

const CODES = Uint8Array.from(LETTERS, (letter) => letter.charCodeAt(0))
const VALUES = valueTable()

/** Bytes as base64 text. @source RFC 4648, section 4, memory */
export function encodeBase64(bytes: Uint8Array): string {
  let text = ''
  for (let start = 0; start < bytes.length; start += PIECE) text += encodePiece(bytes.subarray(start, start + PIECE))
  return text
}

function encodePiece(bytes: Uint8Array): string {
  const codes = new Uint8Array(Math.ceil(bytes.length / 3) * 4).fill(PAD)
  for (let from = 0, to = 0; from < bytes.length; from += 3, to += 4) {
    const left = bytes.length - from
    const three = ((bytes[from] ?? 0) << 16) | ((bytes[from + 1] ?? 0) << 8) | (bytes[from + 2] ?? 0)
    const letters = Math.min(left, 3) + 1
    for (let letter = 0; letter < letters; letter += 1) {
      codes[to + letter] = CODES[(three >> (18 - 6 * letter)) & 63] ?? PAD
    }
  }
  return String.fromCharCode(...codes)
}

/** The bytes a base64 text stands for; fails with the place of the first letter that belongs to no such text. */
export function decodeBase64(text: string): Result<Uint8Array, string> {
  const length = text.length - (text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0)
  if (text.length % 4 !== 0) return fail('it ends before its last letter')
  const bytes = new Uint8Array(Math.floor((length * 3) / 4))
  let held = 0
  let to = 0
  for (let at = 0; at < length; at += 1) {
    const value = VALUES[text.charCodeAt(at)] ?? STRANGER
    if (value === STRANGER) return fail(`letter ${at + 1} does not belong in it`)
    held = ((held << 6) | value) & 0xffffff
    const place = at % 4
    if (place > 0) bytes[to++] = (held >> (6 - 2 * place)) & 0xff
  }
  return ok(bytes)
}

/** What stands for no six bits. */
const STRANGER = 255

function valueTable(): Uint8Array {
  const table = new Uint8Array(128).fill(255)
  CODES.forEach((code, value) => {
    table[code] = value
  })
  return table
}
