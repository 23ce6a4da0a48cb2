import type { OpeningType } from '#assemblies/opening.ts'
import { usualOpeningCautions } from '#assemblies/openingCautions.ts'
import { openingTypeSchema } from '#assemblies/openingSchema.ts'
import doorAcoustic from '#assemblies/openings/door-acoustic.json' with { type: 'json' }
import doorAcoustic100 from '#assemblies/openings/door-acoustic-100.json' with { type: 'json' }
import doorAcoustic100Damped from '#assemblies/openings/door-acoustic-100-damped.json' with { type: 'json' }
import doorAcoustic180 from '#assemblies/openings/door-acoustic-180.json' with { type: 'json' }
import doorHardwood66 from '#assemblies/openings/door-hardwood-66.json' with { type: 'json' }
import doorHardwoodCracks from '#assemblies/openings/door-hardwood-cracks.json' with { type: 'json' }
import doorHollowCore from '#assemblies/openings/door-hollow-core.json' with { type: 'json' }
import doorHollowCoreCracks from '#assemblies/openings/door-hollow-core-cracks.json' with { type: 'json' }
import doorMetalFilled from '#assemblies/openings/door-metal-filled.json' with { type: 'json' }
import doorMetalHollow from '#assemblies/openings/door-metal-hollow.json' with { type: 'json' }
import doorSolidCore from '#assemblies/openings/door-solid-core.json' with { type: 'json' }
import doorSolidWood from '#assemblies/openings/door-solid-wood.json' with { type: 'json' }
import doorSteelFoam from '#assemblies/openings/door-steel-foam.json' with { type: 'json' }
import doorStudioSet from '#assemblies/openings/door-studio-set.json' with { type: 'json' }
import infill from '#assemblies/openings/infill.json' with { type: 'json' }
import lobbySolidCore from '#assemblies/openings/lobby-solid-core.json' with { type: 'json' }
import pairHollowCore from '#assemblies/openings/pair-hollow-core.json' with { type: 'json' }
import pairMetalFilled from '#assemblies/openings/pair-metal-filled.json' with { type: 'json' }
import pairSolidCore from '#assemblies/openings/pair-solid-core.json' with { type: 'json' }
import pairSolidCore70 from '#assemblies/openings/pair-solid-core-70.json' with { type: 'json' }
import pairSteel180 from '#assemblies/openings/pair-steel-180.json' with { type: 'json' }
import plug from '#assemblies/openings/plug.json' with { type: 'json' }
import vehicleRollUp from '#assemblies/openings/vehicle-roll-up.json' with { type: 'json' }
import vehicleWallInside from '#assemblies/openings/vehicle-wall-inside.json' with { type: 'json' }
import ventDuct from '#assemblies/openings/vent-duct.json' with { type: 'json' }
import ventOpen from '#assemblies/openings/vent-open.json' with { type: 'json' }
import windowLaminated6 from '#assemblies/openings/window-laminated-6.json' with { type: 'json' }
import windowLaminated13 from '#assemblies/openings/window-laminated-13.json' with { type: 'json' }
import windowLaminatedPair from '#assemblies/openings/window-laminated-pair.json' with { type: 'json' }
import windowPair200 from '#assemblies/openings/window-pair-200.json' with { type: 'json' }
import windowPane3 from '#assemblies/openings/window-pane-3.json' with { type: 'json' }
import windowPane4 from '#assemblies/openings/window-pane-4.json' with { type: 'json' }
import windowPane6 from '#assemblies/openings/window-pane-6.json' with { type: 'json' }
import windowPane10 from '#assemblies/openings/window-pane-10.json' with { type: 'json' }
import windowPanePair from '#assemblies/openings/window-pane-pair.json' with { type: 'json' }
import windowSash4 from '#assemblies/openings/window-sash-4.json' with { type: 'json' }
import windowSashUnit from '#assemblies/openings/window-sash-unit.json' with { type: 'json' }
import windowSecondary from '#assemblies/openings/window-secondary.json' with { type: 'json' }
import windowUnit44 from '#assemblies/openings/window-unit-4-4.json' with { type: 'json' }

/** Doors, pairs of doors, windows, vehicle doors, closings, vents; each from the lightest to the best. */
const FILES: readonly unknown[] = [
  doorHollowCore,
  doorHollowCoreCracks,
  doorSolidCore,
  doorSolidWood,
  doorHardwoodCracks,
  doorHardwood66,
  doorMetalHollow,
  doorSteelFoam,
  doorMetalFilled,
  doorAcoustic,
  doorAcoustic100,
  doorAcoustic100Damped,
  doorAcoustic180,
  doorStudioSet,
  pairHollowCore,
  pairSolidCore70,
  pairSolidCore,
  pairMetalFilled,
  pairSteel180,
  lobbySolidCore,
  windowPane3,
  windowPane4,
  windowPane6,
  windowPane10,
  windowLaminated6,
  windowLaminated13,
  windowUnit44,
  windowSash4,
  windowSashUnit,
  windowSecondary,
  windowPanePair,
  windowLaminatedPair,
  windowPair200,
  vehicleRollUp,
  vehicleWallInside,
  plug,
  infill,
  ventOpen,
  ventDuct,
]

/** Every built-in door, window, vehicle door and vent, with the cautions its kind always brings. */
export const OPENING_TYPES: readonly OpeningType[] = FILES.map((file) => {
  const type = openingTypeSchema.parse(file)
  return { ...type, cautions: [...type.cautions, ...usualOpeningCautions(type)] }
})
