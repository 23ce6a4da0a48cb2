/** Numbers 0..1 that only look random: the same seed gives the same ones. @source mulberry32, public domain, memory */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

/** White noise of root mean square 1, near enough to a bell curve: twelve even numbers added. */
export function whiteNoise(length: number, seed: number): Float64Array {
  const next = randomFrom(seed)
  const one = () => {
    let sum = -6
    for (let i = 0; i < 12; i += 1) sum += next()
    return sum
  }
  return Float64Array.from({ length }, one)
}
