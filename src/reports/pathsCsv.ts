import { OCTAVES_HZ } from '#acoustics/bands.ts'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { limitWords } from '#analysis/paths/answerWords.ts'
import { type Cell, toCsv } from '#reports/cells.ts'
import type { Heard } from '#reports/heard.ts'
import type { RoomResults } from '#reports/roomResults.ts'

/**
 * Every path to every receiver under every scheme, one line a path, with the room before them where there are several. A
 * path of which nothing is known stands with empty numbers and says why.
 */
export function pathsCsv(rooms: readonly RoomResults[]): string {
  const octaves = OCTAVES_HZ.map((hz) => `level at ${hz} Hz, dB`)
  const head: Cell[] = [
    'scheme',
    'receiver',
    'path',
    'kind',
    'label',
    'area, m2',
    'share',
    'share at the worst band',
    'margin gained if closed, dB',
    ...octaves,
    'basis',
    'note',
  ]
  const rowsOf = ({ heard }: RoomResults) =>
    (heard ?? []).flatMap(({ scheme, receivers }) => receivers.flatMap((one) => pathRows(scheme.name, one)))
  if (rooms.length === 1) return toCsv([head, ...rooms.flatMap(rowsOf)])
  const named = rooms.flatMap((one) => rowsOf(one).map((row): Cell[] => [one.room.name, ...row]))
  return toCsv([['room', ...head], ...named])
}

function pathRows(scheme: string, { answer }: Heard): readonly Cell[][] {
  const before = (path: { readonly id: string; readonly kind: string; readonly label: string }): Cell[] => [
    scheme,
    answer.name,
    path.id,
    path.kind,
    path.label,
  ]
  return [
    ...answer.paths.map(({ path, share, shareAtWorstBand, gainIfClosedDb, levelsDb }): Cell[] => [
      ...before(path),
      path.areaM2,
      share,
      shareAtWorstBand,
      gainIfClosedDb,
      ...levelsDb,
      path.basis,
      path.notes.map(({ text }) => text).join(' '),
    ]),
    ...answer.unknown.map((path): Cell[] => [
      ...before(path),
      ...[null, null, null, null],
      ...OCTAVES_HZ.map(() => null),
      'not known',
      path.why,
    ]),
  ]
}

/** What the ledger says of a receiver: scheme, receiver, item, value, unit. */
export function receiverRows(scheme: string, { answer, receiver }: Heard): readonly Cell[][] {
  const row = (item: string, value: Cell, unit: string): Cell[] => [scheme, answer.name, item, value, unit]
  return [
    row('limit', `${limitWords(receiver.limit)}${receiver.hasBeat ? ' less 5 dB for beat or tone' : ''}`, ''),
    row('margin', answer.marginDb, 'dB'),
    row('margin, lower end of the likely range', answer.marginLow95Db, 'dB'),
    row('margin, upper end of the likely range', answer.marginHigh95Db, 'dB'),
    row('verdict', answer.verdictWords, ''),
    row('tightest octave', answer.worstBandHz, 'Hz'),
    row('octave that contributes most', answer.dominantBandHz, 'Hz'),
    row('NIC', answer.nic, 'dB'),
    row('A-weighted level', answer.levelA, 'dB'),
    row('C-weighted level', answer.levelC, 'dB'),
    ...levelRows(answer, row),
    row('weakest path', answer.sentence, ''),
  ]
}

function levelRows({ levelsDb, limitDb }: ReceiverAnswer, row: (item: string, value: Cell, unit: string) => Cell[]) {
  return OCTAVES_HZ.flatMap((hz, i) => [
    row(`level at ${hz} Hz`, levelsDb[i] ?? null, 'dB'),
    ...(limitDb ? [row(`limit at ${hz} Hz`, limitDb[i] ?? null, 'dB')] : []),
  ])
}
