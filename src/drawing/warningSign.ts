import type { Mark, Role } from '#drawing/model.ts'

/** Triangle with a stroke and a dot, standing on a baseline. */
export function warningSign(x: number, baseline: number, size: number, role: Role, surfaceId?: string): Mark[] {
  const width = size
  const height = size * 0.86
  const middle = x + width / 2
  const pen = size * 0.1
  return [
    {
      kind: 'polygon',
      role,
      surfaceId,
      rings: [
        [
          [x, baseline],
          [middle, baseline - height],
          [x + width, baseline],
        ],
      ],
      fill: 'sheet',
      stroke: { colour: 'warn', width: pen },
    },
    {
      kind: 'lines',
      role,
      surfaceId,
      runs: [
        [middle, baseline - height * 0.66, middle, baseline - height * 0.32],
        [middle, baseline - height * 0.22, middle, baseline - height * 0.12],
      ],
      stroke: { colour: 'warn', width: pen },
    },
  ]
}
