import type { FarSide, Lining, MeasuredTo, NeededForFire } from '#analysis/room.ts'
import { FAR_SIDES } from '#analysis/room.ts'
import type { BoardMaterial } from '#assemblies/layer.ts'
import { describeSurfaces, type FactsPatch } from '#state/commands/surfaces.ts'
import { moveWall, setWallLength } from '#state/commands/wall.ts'
import { ChoiceField, type Option } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import type { BenchSurface } from '#ui/panels/bench/candidates.ts'
import { MovingEnd } from '#ui/panels/bench/outline/MovingEnd.tsx'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { wallLength } from '#ui/panels/bench/wallLength.ts'
import { capital, farSideWords } from '#ui/panels/words.ts'
import { useCatalogue, useShownProject, useView } from '#ui/session.ts'

/** A lining as it is until somebody says better: half-inch board, and nobody knows what fire asks of it. */
const USUAL_LINING: Lining = { thicknessMm: 12.7, neededForFire: 'unknown' }

const LININGS: readonly Option<BoardMaterial | 'none'>[] = [
  { value: 'none', text: 'No lining, bare' },
  { value: 'gypsum-regular', text: 'Gypsum board' },
  { value: 'gypsum-type-x', text: 'Gypsum board, fire type' },
  { value: 'plywood', text: 'Plywood' },
  { value: 'osb', text: 'Strand board' },
]

const FIRE: readonly Option<NeededForFire>[] = [
  { value: 'unknown', text: 'Unknown' },
  { value: 'yes', text: 'Yes' },
  { value: 'no', text: 'No' },
]

/** The form that says what stands there today; what is written goes to every selected surface. */
export function AsItStands({ bench }: { readonly bench: BenchState }) {
  const { surfaces, first, room } = bench
  const { units } = useShownProject()
  const patch = (facts: FactsPatch) =>
    bench.run(
      describeSurfaces(
        room.id,
        surfaces.map((surface) => surface.facts.id),
        facts,
      ),
    )
  return (
    <form className="stands" aria-label="As it stands" onSubmit={(event) => event.preventDefault()}>
      {surfaces.length === 1 && first.kind === 'wall' && <WallMeasures bench={bench} />}
      <ExistingField surfaces={surfaces} patch={patch} />
      <ChoiceField<FarSide>
        name="far-side"
        label="Behind it"
        value={shared(surfaces, ({ facts }) => facts.farSide)}
        options={FAR_SIDES.map((value) => ({ value, text: capital(farSideWords(value)) }))}
        onChoose={(farSide) => patch({ farSide })}
      />
      <ChoiceField<MeasuredTo>
        name="measured-to"
        label="Measured to"
        value={shared(surfaces, ({ facts }) => facts.measuredTo)}
        options={[
          { value: 'finished-face', text: 'Finished face' },
          { value: 'structure', text: first.kind === 'wall' ? 'Bare stud or masonry' : 'Bare joist or slab' },
        ]}
        onChoose={(measuredTo) => patch({ measuredTo })}
      />
      <LiningFields surfaces={surfaces} patch={patch} unit={units} />
      <LengthField
        name="out-of-true"
        label="Out-of-true allowance"
        value={first.facts.outOfTrueMm}
        unit={units}
        leastMm={0}
        onCommit={(outOfTrueMm) => patch({ outOfTrueMm })}
      />
      {surfaces.length > 1 && (
        <p className="bench-said">
          Lengths shown are those of {first.label}; what you write goes to all {surfaces.length} selected.
        </p>
      )}
    </form>
  )
}

/** Length and place of one wall, as the tape and the plan have them. */
function WallMeasures({ bench }: { readonly bench: BenchState }) {
  const { first, room } = bench
  const { units } = useShownProject()
  const movingEnd = useView((state) => state.movingEnd)
  return (
    <>
      <LengthField
        name="wall-length"
        label="Length of the wall"
        value={wallLength(room, first.facts.id)}
        unit={units}
        leastMm={0}
        moreThanLeast
        onCommit={(length) => bench.run(setWallLength(room.id, first.facts.id, length, movingEnd))}
      />
      <MovingEnd wallId={first.facts.id} />
      <LengthField
        name="wall-move"
        label="Move it parallel, inward by"
        value={0}
        unit={units}
        onCommit={(inward) => bench.run(moveWall(room.id, first.facts.id, inward))}
      />
    </>
  )
}

interface PartProps {
  readonly surfaces: BenchState['surfaces']
  readonly patch: (facts: FactsPatch) => string | null
}

function ExistingField({ surfaces, patch }: PartProps) {
  const catalogue = useCatalogue()
  const kind = surfaces[0].kind
  const existing = [...catalogue.existing.values()].filter((entry) => entry.surface === kind)
  return (
    <ChoiceField
      name="existing"
      label="Existing construction"
      value={shared(surfaces, ({ facts }) => facts.existing)}
      options={existing.map(({ id, name }) => ({ value: id, text: name }))}
      onChoose={(id) => patch({ existing: id })}
    />
  )
}

function LiningFields({ surfaces, patch, unit }: PartProps & { readonly unit: 'mm' | 'ft-in' }) {
  const lining = surfaces[0].facts.lining
  return (
    <>
      <ChoiceField<BoardMaterial | 'none'>
        name="lining"
        label="Existing lining"
        value={shared(surfaces, ({ facts }) => liningChoice(facts.lining))}
        options={withOwn(LININGS, lining)}
        onChoose={(chosen) =>
          patch({ lining: chosen === 'none' ? null : { ...(lining ?? USUAL_LINING), material: chosen } })
        }
      />
      {lining && (
        <>
          <LengthField
            name="lining-thickness"
            label="Lining thickness"
            value={lining.thicknessMm}
            unit={unit}
            leastMm={0}
            moreThanLeast
            onCommit={(thicknessMm) => patch({ lining: { ...lining, thicknessMm } })}
          />
          <ChoiceField<NeededForFire>
            name="needed-for-fire"
            label="Lining needed for fire"
            value={shared(surfaces, ({ facts }) => facts.lining?.neededForFire ?? 'unknown')}
            options={FIRE}
            hint="If unknown, ask the building department."
            onChoose={(neededForFire) => patch({ lining: { ...lining, neededForFire } })}
          />
        </>
      )}
    </>
  )
}

function liningChoice(lining: Lining | null): BoardMaterial | 'none' {
  return lining === null ? 'none' : (lining.material ?? 'gypsum-regular')
}

/** The usual linings, and the one a file names that is none of them. */
function withOwn(usual: typeof LININGS, lining: Lining | null): typeof LININGS {
  const own = liningChoice(lining)
  return usual.some(({ value }) => value === own)
    ? usual
    : [...usual, { value: own, text: capital(own.replaceAll('-', ' ')) }]
}

/** What all of them have in common; null: they differ. */
export function shared<Value>(surfaces: readonly BenchSurface[], of: (surface: BenchSurface) => Value): Value | null {
  const [first, ...others] = surfaces.map(of)
  return first !== undefined && others.every((value) => value === first) ? first : null
}
