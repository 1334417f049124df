/** Shapes drawn in charts and in the keys beside them, as paths in a box from -1 to 1. */
export const symbols = {
  /** As found: a filled disc. */
  found: 'M1,0A1,1,0,1,1,-1,0A1,1,0,1,1,1,0Z',
  /** As left: an open triangle. */
  left: 'M0,-1L1,0.8L-1,0.8Z',
  /** End of the rated life: a closing bracket. */
  ratedLife: 'M-0.5,-1L0,-1L0,1L-0.5,1',
  /** No forecast: one stroke of hatching. */
  hatch: 'M-1,1L1,-1',
} as const;
