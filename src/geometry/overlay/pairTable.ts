/** Numbers pairs of whole numbers in the order they first come: places of the grid, ends of an edge. */
export interface PairTable {
  first: Int32Array
  second: Int32Array
  count: number
  slots: Int32Array
}

export function createPairTable(expected: number): PairTable {
  let size = 64
  while (size < expected * 2) size *= 2
  return {
    first: new Int32Array(size >> 1),
    second: new Int32Array(size >> 1),
    count: 0,
    slots: new Int32Array(size),
  }
}

/** The number of the pair; a new one is added. */
export function pairNumber(table: PairTable, first: number, second: number): number {
  const mask = table.slots.length - 1
  let slot = hash(first, second) & mask
  for (;;) {
    const held = table.slots[slot]! - 1
    if (held < 0) break
    if (table.first[held] === first && table.second[held] === second) return held
    slot = (slot + 1) & mask
  }
  if (table.count >= table.first.length) {
    grow(table)
    return pairNumber(table, first, second)
  }
  const added = table.count++
  table.slots[slot] = added + 1
  table.first[added] = first
  table.second[added] = second
  return added
}

function hash(first: number, second: number): number {
  const mixed = Math.imul(first, 0x9e3779b1) + Math.imul(second, 0x85ebca6b)
  const spread = Math.imul(mixed ^ (mixed >>> 16), 0xc2b2ae35)
  return spread ^ (spread >>> 15)
}

function grow(table: PairTable): void {
  const { first, second, count } = table
  table.slots = new Int32Array(table.slots.length * 2)
  table.first = new Int32Array(first.length * 2)
  table.second = new Int32Array(first.length * 2)
  table.count = 0
  for (let k = 0; k < count; k++) pairNumber(table, first[k]!, second[k]!)
}
