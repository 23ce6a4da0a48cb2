import type { Opening, OpeningKind } from '#analysis/room.ts'
import { OPENING_KINDS } from '#analysis/room.ts'
import { addOpening, changeOpening } from '#state/commands/openings.ts'
import { usualOpening } from '#state/usualThings.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { choiceCautions } from '#ui/panels/bench/openings/made/madeWords.ts'
import { SoundInRow } from '#ui/panels/bench/openings/made/SoundInRow.tsx'
import { type ShownSound, useOpeningSounds } from '#ui/panels/bench/openings/made/useOpeningSound.ts'
import { checkParts, openingKindWords, openingWords } from '#ui/panels/bench/openings/openingWords.ts'
import { openingEntries } from '#ui/panels/bench/tables/entries.ts'
import { EntryCells, Heads, NothingYet, Problems, TableVerbs, ThingRow } from '#ui/panels/bench/tables/rows.tsx'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { WAY_OUT_CAUTION } from '#ui/panels/bench/thing/thingCautions.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { wallEnds, wallLength } from '#ui/panels/bench/wallLength.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { useCatalogue, useRoom, useScheme, useShownProject } from '#ui/session.ts'

const HEADS = ['Opening', 'Wall', 'From first end', 'From other end', 'Width', 'Height', 'Sill']

/** Every door, window and vent: where it is, what the linings leave of it, and what is wrong with it. */
export function OpeningsView() {
  const room = useRoom()
  const sounds = useOpeningSounds()
  return (
    <div className="table-place">
      <AddOpenings />
      {room.openings.length === 0 ? (
        <NothingYet text="No door, window or vent is drawn yet. The room needs a way out: add its door first." />
      ) : (
        <table className="figures cards wide-table">
          <caption className="visually-hidden">Openings</caption>
          <Heads heads={HEADS} />
          <tbody>
            {room.openings.map((opening) => (
              <OpeningRow key={opening.id} opening={opening} shown={sounds?.(opening) ?? null} />
            ))}
          </tbody>
        </table>
      )}
      <Problems texts={[WAY_OUT_CAUTION]} />
    </div>
  )
}

function OpeningRow({ opening, shown }: { readonly opening: Opening; readonly shown: ShownSound | null }) {
  const room = useRoom()
  const { units } = useShownProject()
  const { result } = useLedger()
  const catalogue = useCatalogue()
  const chosen = useScheme().openings?.[opening.id]
  const check = result?.openings.find(({ id }) => id === opening.id)
  return (
    <ThingRow
      thing={{ kind: 'opening', id: opening.id }}
      name={opening.name}
      columns={HEADS.length + 1}
      under={
        <>
          <p className="row-tells">
            {[
              openingWords(opening, wallEnds(room, opening.wall)),
              ...(check ? checkParts(opening, check, units) : []),
            ].map((part) => (
              <span key={part}>{part}</span>
            ))}
          </p>
          <SoundInRow opening={opening} shown={shown} />
        </>
      }
      says={[
        ...(check?.problems.map(({ text }) => text) ?? []),
        ...(shown && !shown.sound.ok ? [shown.sound.error] : []),
        ...(chosen ? choiceCautions(chosen, catalogue) : []),
      ]}
    >
      <td data-label="Wall">
        <WallField opening={opening} quiet />
      </td>
      <EntryCells id={opening.id} of={opening.name} entries={openingEntries(room, opening)} />
    </ThingRow>
  )
}

/** The wall an opening stands in. */
export function WallField({ opening, quiet = false }: { readonly opening: Opening; readonly quiet?: boolean }) {
  const room = useRoom()
  const run = useRun()
  return (
    <ChoiceField
      name={`${opening.id}-wall`}
      label={quiet ? `Wall of ${opening.name}` : 'In'}
      quiet={quiet}
      value={opening.wall}
      options={room.walls.map(({ id }, index) => ({ value: id, text: `Wall ${index + 1}` }))}
      onChoose={(wall) => run(changeOpening(room.id, opening.id, { wall, fromMm: fittingIn(room, opening, wall) }))}
    />
  )
}

/** The distance kept where the other wall is long enough for it; else as far as it goes. */
function fittingIn(room: Parameters<typeof wallLength>[0], { fromMm, widthMm }: Opening, wall: string): number {
  return Math.max(0, Math.min(fromMm, wallLength(room, wall) - widthMm))
}

function AddOpenings() {
  const room = useRoom()
  const { units } = useShownProject()
  const verbs = useThingVerbs()
  const add = (kind: OpeningKind) => {
    const longest = room.walls.reduce(
      (one, other) => (wallLength(room, other.id) > wallLength(room, one) ? other.id : one),
      room.walls[0]?.id ?? '',
    )
    const middle = wallLength(room, longest) / 2
    verbs.add('opening', addOpening(room.id, usualOpening(kind, longest, middle, units, room)))
  }
  return (
    <TableVerbs label="Add to the openings">
      {OPENING_KINDS.map((kind) => (
        <button key={kind} type="button" className="row-button" onClick={() => add(kind)}>
          Add a {openingKindWords(kind)}
        </button>
      ))}
    </TableVerbs>
  )
}
