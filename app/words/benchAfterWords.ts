import type { BenchChecks, BenchEntry, BenchSheet } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatHours } from '../../lib/charts/format';
import { partName } from './benchSheetWords';
import { boxWords, conformitySentences, doubtWords } from './benchWords';

type Characteristics = FleetResult['characteristics'];

/** What was fitted, and up to which overhaul the forecasts reach. */
export function afterSentence(sheet: BenchSheet, entry: BenchEntry, { effect }: BenchChecks): string {
  const fitted = entry.fitted.map((code) => {
    const known = sheet.parts.find(({ part }) => part === code);
    return known === undefined ? code : partName(known);
  });
  const parts = fitted.length === 0 ? 'No part is ticked as fitted.' : `Fitted: ${fitted.join(', ')}.`;
  const reach =
    effect.following_h === null
      ? 'Without an interval in the plan no overhaul after this one is known.'
      : `The overhaul after this one is taken to be at ${formatHours(effect.following_h)}.`;
  return `${parts} ${reach} ‘Before’ is what was foretold without these readings, ‘after’ with them.`;
}

/** What was not expected: readings questioned, those that stand included, and what lies outside its bounds. */
export function surpriseSentences(
  checks: BenchChecks,
  entry: BenchEntry,
  characteristics: Characteristics,
): readonly string[] {
  const readings = checks.boxes.flatMap((check) =>
    check.doubts.map((doubt) => {
      const stands = entry.stands[check.box] === entry.texts[check.box];
      const { reason } = doubtWords(doubt, check, entry.uom);
      return `${boxWords(check, characteristics)}: ${reason}${stands ? ' Measured again: it stands.' : ''}`;
    }),
  );
  const bounds = checks.series.flatMap((one) =>
    conformitySentences(
      {
        ...one,
        limits: one.limits.filter(({ conformity }) => conformity !== 'within'),
        assembly: one.assembly?.conformity === 'within' ? null : one.assembly,
      },
      characteristics,
      entry.uom,
    ),
  );
  return [...new Set([...readings, ...bounds])];
}
