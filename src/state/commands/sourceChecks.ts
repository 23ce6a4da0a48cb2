import { OCTAVE_KEYS, type OctaveValues } from '#acoustics/bands.ts'
import type { Measured, Source } from '#analysis/target.ts'
import { HIGHEST_DB, LOWEST_DB, MOST_SD_DB } from '#project/limits.ts'
import type { Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { named } from '#state/commands/check.ts'

/** Why a source cannot be as it was said to be. */
export function sourceRefusal({ sources }: Project, source: Source): Refusal | null {
  return named('A source', source.name) ?? taken(sources, source) ?? levelRefusal(source) ?? spreadRefusal(source)
}

/** A refusal where another of the same kind has the name, so that lists tell them apart. */
export function taken<Named extends { readonly id: string; readonly name: string }>(
  others: readonly Named[],
  { id, name }: Named,
): Refusal | null {
  if (!others.some((other) => other.id !== id && other.name === name)) return null
  return { code: 'name-taken', message: `There is already "${name}" in this list; give this one another name.` }
}

function levelRefusal({ name, levelsDb }: Source): Refusal | null {
  return valuesRefusal(`"${name}": its level`, levelsDb)
}

function spreadRefusal({ name, sdDb }: Source): Refusal | null {
  if (Number.isFinite(sdDb) && sdDb >= 0 && sdDb <= MOST_SD_DB) return null
  const message = `"${name}": its spread has to be a number from 0 to ${MOST_SD_DB} dB; the former one was kept.`
  return { code: 'bad-spread', message }
}

/** Why level differences measured on site cannot be kept. */
export function measuredRefusal({ name, differenceDb }: Measured): Refusal | null {
  const refused = named('A measured set', name) ?? valuesRefusal(`"${name}": the difference`, differenceDb)
  if (refused) return refused
  if (OCTAVE_KEYS.some((key) => differenceDb[key] !== null)) return null
  return { code: 'nothing-measured', message: `"${name}" has no value in any octave; type at least one.` }
}

function valuesRefusal(what: string, values: OctaveValues): Refusal | null {
  for (const key of OCTAVE_KEYS) {
    const value: number | null | undefined = values[key]
    if (value === null) continue
    if (value !== undefined && Number.isFinite(value) && value >= LOWEST_DB && value <= HIGHEST_DB) continue
    const message = `${what} at ${key} Hz has to be a number from ${LOWEST_DB} to ${HIGHEST_DB} dB; leave it empty where it is not known.`
    return { code: 'bad-level', message }
  }
  return null
}
