import type { UnitOutlook } from './combineChances';

/** Chance above which a level counts as past its limit. */
export const pastChance = 0.9;

/** Chance above which a unit counts as reaching a limit before its next planned overhaul. */
export const pressingChance = 0.1;

type Chances = Pick<UnitOutlook, 'chanceNow' | 'chanceAtNextOverhaul'>;

/** Whether some limit is past now. */
export function isPastNow({ chanceNow }: Pick<UnitOutlook, 'chanceNow'>): boolean {
  return (chanceNow ?? 0) > pastChance;
}

/** Whether a limit is reached before the next planned overhaul with a chance that counts. */
export function isPressing({ chanceAtNextOverhaul }: Chances): boolean {
  return (chanceAtNextOverhaul ?? 0) > pressingChance;
}

/** Whether the unit cannot wait for its next planned overhaul: a limit is past now, or reached before then. */
export function cannotWait(chances: Chances): boolean {
  return isPastNow(chances) || isPressing(chances);
}
