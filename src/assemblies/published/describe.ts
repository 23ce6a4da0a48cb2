import type { PublishedRow, TabledBuild } from '#assemblies/published/rows.ts'

function leafWords(leaf: string): string {
  return leaf
    .replaceAll(/(\d)x([\d.]+)gypX/g, '$1 x $2 mm type X board')
    .replaceAll(/(\d)x([\d.]+)gypR/g, '$1 x $2 mm regular board')
}

function choiceWords(values: readonly number[]): string {
  return values.join(' or ')
}

function frameWords(build: TabledBuild): string {
  const spacing = build.studSpacingMm.length > 0 ? ` at ${choiceWords(build.studSpacingMm)} mm` : ''
  return `${build.framing}${spacing}`
}

function tieWords({ connection, channelSpacingMm }: TabledBuild): string {
  if (connection === 'direct') return 'boards fixed straight'
  if (connection === 'none') return 'bare'
  return channelSpacingMm.length > 0 ? `${connection} at ${choiceWords(channelSpacingMm)} mm` : connection
}

/** A published row as one line: leaf, frame, tie, absorber, leaf. */
export function rowWords(row: PublishedRow): string {
  const { build } = row
  if (build === undefined) return row.description ?? row.id
  const absorber = build.absorberMm.filter((depth) => depth > 0)
  const isWithout = build.connection === 'none' || (build.connection === 'direct' && build.cavityDepthMm === 0)
  const fill = absorber.length > 0 ? `${choiceWords(build.absorberMm)} mm absorber` : 'no absorber'
  return [
    leafWords(build.leaf1),
    frameWords(build),
    tieWords(build),
    ...(isWithout ? [] : [fill]),
    leafWords(build.leaf2),
  ]
    .filter((part) => part !== '' && part !== 'none')
    .join(', ')
}
