import type { Assembly } from '#assemblies/assembly.ts'
import { readAssembly, writeAssembly } from '#project/assemblyFile.ts'
import { broughtIn, saveAssembly } from '#state/commands/assemblies.ts'
import { download, fileStem, problemLines } from '#ui/files.ts'
import type { Session } from '#ui/session.ts'
import type { Shell } from '#ui/shell.ts'

/** Hands one assembly over as a file of its own. */
export function saveAssemblyFile(assembly: Assembly): void {
  download(`${fileStem(assembly.name)}.assembly.json`, writeAssembly(assembly), 'application/json')
}

/** Opens a shared assembly into the project; one that cannot be read is refused with sentences and changes nothing. */
export function openAssemblyText(
  session: Session,
  shell: Shell,
  source: { readonly name: string; readonly text: string },
): void {
  const read = readAssembly(source.text)
  if (!read.ok) {
    refuse(shell, source.name, read.error.message, problemLines(read.error.problems))
    return
  }
  const { assembly, told } = broughtIn(session.document.store.getState().project, read.value)
  const outcome = session.document.run({ ...saveAssembly(assembly), label: `open ${assembly.shortName}` })
  if (!outcome.ok) return
  const text = `"${assembly.name}" for a ${assembly.surface} is now one of this project's own assemblies.`
  shell.state.setState({ notice: { kind: 'told', text, details: told } })
}

function refuse(shell: Shell, name: string, why: string, details: readonly string[]): void {
  const text = `"${name}" was not opened. ${why} The project was kept as it was.`
  shell.state.setState({ notice: { kind: 'refused', text, details } })
}
