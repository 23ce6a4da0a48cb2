import type { Assembly } from '#assemblies/assembly.ts'
import { OWN_SOURCE } from '#assemblies/ownAssembly.ts'
import { deepFreeze } from './samples.ts'

/** An own assembly as somebody would build it: a gap with studs of its own and two different boards. */
export function anOwnAssembly(change: Partial<Assembly> = {}): Assembly {
  return deepFreeze({
    id: 'own-1',
    name: 'Mixed boards on own studs',
    shortName: 'mixed boards',
    surface: 'wall',
    fixedTo: 'independent',
    layers: [
      {
        kind: 'cavity',
        depthMm: 100,
        fill: 'mineral-wool',
        fillMm: 60,
        link: { kind: 'none' },
        frame: {
          name: 'own wood studs',
          depthMm: 63.5,
          massKgM2: 1.8,
          members: { material: 'wood', depthMm: 63.5, spacingMm: 609.6 },
        },
      },
      { kind: 'board', material: 'plywood', thicknessMm: 18 },
      { kind: 'damping-compound' },
      { kind: 'board', material: 'gypsum-type-x', thicknessMm: 15.875, surfaceMassKgM2: 10.7 },
    ],
    woolInOpenBays: true,
    needsBareFrame: false,
    loadsExistingJoists: false,
    costBand: 3,
    cautions: ['Invented for a test.'],
    source: OWN_SOURCE,
    ...change,
  })
}
