/** Something that takes space and gives quiet. */
export interface Trade {
  readonly depth: number
  /** null: not rated. */
  readonly quiet: number | null
}

/** Those that nothing beats: no other takes less and gives as much or more. From little depth to much. */
export function frontier<Entry extends Trade>(entries: readonly Entry[]): readonly (Entry & { quiet: number })[] {
  const rated = entries.filter((entry): entry is Entry & { quiet: number } => entry.quiet !== null)
  const sorted = [...rated].sort((a, b) => a.depth - b.depth || b.quiet - a.quiet)
  const best: (Entry & { quiet: number })[] = []
  for (const entry of sorted) {
    if (best.length === 0 || entry.quiet > best.at(-1)!.quiet) best.push(entry)
  }
  return best
}
