import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { fail, ok, type Result } from '#units/result.ts'

/** What a command came to: text for standard output, problems for standard error, and whether the input was bad. */
export interface Outcome {
  readonly stdout: string
  readonly problems: readonly string[]
  readonly badInput: boolean
}

export function done(stdout: string, problems: readonly string[] = []): Outcome {
  return { stdout, problems, badInput: false }
}

export function refused(problems: readonly string[], stdout = ''): Outcome {
  return { stdout, problems, badInput: true }
}

/** The text of a file, or of standard input for "-"; a sentence where it cannot be read. */
export async function readInput(file: string): Promise<Result<string, string>> {
  try {
    const text = file === '-' ? await readStandardInput() : await readFile(file, 'utf8')
    return ok(text.replace(/^\uFEFF/, ''))
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : 'no reason given'
    return fail(`${file} cannot be read: ${reason}`)
  }
}

async function readStandardInput(): Promise<string> {
  const chunks: Buffer[] = []
  for await (const chunk of process.stdin) chunks.push(Buffer.from(chunk))
  return Buffer.concat(chunks).toString('utf8')
}

/** Writes files into a folder, which is made where it is missing. */
export async function writeFiles(folder: string, files: Readonly<Record<string, string | Uint8Array>>): Promise<void> {
  for (const [name, content] of Object.entries(files)) {
    const path = join(folder, name)
    await mkdir(dirname(path), { recursive: true })
    await writeFile(path, content)
  }
}
