import type { Project } from '#project/project.ts'

/** A project as the text of its file: stable key order, two-space indent, one line at the end. */
export function writeProject(project: Project): string {
  return `${JSON.stringify(project, null, 2)}\n`
}
