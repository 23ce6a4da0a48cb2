import { parseArgs } from 'node:util'
import { insetCommand } from '#cli/inset.ts'
import { done, type Outcome, refused } from '#cli/io.ts'
import { rateCommand } from '#cli/rate.ts'
import { reportCommand } from '#cli/report.ts'

const USAGE = `leafgap report FILE [--scheme NAME] [--out DIR] [--json]
    what every scheme of a project leaves of the room, how its surfaces isolate and who hears what
leafgap rate FILE [--json]
    transmission loss and ratings of layered systems, each from the far side to the room
leafgap inset FILE
    what is left of an outline after a depth on every wall, as JSON
FILE may be - for standard input.
`

async function run(argv: readonly string[]): Promise<Outcome> {
  const parsed = parse(argv)
  if (typeof parsed === 'string') return refused([parsed])
  const { values, positionals } = parsed
  const [command, file, extra] = positionals
  if (values.help) return done(USAGE)
  if (command === undefined) return refused(['say a command: report, rate or inset'])
  if (!isCommand(command)) return refused([`there is no command "${command}": say report, rate or inset`])
  if (file === undefined) return refused([`say a file: leafgap ${command} FILE`])
  if (extra !== undefined) return refused([`one file at a time: "${extra}" is one too many`])
  return COMMANDS[command](file, values)
}

interface Options {
  readonly scheme?: string | undefined
  readonly out?: string | undefined
  readonly json?: boolean | undefined
}

const COMMANDS = {
  report: async (file: string, options: Options) =>
    options.out === '' ? refused(['--out needs a folder: --out DIR']) : reportCommand(file, options),
  rate: async (file: string, options: Options) => {
    const option = firstOption(options, 'json')
    return option === undefined ? rateCommand(file, options) : refused([`rate takes no --${option}`])
  },
  inset: async (file: string, options: Options) => {
    const option = firstOption(options)
    return option === undefined ? insetCommand(file) : refused([`inset takes no --${option}; it always prints JSON`])
  },
}

function isCommand(word: string): word is keyof typeof COMMANDS {
  return Object.hasOwn(COMMANDS, word)
}

/** The first option given that the command does not take. */
function firstOption(options: Options, ...taken: readonly string[]): string | undefined {
  return Object.keys(options).find((option) => !taken.includes(option))
}

function parse(argv: readonly string[]) {
  try {
    return parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        scheme: { type: 'string' },
        out: { type: 'string' },
        json: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    })
  } catch (cause) {
    return cause instanceof Error ? (cause.message.split('\n')[0] ?? 'unknown option') : 'unknown option'
  }
}

/** A closed pipe (leafgap report FILE | head) is no fault of ours. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') return
  process.stderr.write(`leafgap: the report could not be written out: ${error.message}\n`)
  process.exitCode = 1
})

try {
  const outcome = await run(process.argv.slice(2))
  process.stdout.write(outcome.stdout)
  for (const problem of outcome.problems) process.stderr.write(`leafgap: ${problem.replaceAll('\n', ' ')}\n`)
  process.exitCode = outcome.badInput ? 2 : 0
} catch (cause) {
  const reason = cause instanceof Error ? (cause.stack ?? cause.message) : String(cause)
  process.stderr.write(`leafgap: this is our fault: ${reason.replaceAll('\n', ' | ')}\n`)
  process.exitCode = 1
}
