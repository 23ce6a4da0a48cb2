const SHAPES = [
  'M-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z',
  'M-5 -5H5V5H-5Z',
  'M0 -6L6 5H-6Z',
  'M0 -6.5L6.5 0L0 6.5L-6.5 0Z',
  'M-6 -5H6L0 6Z',
  'M-2 -6H2V-2H6V2H2V6H-2V2H-6V-2H-2Z',
  'M-6 -3L0 -6.5L6 -3V3L0 6.5L-6 3Z',
  'M-6 -6L0 -2L6 -6L2 0L6 6L0 2L-6 6L-2 0Z',
] as const
const DASHES = ['', '6 3', '2 3', '8 3 2 3', '1 2'] as const

/** The shape a scheme is told apart by, whatever its colour; drawn about the origin. */
export function SchemeSign({ index }: { readonly index: number }) {
  return <path className="scheme-sign" d={SHAPES[index % SHAPES.length]!} />
}

/** The line pattern that goes with the shape. */
export function schemeDash(index: number): string {
  return DASHES[index % DASHES.length]!
}
