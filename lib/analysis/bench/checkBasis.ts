import { runLevel } from '../../stats/wear/runLevel';
import { currentLine, type MarginQuestion } from '../currentLine';
import type { UnitNow } from '../unitNow';
import type { CheckBasis, LineAt, StageForecast } from './types';
import type { ItemBench } from './unitBench';

/** Series that a characteristic's forecasts come from: the reading, or the mean of the clock readings. */
export function mainSeries({ characteristic, shape }: Pick<ItemBench, 'characteristic' | 'shape'>): string {
  return shape === 'single' ? characteristic : `${characteristic}_mean`;
}

/** Whether nothing starts a new run between as found and as left. */
export function isSameState({ resetParts }: ItemBench, fitted: readonly string[]): boolean {
  return resetParts.length > 0 && !resetParts.some((part) => fitted.includes(part));
}

/** The run that the unit is in, at the hours of the overhaul; or why it is not known. */
export function lineFound(
  question: MarginQuestion | undefined,
  unitHours: number | null,
): LineAt | { readonly reason: string } {
  if (question === undefined) return { reason: 'no reading of it in the sister group' };
  if (unitHours === null) return { reason: 'the hours at the overhaul are not known' };
  const current = currentLine({ ...question, unit: { ...question.unit, hoursNow: unitHours } });
  return 'reason' in current ? current : { line: current.line, x: current.runHours / 10_000 };
}

/** A new run of the unit at its start; or why nothing is known of it. */
export function lineRenewed(
  question: MarginQuestion | undefined,
  unit: UnitNow,
): LineAt | { readonly reason: string } {
  const fit = question?.fit;
  if (!fit?.posterior) return { reason: fit?.row.reason ?? 'no reading of it in the sister group' };
  const index = fit.unitIndex.get(unit.row.unit) ?? null;
  return { line: runLevel(fit.posterior, fit.statistics, index, null), x: 0 };
}

/** What the readings of one characteristic are checked against at an overhaul. */
export function checkBasis(
  item: ItemBench,
  unit: UnitNow,
  unitHours: number | null,
  fitted: readonly string[],
): CheckBasis {
  const question = item.questions.get(mainSeries(item));
  const sameState = isSameState(item, fitted);
  const found = lineFound(question, unitHours);
  const left = sameState ? found : lineRenewed(question, unit);
  return {
    characteristic: item.characteristic,
    shape: item.shape,
    neverNegative: item.neverNegative,
    forecasts: {
      found: stageForecast(found, item.clock.now),
      left: stageForecast(left, sameState ? item.clock.now : item.clock.renewed),
    },
    sameState,
    gaugeSd_mm: item.gauge?.sd_mm ?? null,
    usual_mm: item.usual_mm,
  };
}

function stageForecast(
  level: LineAt | { readonly reason: string },
  clock: StageForecast['clock'],
): StageForecast {
  return 'reason' in level ? { level: null, clock, reason: level.reason } : { level, clock, reason: null };
}
