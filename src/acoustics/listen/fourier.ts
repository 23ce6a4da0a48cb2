import { invariant } from '#units/result.ts'

/** A signal as frequencies: real and imaginary parts, as many as it has samples. */
export interface Spectrum {
  readonly re: Float64Array
  readonly im: Float64Array
}

/** Puts samples in bit-reversed order. */
function reorder(values: Float64Array): void {
  let to = 0
  for (let from = 1; from < values.length; from += 1) {
    let bit = values.length >> 1
    for (; to & bit; bit >>= 1) to ^= bit
    to ^= bit
    if (from < to) {
      const kept = values[from]!
      values[from] = values[to]!
      values[to] = kept
    }
  }
}

/** One round of butterflies over blocks of `size`. */
function combine({ re, im }: Spectrum, size: number, cos: Float64Array, sin: Float64Array): void {
  const half = size / 2
  const stride = re.length / size
  for (let block = 0; block < re.length; block += size) {
    for (let i = 0; i < half; i += 1) {
      const low = block + i
      const high = low + half
      const c = cos[i * stride]!
      const s = sin[i * stride]!
      const x = re[high]! * c - im[high]! * s
      const y = re[high]! * s + im[high]! * c
      re[high] = re[low]! - x
      im[high] = im[low]! - y
      re[low] = re[low]! + x
      im[low] = im[low]! + y
    }
  }
}

/** Fast Fourier transform in place; `direction` -1 to frequencies, 1 back (not divided by the length). */
function transform(spectrum: Spectrum, direction: 1 | -1): void {
  const { length } = spectrum.re
  invariant(length > 1 && Number.isInteger(Math.log2(length)), 'a loop has a power of two of samples')
  const angle = (i: number) => (direction * 2 * Math.PI * i) / length
  const cos = Float64Array.from({ length: length / 2 }, (_, i) => Math.cos(angle(i)))
  const sin = Float64Array.from({ length: length / 2 }, (_, i) => Math.sin(angle(i)))
  reorder(spectrum.re)
  reorder(spectrum.im)
  for (let size = 2; size <= length; size *= 2) combine(spectrum, size, cos, sin)
}

/** Frequencies of a loop; its length a power of two. @source Cooley and Tukey 1965, radix two, memory */
export function toSpectrum(loop: ArrayLike<number>): Spectrum {
  const spectrum = { re: Float64Array.from(loop), im: new Float64Array(loop.length) }
  transform(spectrum, -1)
  return spectrum
}

/** The loop with these frequencies; `spectrum` is left as it was. */
export function toLoop(spectrum: Spectrum): Float64Array {
  const work = { re: Float64Array.from(spectrum.re), im: Float64Array.from(spectrum.im) }
  transform(work, 1)
  return work.re.map((value) => value / work.re.length)
}
