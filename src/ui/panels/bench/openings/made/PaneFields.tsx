import type { OpeningMade, Pane, PanePair } from '#assemblies/opening.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { panesOf } from '#ui/panels/bench/openings/made/choosing.ts'
import type { MadeProps } from '#ui/panels/bench/openings/made/MadeFields.tsx'
import { useCatalogue, useShownProject } from '#ui/session.ts'

/** Two panes and the air between, each as the user has them. */
export function PaneFields({ made, name, onMake }: MadeProps) {
  const { units } = useShownProject()
  const type = useCatalogue().openingTypes.get(made?.type ?? '')
  const panes = made && type ? panesOf(made, type) : null
  if (!made || !panes) return null
  const change = (patch: Partial<PanePair>) => onMake(withPanes(made, { ...panes, ...patch }))
  return (
    <>
      <OnePane name={`${name}-outer`} label="Outer pane" pane={panes.outer} onChange={(outer) => change({ outer })} />
      <LengthField
        name={`${name}-gap`}
        label="Air between the panes"
        value={panes.gapMm}
        unit={units}
        leastMm={0}
        moreThanLeast
        onCommit={(gapMm) => change({ gapMm })}
      />
      <OnePane name={`${name}-inner`} label="Inner pane" pane={panes.inner} onChange={(inner) => change({ inner })} />
    </>
  )
}

function withPanes(made: OpeningMade, panes: PanePair): OpeningMade {
  return { ...made, panes }
}

interface PaneProps {
  readonly name: string
  readonly label: string
  readonly pane: Pane
  readonly onChange: (pane: Pane) => string | null
}

function OnePane({ name, label, pane, onChange }: PaneProps) {
  const { units } = useShownProject()
  return (
    <>
      <LengthField
        name={name}
        label={`${label}, thickness`}
        value={pane.thicknessMm}
        unit={units}
        leastMm={0}
        moreThanLeast
        onCommit={(thicknessMm) => onChange({ ...pane, thicknessMm })}
      />
      <ChoiceField<'plain' | 'laminated'>
        name={`${name}-glass`}
        label={`${label}, glass`}
        value={pane.isLaminated ? 'laminated' : 'plain'}
        options={[
          { value: 'plain', text: 'Plain' },
          { value: 'laminated', text: 'Laminated' },
        ]}
        onChoose={(glass) => onChange({ ...pane, isLaminated: glass === 'laminated' })}
      />
    </>
  )
}
