import { clockPositions } from '../../records/characteristics';
import type { Clock } from './benchEntry';
import type { CheckBasis, Stage } from './types';

/** The stages in the order in which they are read. */
export const stages: readonly Stage[] = ['found', 'left'];

/** The positions in the order in which they are read. */
export const clocks: readonly Clock[] = clockPositions;

/** Clock positions of a characteristic; one box without a position for a single reading. */
export function clocksOf({ shape }: Pick<CheckBasis, 'shape'>): readonly (Clock | null)[] {
  return shape === 'single' ? [null] : clocks;
}
