import type { Opening, OpeningKind } from '#analysis/room.ts'
import { madeWords } from '#assemblies/openingMadeWords.ts'
import { makeOpening, makeOpeningIn } from '#state/commands/openingsMade.ts'
import { MadeFields } from '#ui/panels/bench/openings/made/MadeFields.tsx'
import { openingKindWords } from '#ui/panels/bench/openings/openingWords.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useCatalogue, useRoom, useScheme } from '#ui/session.ts'

/** What an opening is as it stands, and what the shown scheme puts in it. */
export function SoundFields({ opening }: { readonly opening: Opening }) {
  const room = useRoom()
  const scheme = useScheme()
  const catalogue = useCatalogue()
  const run = useRun()
  const standing = opening.made ?? null
  return (
    <>
      <MadeFields
        legend="As it stands"
        opening={opening}
        made={standing}
        name={`${opening.id}-made`}
        label="It is"
        nothing="Not known yet"
        hint={standing ? null : sayWhat(opening.kind)}
        onMake={(made) => run(makeOpening(room.id, opening.id, made))}
      />
      <MadeFields
        legend={`In ${scheme.name}`}
        opening={opening}
        made={scheme.openings?.[opening.id] ?? null}
        name={`${opening.id}-made-in`}
        label="This scheme puts in"
        nothing={`Nothing new: ${madeWords(standing, catalogue)}`}
        onMake={(made) => run(makeOpeningIn(scheme.id, opening.id, made))}
      />
    </>
  )
}

/** Said wherever nothing was said of an opening. */
export function sayWhat(kind: OpeningKind): string {
  return `Not known yet: say what this ${openingKindWords(kind)} is.`
}
