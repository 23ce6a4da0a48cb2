import { OCTAVES_HZ } from '#acoustics/bands.ts'
import { octaveLoss } from '#acoustics/curve.ts'
import { endReflectionLoss } from '#acoustics/duct.ts'
import { ductAreaM2, ductLossOf, ductMade } from '#analysis/paths/ductPaths.ts'
import type { Duct } from '#analysis/room.ts'
import { useScheme } from '#ui/session.ts'
import { fixed } from '#units/format.ts'

/** What a duct takes off by octave, for the area of its own opening. */
export function DuctLossTable({ duct }: { readonly duct: Duct }) {
  const scheme = useScheme()
  const now = ductMade(duct, scheme)
  const stands = ductLossOf(duct, duct.made)
  const rows: readonly (readonly [string, readonly number[]])[] = [
    ['As it stands', stands],
    ...(now === duct.made ? [] : [[`In ${scheme.name}`, ductLossOf(duct, now)] as const]),
    ['Of it sent back at the open end', endReflectionLoss(ductAreaM2(duct), 'flush')],
  ]
  return (
    <table className="figures duct-loss">
      <caption>Loss of {duct.name} by octave, dB, grille to grille, for its own clear area</caption>
      <thead>
        <tr>
          <th scope="col">Hz</th>
          {OCTAVES_HZ.map((hz) => (
            <th key={hz} scope="col">
              {hz}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, loss]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {octaveLoss(loss).map((value, octave) => (
              <td key={OCTAVES_HZ[octave]} className="number">
                {fixed(value, 0)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
