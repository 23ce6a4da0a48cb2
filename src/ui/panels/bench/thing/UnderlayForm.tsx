import type { Underlay } from '#project/project.ts'
import { changeUnderlay } from '#state/commands/underlays.ts'
import { NameField, ThingForm } from '#ui/panels/bench/thing/parts.tsx'
import { UnderlayFields } from '#ui/trace/UnderlayFields.tsx'

/** A picture under the plan: where it lies, how it is turned and how faint it is. */
export function UnderlayForm({ underlay }: { readonly underlay: Underlay }) {
  const { id, name } = underlay
  return (
    <ThingForm name={name}>
      <NameField id={id} value={name} command={(text) => changeUnderlay(id, { name: text })} />
      <UnderlayFields underlay={underlay} />
    </ThingForm>
  )
}
