import air from '#acoustics/data/air.json' with { type: 'json' }

/** kg/m3 */
export const AIR_DENSITY = air.densityKgM3
/** m/s */
export const SOUND_SPEED = air.soundSpeedMS
/** Characteristic impedance, Pa s/m. */
export const AIR_IMPEDANCE = AIR_DENSITY * SOUND_SPEED
/** Adiabatic bulk modulus, Pa. */
export const AIR_BULK_MODULUS = AIR_DENSITY * SOUND_SPEED ** 2
