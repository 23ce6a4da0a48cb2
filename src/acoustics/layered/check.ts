import links from '#acoustics/data/links.json' with { type: 'json' }
import type { Cavity, LayeredSystem, Leaf, LeafSheet, Link } from '#acoustics/layered/system.ts'
import { isMaterialId } from '#acoustics/materials.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** What is wrong with a construction, where, and a sentence that says so. */
export interface SystemProblem {
  readonly kind: 'no-leaf' | 'cavity-count' | 'empty-leaf' | 'sheet' | 'joint' | 'cavity' | 'link'
  /** Index of the leaf or cavity it lies in; null: the whole. */
  readonly at: number | null
  readonly message: string
}

/** Thickest sheet, deepest cavity and widest spacing that are not a slip of the pen, mm. @source own choice */
const THICKEST_SHEET_MM = 1000
const DEEPEST_CAVITY_MM = 2000
const WIDEST_SPACING_MM = 10000
/** Heaviest sheet, kg/m2. @source own choice */
const HEAVIEST_SHEET_KG_M2 = 3000
/** Slack when a fill's depth is compared with its cavity's, mm. */
const SAME_DEPTH_MM = 1

function isWithin(value: number, high: number): boolean {
  return Number.isFinite(value) && value > 0 && value <= high
}

function sheetProblems(sheet: LeafSheet, leaf: number, place: number): readonly SystemProblem[] {
  const where = `Sheet ${place + 1} of leaf ${leaf + 1}`
  const problems: string[] = []
  if (!isMaterialId(sheet.material)) problems.push(`${where} is of an unknown material, "${sheet.material}".`)
  if (!isWithin(sheet.thicknessMm, THICKEST_SHEET_MM)) {
    problems.push(`${where} has a thickness of ${sheet.thicknessMm} mm; it must be more than 0 and at most 1000 mm.`)
  }
  const mass = sheet.surfaceMassKgM2
  if (mass !== undefined && !isWithin(mass, HEAVIEST_SHEET_KG_M2)) {
    problems.push(`${where} weighs ${mass} kg/m2; it must be more than 0 and at most 3000 kg/m2.`)
  }
  return problems.map((message) => ({ kind: 'sheet', at: leaf, message }))
}

function leafProblems(leaf: Leaf, at: number): readonly SystemProblem[] {
  if (leaf.sheets.length === 0) return [{ kind: 'empty-leaf', at, message: `Leaf ${at + 1} has no sheet.` }]
  const lastJoint = leaf.sheets.length - 2
  const joints = leaf.dampedJoints.filter((joint) => !(Number.isInteger(joint) && joint >= 0 && joint <= lastJoint))
  return [
    ...leaf.sheets.flatMap((sheet, place) => sheetProblems(sheet, at, place)),
    ...joints.map((joint): SystemProblem => {
      const message = `Leaf ${at + 1} has a damping compound in joint ${joint + 1}, which does not lie between two sheets.`
      return { kind: 'joint', at, message }
    }),
  ]
}

/** Every spacing a link is told by, with its name. */
function spacingsOf(link: Link): readonly (readonly [string, number | undefined])[] {
  switch (link.kind) {
    case 'none':
      return []
    case 'resilient-channel':
      return [
        ['channel', link.channelSpacingMm],
        ['stud', link.studSpacingMm],
      ]
    case 'sound-clip':
    case 'low-profile-clip':
      return [
        ['row', link.rowSpacingMm],
        ['clip', link.clipSpacingMm],
      ]
    case 'spring-hanger':
      return [
        ['row', link.rowSpacingMm],
        ['hanger', link.hangerSpacingMm],
      ]
    case 'resilient-layer':
      return []
    case 'floor-mounts':
      return [['mount', link.spacingMm]]
    default:
      return [['stud', link.spacingMm]]
  }
}

/** Stiffness of what a floor floats on, MN/m3: softest and stiffest that are not a slip of the pen. */
export const FLOATING_STIFFNESS_MN_M3 = [links.floatingFloor.softestMNm3, links.floatingFloor.stiffestMNm3] as const

function stiffnessProblems(link: Link, where: string, at: number): readonly SystemProblem[] {
  if (!('dynamicStiffnessMNm3' in link)) return []
  const [softest, stiffest] = FLOATING_STIFFNESS_MN_M3
  const value = link.dynamicStiffnessMNm3
  if (value >= softest && value <= stiffest) return []
  const message = `${where} has a dynamic stiffness of ${value} MN/m3; it must be between ${softest} and ${stiffest} MN/m3.`
  return [{ kind: 'link', at, message }]
}

function cavityProblems(cavity: Cavity, at: number): readonly SystemProblem[] {
  const where = `Cavity ${at + 1}`
  const problems: SystemProblem[] = []
  const { depthMm, fillMm } = cavity
  if (!(Number.isFinite(depthMm) && depthMm >= 0 && depthMm <= DEEPEST_CAVITY_MM)) {
    const message = `${where} is ${depthMm} mm deep; it must be between 0 and 2000 mm.`
    problems.push({ kind: 'cavity', at, message })
  }
  if (!(Number.isFinite(fillMm) && fillMm >= 0 && fillMm <= depthMm + SAME_DEPTH_MM)) {
    const message = `${where} has ${fillMm} mm of fill; it must be between 0 and its depth of ${depthMm} mm.`
    problems.push({ kind: 'cavity', at, message })
  }
  problems.push(...stiffnessProblems(cavity.link, where, at))
  for (const [name, spacing] of spacingsOf(cavity.link)) {
    if (spacing === undefined || isWithin(spacing, WIDEST_SPACING_MM)) continue
    const message = `${where} has a ${name} spacing of ${spacing} mm; it must be more than 0 and at most 10000 mm.`
    problems.push({ kind: 'link', at, message })
  }
  return problems
}

/** A construction the method can be run on, or every reason why not. */
export function checkSystem(system: LayeredSystem): Result<LayeredSystem, readonly SystemProblem[]> {
  if (system.leaves.length === 0) {
    return fail([{ kind: 'no-leaf', at: null, message: 'There is no board, pane or slab in it.' }])
  }
  const problems: SystemProblem[] = [...system.leaves.flatMap(leafProblems), ...system.cavities.flatMap(cavityProblems)]
  if (system.cavities.length !== system.leaves.length - 1) {
    const message = `There are ${system.leaves.length} leaves and ${system.cavities.length} cavities; a cavity must lie between every two leaves.`
    problems.push({ kind: 'cavity-count', at: null, message })
  }
  return problems.length === 0 ? ok(system) : fail(problems)
}
