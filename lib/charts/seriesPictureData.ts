import type { MarginRow, SeriesReading, UnitSeries } from '../analysis/types';
import { formatDate, formatHours, formatLength, formatMm } from './format';

/** What the picture of one series needs beside the series itself. */
export interface SeriesPictureInput {
  readonly series: UnitSeries;
  readonly hoursNow: number | null;
  readonly asOf: string;
  readonly nextOverhaulDate: string | null;
}

function readingHint(reading: SeriesReading): string {
  const value =
    reading.lower_mm === null || reading.upper_mm === null
      ? formatMm(reading.value_mm)
      : `${formatLength(reading.lower_mm)} to ${formatMm(reading.upper_mm)}`;
  return `${reading.stage === 'found' ? 'as found' : 'as left'} ${formatDate(reading.date)}: ${value}, ${formatHours(reading.unitHours)} on the unit`;
}

function limitsOf(margins: readonly MarginRow[]) {
  return margins.flatMap((margin) =>
    margin.limit_mm === null
      ? []
      : [
          {
            limit: margin.limit_mm,
            label: `${margin.limitKind === 'lower' ? 'lower' : 'upper'} limit ${formatMm(margin.limit_mm)}`,
          },
        ],
  );
}

/** The range in which the reading as found at the next overhaul is expected, if there is a plan and a forecast. */
function expectedOf(input: SeriesPictureInput) {
  const hours = input.series.nextOverhaulUnitHours;
  const margin = input.series.margins.find((candidate) => candidate.expectedFoundMedian_mm !== null);
  if (hours === null || margin === undefined) return [];
  const {
    expectedFoundLower_mm: lower,
    expectedFoundMedian_mm: median,
    expectedFoundUpper_mm: upper,
  } = margin;
  if (lower === null || median === null || upper === null) return [];
  const hint = `next overhaul ${formatDate(input.nextOverhaulDate)}: expected as found ${formatLength(lower)} to ${formatMm(upper)} (10 to 90 %)`;
  return [{ hours, lower, median, upper, hint }];
}

/** The named data sets that seriesPicture draws; hours on the unit, lengths in mm. */
export function seriesPictureData(input: SeriesPictureInput) {
  const { series, hoursNow } = input;
  const points = series.readings.map((reading) => ({
    hours: reading.unitHours,
    value: reading.value_mm,
    lower: reading.lower_mm,
    upper: reading.upper_mm,
    stage: reading.stage,
    hint: readingHint(reading),
  }));
  const whole = points.filter((point) => point.lower === null || point.upper === null);
  const band = (line: UnitSeries['sisterBand']) =>
    line.map((point) => ({
      hours: point.unitHours,
      lower: point.lower_mm,
      median: point.median_mm,
      upper: point.upper_mm,
    }));
  return {
    band: band(series.sisterBand),
    own: band(series.ownLine),
    found: whole.filter((point) => point.stage === 'found'),
    left: whole.filter((point) => point.stage === 'left'),
    intervals: points.filter((point) => point.lower !== null && point.upper !== null),
    limits: limitsOf(series.margins),
    resets: series.resets.map((reset) => ({
      hours: reset.unitHours,
      label: `reset: ${reset.by}`,
      hint: `reset by ${reset.by}, ${formatDate(reset.date)}, ${formatHours(reset.unitHours)} on the unit`,
    })),
    today: hoursNow === null ? [] : [{ hours: hoursNow, label: `today, ${formatDate(input.asOf)}` }],
    next:
      series.nextOverhaulUnitHours === null
        ? []
        : [
            {
              hours: series.nextOverhaulUnitHours,
              label: `next overhaul${input.nextOverhaulDate === null ? '' : `, ${formatDate(input.nextOverhaulDate)}`}`,
            },
          ],
    expected: expectedOf(input),
  };
}
