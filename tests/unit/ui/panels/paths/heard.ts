import { sourcePreset } from '#analysis/presets.ts'
import type { Receiver } from '#analysis/target.ts'
import type { OpeningMade } from '#assemblies/opening.ts'
import type { Project } from '#project/project.ts'
import { sourceOf, usualReceiver } from '#state/usualTargets.ts'
import { invariant } from '#units/result.ts'
import { sampleProject } from '../samples.ts'

const MADE: Readonly<Record<string, OpeningMade>> = {
  'vehicle-door': { type: 'infill', seal: 'good' },
  door: { type: 'door-solid-core', seal: 'good' },
  window: { type: 'plug', seal: 'good' },
}

/** The garage with a drum kit in it and somebody in the open who must not hear it; every opening is known. */
export function heardGarage(change: Partial<Receiver> = {}): Project {
  const sample = sampleProject('garage')
  const [garage] = sample.rooms
  const kit = sourcePreset('drum-kit-hard')
  invariant(garage && kit, 'the sample has a room and the presets a kit')
  const openings = garage.openings.map((opening) => ({ ...opening, made: MADE[opening.kind] }))
  const room = { ...garage, openings, ducts: [] }
  const sources = [{ ...sourceOf(kit), id: 'source-1' }]
  const usual = usualReceiver('outdoors', room, { sources })
  const receiver = { ...usual, id: 'receiver-1', name: 'Bedroom window', source: 'source-1', ...change }
  const schemes = sample.schemes.map(({ id, name, choices }) => ({ id, name, choices }))
  return { ...sample, rooms: [room], sources, receivers: [receiver], schemes }
}
