import { describe, expect, it } from 'vitest'
import { faceVelocity, neededAirflow, velocityLimit } from '#acoustics/airflow.ts'

describe('air', () => {
  it('is needed by people and by floor', () => {
    expect(neededAirflow(0, 10)).toBeCloseTo(3, 9)
    expect(neededAirflow(2, 10)).toBeCloseTo(13, 9)
  })

  it('is faster through a smaller opening', () => {
    expect(faceVelocity(26.3, 0.0188)).toBeCloseTo(1.4, 1)
    expect(() => faceVelocity(26.3, 0)).toThrow(/opening/)
  })

  it('goes on below the printed limits in proportion, and no higher above them', () => {
    expect(velocityLimit(10)).toMatchObject({ isPrinted: false })
    expect(velocityLimit(10).supplyMS).toBeCloseTo(velocityLimit(15).supplyMS * 0.8, 6)
    expect(velocityLimit(40)).toEqual({ ...velocityLimit(30), isPrinted: false })
    expect(velocityLimit(0).supplyMS).toBeGreaterThan(0)
  })
})
