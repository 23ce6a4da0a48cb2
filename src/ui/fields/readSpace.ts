import { formatArea, formatVolume } from '#units/format.ts'
import { CUBIC_FEET_PER_M3, type LengthUnit, SQUARE_FEET_PER_M2 } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** What is measured in metres or feet twice or three times over. */
export type SpaceKind = 'area' | 'volume'

interface SpaceRule {
  readonly feetPerMetre: number
  readonly text: (value: number, unit: LengthUnit) => string
  readonly metric: RegExp
  readonly imperial: RegExp
  readonly named: readonly [metric: string, imperial: string]
}

const RULES: Readonly<Record<SpaceKind, SpaceRule>> = {
  area: {
    feetPerMetre: SQUARE_FEET_PER_M2,
    text: formatArea,
    metric: /^(m2|m²|sq ?m)$/i,
    imperial: /^(ft2|ft²|sq ?ft)$/i,
    named: ['m2', 'ft2'],
  },
  volume: {
    feetPerMetre: CUBIC_FEET_PER_M3,
    text: formatVolume,
    metric: /^(m3|m³|cu ?m)$/i,
    imperial: /^(ft3|ft³|cu ?ft)$/i,
    named: ['m3', 'ft3'],
  },
}

const WRITTEN = /^([-+]?(?:\d+\.?\d*|\.\d+))\s*(\D.*)?$/
/** 1,060 is a thousand and sixty: a comma before three digits parts thousands. */
const THOUSANDS = /,(?=\d{3}(\D|$))/g

/**
 * A typed area or volume; a bare number is in the project's unit.
 * @returns m2 or m3, or a sentence saying what is wrong and what now
 * @example readSpace('1,060 ft3', 'mm', 'volume') // 30.0
 */
export function readSpace(text: string, unit: LengthUnit, kind: SpaceKind): Result<number, string> {
  const rule = RULES[kind]
  const [, number, named] = WRITTEN.exec(text.trim().replace('−', '-').replace(THOUSANDS, '')) ?? []
  const isMetric = named === undefined ? unit === 'mm' : rule.metric.test(named)
  const isKnown = named === undefined || isMetric || rule.imperial.test(named)
  if (number === undefined || !isKnown) {
    return fail(`It is a number with ${rule.named.join(' or ')} after it, such as 30 ${rule.named[0]}.`)
  }
  return ok(isMetric ? Number(number) : Number(number) / rule.feetPerMetre)
}

/** What a field shows while nobody types. */
export function spaceText(value: number, unit: LengthUnit, kind: SpaceKind): string {
  return RULES[kind].text(value, unit)
}

/** In both units, the reader's first: 1,059 ft³ · 30.00 m³. */
export function bothSpaces(value: number, unit: LengthUnit, kind: SpaceKind): string {
  return `${spaceText(value, unit, kind)} · ${spaceText(value, unit === 'mm' ? 'ft-in' : 'mm', kind)}`
}

/** What is shown as the same is the same: a field that is only left changes nothing. */
export function isSameSpace(a: number | null, b: number | null, unit: LengthUnit, kind: SpaceKind): boolean {
  return a === b || (a !== null && b !== null && spaceText(a, unit, kind) === spaceText(b, unit, kind))
}
