import type { Underlay } from '#project/project.ts'
import { changeUnderlay } from '#state/commands/underlays.ts'
import { NameField, ThingForm } from '#ui/panels/bench/thing/parts.tsx'
import { useTrace } from '#ui/shell.ts'
import { UnderlayFields } from '#ui/trace/UnderlayFields.tsx'

/** A picture under the plan: where it lies, how it is turned and how faint it is. */
export function UnderlayForm({ underlay }: { readonly underlay: Underlay }) {
  const { id, name } = underlay
  const isTracing = useTrace((state) => state.isOpen)
  return (
    <ThingForm name={name}>
      <NameField id={id} value={name} command={(text) => changeUnderlay(id, { name: text })} />
      {isTracing ? (
        <p className="quiet">How it lies and how faint it is stands under Trace, above the plan.</p>
      ) : (
        <UnderlayFields underlay={underlay} />
      )}
    </ThingForm>
  )
}
