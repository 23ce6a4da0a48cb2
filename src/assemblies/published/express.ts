import type { BoardLayer, BoardMaterial, CavityLayer, CavityLink, FrameKind, Layer } from '#assemblies/layer.ts'
import type { PublishedRow, TabledBuild } from '#assemblies/published/rows.ts'
import type { KilogramsPerSquareMetre, Millimetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A published build-up in our layers: one list for every choice its one printed value stands for. */
export type Expressed = readonly (readonly Layer[])[]

/** Depth of one row of 38x89 studs: an absorber deeper than this in a double row lies in both. */
const ROW_MM: Millimetres = 89
/** Depth of joists, where a ceiling board is fixed before the channel. */
const JOIST_MM: Millimetres = 235
/** Depth of a resilient channel as the tables count it. */
const CHANNEL_MM: Millimetres = 13

function board(
  material: BoardMaterial,
  thicknessMm: Millimetres,
  surfaceMassKgM2?: KilogramsPerSquareMetre,
): BoardLayer {
  return surfaceMassKgM2 === undefined
    ? { kind: 'board', material, thicknessMm }
    : { kind: 'board', material, thicknessMm, surfaceMassKgM2 }
}

/** Decks as the floor tables write them; a mass is the least the table allows. */
const DECKS: Readonly<Record<string, readonly BoardLayer[]>> = {
  '15.5 subfloor (plywood/OSB/waferboard)': [board('osb', 15.5)],
  '11 + 15.5 subfloor': [board('osb', 11), board('osb', 15.5)],
  '25 gypsum-concrete (>=44 kg/m2) + 15.5 subfloor': [board('gypsum-concrete', 25, 44), board('osb', 15.5)],
  '38 concrete (>=70 kg/m2) + 15.5 subfloor': [board('concrete', 38, 70), board('osb', 15.5)],
}

/** "2x15.9gypX": two 15.9 mm type X boards; "... or ...": each choice; null: not in our materials. */
function leavesOf(text: string): readonly (readonly BoardLayer[])[] | null {
  const deck = DECKS[text]
  if (deck !== undefined) return [deck]
  if (text === '' || text === 'none') return [[]]
  const choices = text.split(' or ').map((choice) => /^(\d)x([\d.]+)gyp([XR])$/.exec(choice))
  const leaves = choices.flatMap((found) =>
    found === null
      ? []
      : [
          Array.from({ length: Number(found[1]) }, () =>
            board(found[3] === 'X' ? 'gypsum-type-x' : 'gypsum-regular', Number(found[2])),
          ),
        ],
  )
  return leaves.length === choices.length ? leaves : null
}

/** One choice of every number a table leaves open. */
interface Choice {
  readonly leaf1: readonly BoardLayer[]
  readonly leaf2: readonly BoardLayer[]
  readonly studs: Millimetres
  readonly channels: Millimetres
  readonly absorber: Millimetres
  readonly build: TabledBuild
}

function cavity(
  depthMm: Millimetres,
  absorberMm: Millimetres,
  link: CavityLink,
  fillAgainst?: CavityLayer['fillAgainst'],
): CavityLayer {
  const fillMm = Math.min(absorberMm, depthMm)
  const against = fillAgainst === undefined || fillMm === depthMm ? {} : { fillAgainst }
  return { kind: 'cavity', depthMm, ...(fillMm > 0 ? { fill: 'mineral-wool', fillMm, ...against } : {}), link }
}

function studKind(framing: string): 'wood-stud' | 'light-steel-stud' | 'load-bearing-steel-stud' {
  if (framing.startsWith('non-load-bearing')) return 'light-steel-stud'
  return framing.startsWith('load-bearing') ? 'load-bearing-steel-stud' : 'wood-stud'
}

function channelOn(frame: FrameKind, choice: Choice): CavityLink {
  return { kind: 'resilient-channel', frame, studSpacingMm: choice.studs, channelSpacingMm: choice.channels }
}

/** A frame between leaf 2 (or the deck) on the far side and leaf 1 (or the ceiling), which hangs on any channel. */
function framed(choice: Choice): readonly Layer[] | null {
  const { build, studs, absorber } = choice
  const depth = build.cavityDepthMm
  if (depth === undefined) return null
  const isDouble = build.connection.startsWith('double')
  const wool = isDouble && absorber > ROW_MM ? 'both' : 'far'
  const between = (link: CavityLink) => [cavity(depth, absorber, link, wool)]
  const ends = (inner: readonly Layer[]): readonly Layer[] => [...choice.leaf2, ...inner, ...choice.leaf1]
  switch (build.connection) {
    case 'direct':
      return ends(between({ kind: studKind(build.framing), spacingMm: studs }))
    case 'resilient channel':
      return ends(between(channelOn(studKind(build.framing), choice)))
    case 'staggered':
      return ends(between({ kind: 'staggered-stud', spacingMm: studs }))
    case 'staggered+resilient channel':
      return ends(between(channelOn('staggered-stud', choice)))
    case 'double':
      return ends(between({ kind: 'none' }))
    case 'double+resilient channel':
      return ends(between(channelOn('separate-studs', choice)))
    case '1 layer direct + resilient channel through it + 1 layer':
      return ends([
        cavity(JOIST_MM, absorber, { kind: 'wood-stud', spacingMm: studs }),
        ...choice.leaf1,
        cavity(CHANNEL_MM, 0, channelOn('wood-stud', { ...choice, studs })),
      ])
    default:
      return null
  }
}

/** Spacing of strapping, studs and channels on block, where the connection's own words give it. */
const ON_BLOCK_MM: Millimetres = 600

function liningOnBlock(choice: Choice): CavityLink | null {
  const { connection } = choice.build
  if (connection.startsWith('resilient channel')) {
    return { kind: 'resilient-channel', frame: 'masonry', channelSpacingMm: ON_BLOCK_MM }
  }
  if (connection.startsWith('38 mm wood strapping')) return { kind: 'wood-stud', spacingMm: ON_BLOCK_MM }
  if (connection.startsWith('38x64 wood studs')) return { kind: 'none' }
  if (connection.startsWith('50 mm Z-bars')) {
    return { kind: 'resilient-channel', frame: 'masonry', channelSpacingMm: ON_BLOCK_MM }
  }
  return null
}

function onBlock(choice: Choice): readonly Layer[] | null {
  const { build, leaf1, leaf2, absorber } = choice
  const thickness = Number(/^(\d+) mm hollow/.exec(build.framing)?.[1])
  const core = board('concrete-block-hollow', thickness)
  if (build.connection === 'none') return [core]
  if (build.connection === 'direct') return [...leaf1, core, ...leaf2]
  const link = liningOnBlock(choice)
  if (link === null || build.cavityDepthMm === undefined) return null
  const lining = cavity(build.cavityDepthMm, absorber, link)
  if (build.connection.endsWith('both sides')) return [...leaf2, lining, core, lining, ...leaf1]
  return [...leaf2, core, lining, ...leaf1]
}

/** A list's entries, or one stand-in where the table leaves the column empty. */
function orOne(values: readonly number[], standIn: number): readonly number[] {
  return values.length > 0 ? values : [standIn]
}

function choicesOf(build: TabledBuild): readonly Choice[] | null {
  const leaves1 = leavesOf(build.leaf1)
  const leaves2 = leavesOf(build.leaf2)
  if (leaves1 === null || leaves2 === null) return null
  const isFloor = DECKS[build.leaf1] !== undefined
  const both = leaves1.flatMap((one, i) =>
    leaves2.flatMap((two, j) => {
      // "12.7 or 15.9" on both faces means the same on both.
      if (build.leaf1 === build.leaf2 && i !== j) return []
      return [isFloor ? { leaf1: two, leaf2: one } : { leaf1: one, leaf2: two }]
    }),
  )
  return both.flatMap((leaves) =>
    orOne(build.studSpacingMm, ON_BLOCK_MM).flatMap((studs) =>
      orOne(build.channelSpacingMm, ON_BLOCK_MM).flatMap((channels) =>
        orOne(build.absorberMm, 0).map((absorber) => ({ ...leaves, studs, channels, absorber, build })),
      ),
    ),
  )
}

/** A published row in our layers, far side to room, or the sentence why it cannot be written in them. */
export function expressRow(row: PublishedRow): Result<Expressed, string> {
  if (row.layers !== undefined) return ok([row.layers])
  if (row.build === undefined) return fail('the table does not say enough about the build-up')
  const choices = choicesOf(row.build)
  if (choices === null) return fail('a leaf is of a material we have no properties for')
  const isBlock = row.build.framing.includes('block core')
  const lists = choices.flatMap((choice) => {
    const layers = isBlock ? onBlock(choice) : framed(choice)
    return layers === null ? [] : [layers]
  })
  if (lists.length === 0) return fail(unfit(row.build))
  return ok(lists)
}

function unfit({ connection, cavityDepthMm }: TabledBuild): string {
  return cavityDepthMm === undefined
    ? 'the table does not give the depth of the cavity'
    : `we have no link for "${connection}"`
}
