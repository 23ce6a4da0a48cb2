import { analyseScheme, type SchemeAnalysis } from '#analysis/analyse.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Catalogue } from '#assemblies/assembly.ts'

/** Computes a scheme's results, remembering the answer as long as the room and the scheme are the same objects. */
export type ResultsMemo = (room: Room, scheme: Scheme) => SchemeAnalysis

export function createResultsMemo(catalogue: Catalogue): ResultsMemo {
  const byRoom = new WeakMap<Room, WeakMap<Scheme, SchemeAnalysis>>()
  return (room, scheme) => {
    const known = byRoom.get(room) ?? new WeakMap<Scheme, SchemeAnalysis>()
    byRoom.set(room, known)
    const remembered = known.get(scheme)
    if (remembered) return remembered
    const computed = analyseScheme({ room, scheme, catalogue, quality: 'plot' })
    known.set(scheme, computed)
    return computed
  }
}
