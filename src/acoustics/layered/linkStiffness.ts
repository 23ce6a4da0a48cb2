import { compileSystem, type SystemModel } from '#acoustics/layered/compile.ts'
import type { ConnectionModel, LineConnection } from '#acoustics/layered/connection.ts'
import type { LeafModel } from '#acoustics/layered/leaf.ts'
import { staticStiffness } from '#acoustics/layered/lineImpedance.ts'
import { METHOD } from '#acoustics/layered/method.ts'
import type { LayeredSystem, Link } from '#acoustics/layered/system.ts'

/** Links that are springs beside the air; wood and heavy steel studs are none, they tie the leaves. */
export function isSpringLink(link: Link): boolean {
  switch (link.kind) {
    case 'resilient-channel':
    case 'sound-clip':
    case 'low-profile-clip':
    case 'spring-hanger':
    case 'light-steel-stud':
      return true
    default:
      return false
  }
}

/** The line itself and the give of the boards between its fasteners, in series. */
function lineStiffness(line: LineConnection, far: LeafModel, room: LeafModel): number {
  const give = (leaf: LeafModel, span: number) => (span > 0 ? 1 / staticStiffness(leaf.bending, span) : 0)
  return 1 / (line.compliance * line.spacing + give(far, line.spanFar) + give(room, line.spanRoom))
}

function stiffnessOf(connection: ConnectionModel, far: LeafModel, room: LeafModel): number {
  if (!connection.isSpring) return 0
  if (connection.kind === 'point') return connection.stiffness / connection.area
  return lineStiffness(connection, far, room)
}

/** Static stiffness of the connections of a construction in SI units, smeared over the area, by cavity, N/m3. */
export function connectionStiffness({ leaves, connections }: SystemModel): readonly number[] {
  return connections.map((list, i) =>
    list.reduce((sum, connection) => sum + stiffnessOf(connection, leaves[i]!, leaves[i + 1]!), 0),
  )
}

/** Stiffness of the links that are springs, by cavity, N/m3; 0 for the others. */
export function linkStiffness(system: LayeredSystem): readonly number[] {
  if (!system.cavities.some(({ link }) => isSpringLink(link))) return system.cavities.map(() => 0)
  const all = connectionStiffness(compileSystem(system, METHOD))
  return system.cavities.map(({ link }, i) => (isSpringLink(link) ? all[i]! : 0))
}
