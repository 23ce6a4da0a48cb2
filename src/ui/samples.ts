import basement from '#samples/basement/project.json?raw'
import garage from '#samples/garage/project.json?raw'
import outbuilding from '#samples/outbuilding/project.json?raw'

export interface Sample {
  readonly id: string
  readonly name: string
  /** One line: what it shows. */
  readonly about: string
  /** The project file as text. */
  readonly text: string
}

/** The first one is what a first visit opens on. */
export const SAMPLES: readonly [Sample, ...Sample[]] = [
  {
    id: 'garage',
    name: 'Garage',
    about: 'A detached single garage becoming a drum and band practice room: bare stud walls, trusses, slab on ground.',
    text: garage,
  },
  {
    id: 'basement',
    name: 'Basement',
    about: 'A basement becoming a screening room: concrete walls, joists under a living room, a boxed column.',
    text: basement,
  },
  {
    id: 'outbuilding',
    name: 'Outbuilding',
    about:
      'A block outbuilding becoming a room for voice and piano: two piers that set the linings, a felt roof, metric.',
    text: outbuilding,
  },
]
