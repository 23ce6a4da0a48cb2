/** Notes that say a build-up stands on the wrong ground: the ruler marks it doubtful, and no next step proposes it. */
export const WRONG_GROUND: ReadonlySet<string> = new Set([
  'resilient-over-board',
  'needs-bare-bays',
  'nested-under-trusses',
  'masonry-on-frame',
  'frame-on-masonry',
  'compound-alone',
])
