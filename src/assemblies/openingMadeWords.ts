import type { Catalogue } from '#assemblies/assembly.ts'
import type { OpeningMade, SealCondition } from '#assemblies/opening.ts'

const SHORT_SEALS: Readonly<Record<SealCondition, string>> = {
  good: 'seals good',
  worn: 'seals worn',
  undercut: 'undercut',
}

/** Two solid-core, 230 mm · seals good: what fills an opening in a few words. */
export function madeWords(made: OpeningMade | null, { openingTypes }: Pick<Catalogue, 'openingTypes'>): string {
  if (!made) return 'not known yet'
  const type = openingTypes.get(made.type)
  if (!type) return `"${made.type}", which the catalogue does not have`
  const second = made.second && openingTypes.get(made.second.type)
  const behind = second ? ` + ${second.shortName}` : ''
  const panes = made.panes
    ? `, ${made.panes.outer.thicknessMm} | ${made.panes.gapMm} | ${made.panes.inner.thicknessMm} mm`
    : ''
  const seals =
    type.seals === 'none' || (type.seals === 'cracks-included' && made.seal === 'good')
      ? ''
      : `, ${SHORT_SEALS[made.seal]}`
  return `${type.shortName}${behind}${panes}${seals}`
}
