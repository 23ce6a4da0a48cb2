import type { Assembly, SurfaceKind } from '#assemblies/assembly.ts'
import { type CavityLayer, isUnknownFloat, type Layer } from '#assemblies/layer.ts'

type Built = Pick<Assembly, 'surface' | 'layers'>

/** What whoever builds these layers has to know, whoever thought them up. @source common practice, no source */
export function usualCautions({ surface, layers }: Built): readonly string[] {
  const cavities = layers.filter((layer) => layer.kind === 'cavity')
  const floats = layers.some((layer) => layer.kind === 'filler' && layer.floats)
  return [
    ...cavities.flatMap((cavity) => linkCautions(cavity, surface)),
    ...(cavities.some(isDecoupled) ? [NOTHING_RIGID] : []),
    ...(layers.some(isUnknownFloat) ? [NOT_PREDICTED] : floats ? [STIFFNESS_GIVEN] : []),
    ...(layers.some(isFoam) ? [THERMAL_BARRIER] : []),
    ...surfaceCautions(surface),
  ].filter((text, i, all) => all.indexOf(text) === i)
}

/** Those sentences and the assembly's own, each once. */
export function allCautions(assembly: Pick<Assembly, 'surface' | 'layers' | 'cautions'>): readonly string[] {
  return [...new Set([...assembly.cautions, ...usualCautions(assembly)])]
}

const NOTHING_RIGID =
  'Nothing rigid may join the new boards to the old structure: hold board edges 6 mm (1/4 in) off the floor, the adjoining walls and the ceiling, and fill that joint with acoustic sealant.'
const NOT_PREDICTED =
  'The floating part is not in the predicted airborne figure, for nobody has said how stiff the layer under it is; it is built for impact and structure-borne sound.'
const STIFFNESS_GIVEN =
  'The airborne figure rests on a stiffness from memory for what the floor floats on; footsteps and structure-borne sound, which it is built for, are not in it.'
const THERMAL_BARRIER =
  'Foam plastics inside a room need a thermal barrier: the boards must cover all of it, at the rim and round openings too.'
const VAPOUR =
  'Keep vapour control on the side your climate asks for, and do not shut moisture in between two vapour-tight layers.'

/** Anything but studs that go straight through. */
function isDecoupled({ link }: CavityLayer): boolean {
  return link.kind !== 'wood-stud' && link.kind !== 'light-steel-stud' && link.kind !== 'load-bearing-steel-stud'
}

function isFoam(layer: Layer): boolean {
  return layer.kind === 'filler' && /foam/i.test(layer.name)
}

function linkCautions({ link }: CavityLayer, surface: SurfaceKind): readonly string[] {
  const carrier = surface === 'wall' ? 'stud' : 'joist'
  switch (link.kind) {
    case 'resilient-channel':
      return [
        `Screws must catch the channel only: one screw that reaches a ${carrier} ties the board to the structure again, so use 25 mm (1 in) screws for one board and check the length for two.`,
        surface === 'ceiling'
          ? 'Never fix channel over an existing ceiling board: take it down first, because the shallow void between two boards undoes the channel.'
          : 'Never fix channel over an existing board or sheathing: the wall then performs about as if there were no channel, so take the lining off first.',
      ]
    case 'sound-clip':
    case 'low-profile-clip':
      return ['Take the load each clip may carry from its maker: spread weight over more clips where boards are added.']
    case 'spring-hanger':
      return [
        'Choose the springs for the weight they really get: outside their working range they lock solid or bottom out.',
      ]
    case 'none':
    case 'staggered-stud':
    case 'wood-stud':
    case 'light-steel-stud':
    case 'load-bearing-steel-stud':
      return []
  }
}

function surfaceCautions(surface: SurfaceKind): readonly string[] {
  switch (surface) {
    case 'wall':
      return [
        'Sockets and switches go in sealed boxes with putty pads, never back to back; bring cables in at one sealed place.',
        'If this wall has to hold back fire, choose the boards and joints from a listed design that includes this way of fixing, and ask the building official before work starts.',
        VAPOUR,
      ]
    case 'ceiling':
      return [
        'Recessed lights break this ceiling: use surface fittings, or box them in with the same boards and seal the box.',
        'If this ceiling has to hold back fire, choose the boards and joints from a listed design that includes this way of fixing, and ask the building official before work starts.',
        VAPOUR,
      ]
    case 'floor':
      return [
        'Door undercuts, thresholds and the first or last stair riser change with the floor: check them before ordering.',
      ]
  }
}
