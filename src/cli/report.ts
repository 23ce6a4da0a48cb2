import { analyseScheme } from '#analysis/analyse.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import { roomUnder } from '#analysis/takenOut.ts'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { done, type Outcome, readInput, refused, writeFiles } from '#cli/io.ts'
import { svgToPng } from '#cli/png.ts'
import { sheetDrawing } from '#drawing/sheet.ts'
import { drawingToSvg } from '#drawing/svg.ts'
import { builtBeyond } from '#project/beyond.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'
import { type ProjectFileError, readProject } from '#project/read.ts'
import { ledgerCsv } from '#reports/csv.ts'
import { heardFrom } from '#reports/heard.ts'
import { projectReport } from '#reports/json.ts'
import { pathsCsv } from '#reports/pathsCsv.ts'
import type { RoomResults } from '#reports/roomResults.ts'
import { textSummary } from '#reports/summary.ts'
import { fail, invariant, ok, type Result } from '#units/result.ts'

export interface ReportOptions {
  readonly scheme?: string | undefined
  readonly out?: string | undefined
  readonly json?: boolean | undefined
}

/** Density of plan.png: 2 pixels per 1/96 in. */
const PNG_DENSITY = 2

/** `leafgap report FILE`: every scheme's ledger and ratings; and what every receiver hears; with --out also
 * report.json, ledger.csv, paths.csv, plan.svg, plan.png. */
export async function reportCommand(file: string, options: ReportOptions): Promise<Outcome> {
  const text = await readInput(file)
  if (!text.ok) return refused([text.error])
  const read = readProject(text.value, builtInCatalogue())
  if (!read.ok) return refused(fileProblems(file, read.error))
  const { project, warnings } = read.value
  const drawn = schemeToDraw(project, options.scheme)
  if (!drawn.ok) return refused([drawn.error])
  const results = analyseAll(project)
  if (!results.ok) return refused([`${file}: ${results.error}`])
  const json = `${JSON.stringify(projectReport(results.value), null, 2)}\n`
  const failed = options.out ? await writeReport(options.out, project, results.value, drawn.value, json) : null
  if (failed) return refused([failed])
  const stdout = options.json ? json : textSummary(project.name, results.value, project.units)
  return done(
    stdout,
    [...warnings, ...(options.out ? onlyFirstRoomDrawn(project) : [])].map((warning) => `${file}: ${warning}`),
  )
}

function fileProblems(file: string, error: ProjectFileError): readonly string[] {
  if (error.problems.length === 0) return [`${file}: ${error.message}`]
  return error.problems.map((problem) => `${file}: ${problem.message}`)
}

/** The id of the scheme named, else the proposal, else the first. */
function schemeToDraw(project: Project, name: string | undefined): Result<string, string> {
  const wanted = name === undefined ? undefined : project.schemes.find((scheme) => scheme.name === name)
  if (name !== undefined && !wanted) {
    const names = project.schemes.map((scheme) => `"${scheme.name}"`).join(', ')
    return fail(`there is no scheme "${name}"; this project has ${names}`)
  }
  const id = wanted?.id ?? project.proposal ?? project.schemes[0]?.id
  invariant(id, 'a project has a scheme')
  return ok(id)
}

function analyseAll(project: Project): Result<readonly RoomResults[], string> {
  const rooms: RoomResults[] = []
  for (const room of project.rooms) {
    const results = analyseRoom(project, room)
    if (!results.ok) return fail(project.rooms.length > 1 ? `${room.name}: ${results.error}` : results.error)
    const { schemes, receivers, sources } = project
    const given = { room, schemes, receivers, sources, catalogue: projectCatalogue(project) }
    rooms.push({ room, results: results.value, heard: heardFrom(given, results.value, TOLD_STEPS) })
  }
  return ok(rooms)
}

function analyseRoom(project: Project, room: Room): Result<readonly SchemeResult[], string> {
  const catalogue = projectCatalogue(project)
  const results: SchemeResult[] = []
  for (const scheme of project.schemes) {
    const analysed = analyseScheme({
      room,
      scheme,
      catalogue,
      quality: 'plot',
      beyond: builtBeyond(project, room, scheme),
    })
    if (!analysed.ok) return fail(`${scheme.name}: ${analysed.error.message}`)
    results.push(analysed.value)
  }
  return ok(results)
}

/** How many next steps of a receiver are told. */
const TOLD_STEPS = 3

function onlyFirstRoomDrawn(project: Project): readonly string[] {
  const { length } = project.rooms
  return length > 1 ? [`only the first of its ${length} rooms is drawn in plan.svg and plan.png`] : []
}

async function writeReport(
  folder: string,
  project: Project,
  rooms: readonly RoomResults[],
  drawnId: string,
  json: string,
): Promise<string | null> {
  const [first] = rooms
  const result = first?.results.find((candidate) => candidate.schemeId === drawnId)
  const scheme = project.schemes.find(({ id }) => id === drawnId)
  invariant(first && result && scheme, 'the scheme to draw was analysed')
  const heard = first.heard?.find((candidate) => candidate.scheme.id === drawnId)
  const drawing = sheetDrawing({
    projectName: project.name,
    note: project.note,
    room: roomUnder(first.room, scheme),
    result,
    units: project.units,
    heard: heard && { ...heard, catalogue: projectCatalogue(project) },
    paper: project.units === 'mm' ? 'a3' : 'tabloid',
  })
  const svg = drawingToSvg(drawing)
  try {
    await writeFiles(folder, {
      'report.json': json,
      'ledger.csv': ledgerCsv(rooms),
      'paths.csv': pathsCsv(rooms),
      'plan.svg': svg,
      'plan.png': svgToPng(svg, drawing.widthMm, PNG_DENSITY),
    })
    return null
  } catch (cause) {
    return `${folder} cannot be written: ${cause instanceof Error ? cause.message : 'no reason given'}`
  }
}
