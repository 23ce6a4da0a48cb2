import type { Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { fail, type Result } from '#units/result.ts'

export function placedPartition(_: Project, ..._rest: readonly unknown[]): Result<Project, Refusal> {
  return fail({ code: 'coming', message: 'Not built yet.' })
}
