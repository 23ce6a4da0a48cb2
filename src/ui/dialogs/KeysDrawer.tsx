import { Drawer } from '#ui/dialogs/Drawer.tsx'
import { keyName, SHORTCUTS, type ShortcutPlace } from '#ui/shortcuts.ts'

const PLACES: readonly { readonly place: ShortcutPlace; readonly title: string }[] = [
  { place: 'anywhere', title: 'Anywhere' },
  { place: 'on the plan', title: 'On the plan' },
  { place: 'while drawing', title: 'While drawing' },
]

/** Every key, from the same table the page matches against. */
export function KeysDrawer() {
  const isMac = /mac/i.test(navigator.userAgent)
  return (
    <Drawer name="keys" title="Keys">
      <div className="keys" data-first="" tabIndex={-1}>
        {PLACES.map(({ place, title }) => (
          <div key={place}>
            <h3>{title}</h3>
            <dl>
              {SHORTCUTS.filter((shortcut) => shortcut.place === place).map(({ keys, label, action }) => (
                <div key={action} className="key-line">
                  <dt>{keys.map((key) => keyName(key, isMac)).join(' or ')}</dt>
                  <dd>{label}</dd>
                </div>
              ))}
            </dl>
          </div>
        ))}
        <div>
          <h3>With the pointer</h3>
          <dl>
            <PointerLine what="Alt held" label="Releases right angles and the grid while you draw or drag" />
            <PointerLine what="Shift press" label="Adds a wall to the selection, or takes it out" />
            <PointerLine what="Drag on paper" label="Moves the paper; the wheel goes closer or further away" />
          </dl>
        </div>
      </div>
    </Drawer>
  )
}

function PointerLine({ what, label }: { readonly what: string; readonly label: string }) {
  return (
    <div className="key-line">
      <dt>{what}</dt>
      <dd>{label}</dd>
    </div>
  )
}
