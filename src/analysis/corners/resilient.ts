import type { CavityLayer, Layer } from '#assemblies/layer.ts'

/** Whether a lining is held by something soft, or stands on a frame of its own: a rigid contact would bypass it. */
export function isResilient(layers: readonly Layer[]): boolean {
  return layers.some((layer) => layer.kind === 'cavity' && isSoft(layer))
}

function isSoft({ link, frame }: CavityLayer): boolean {
  switch (link.kind) {
    case 'resilient-channel':
    case 'sound-clip':
    case 'low-profile-clip':
    case 'spring-hanger':
    case 'staggered-stud':
      return true
    case 'none':
      return frame !== undefined
    case 'wood-stud':
    case 'light-steel-stud':
    case 'load-bearing-steel-stud':
      return false
  }
}
