import type { ChartedReading, UnitCharts, Workshop } from '../analysis/drift/types';
import type { PanelInput } from './controlPanel';
import { formatDate, formatLength, formatMm, formatScore } from './format';

const stageWords = { found: 'as found', left: 'as left' } as const;

function hint(reading: ChartedReading, said: string): string {
  return `${formatDate(reading.date)}, ${stageWords[reading.stage]}: ${said}`;
}

/** Readings in mm beside what was foretold for each. */
export function readingsPanel({ series }: UnitCharts): PanelInput {
  const { readings } = series;
  return {
    title: 'reading, mm',
    joined: false,
    points: readings.map((reading) => ({
      date: reading.date,
      value: reading.value_mm,
      stage: reading.stage,
      outside: false,
      hint: hint(
        reading,
        `${formatMm(reading.value_mm)}${reading.foretold_mm === null ? ', nothing foretold' : `, foretold ${formatMm(reading.foretold_mm)}`}`,
      ),
    })),
    foretold: readings.flatMap(({ date, foretold_mm }) =>
      foretold_mm === null ? [] : [{ date, value: foretold_mm }],
    ),
    curves: [],
    rules: [],
  };
}

/** Forecast residuals, one by one. */
export function individualsPanel({ known, individuals, series }: UnitCharts): PanelInput {
  const limit = individuals ?? Number.POSITIVE_INFINITY;
  const isOutside = (z: number) => z > limit || (series.sides === 'both' && z < -limit);
  return {
    title: 'forecast residual z, SD',
    joined: false,
    points: known.map((reading) => ({
      date: reading.date,
      value: reading.z ?? 0,
      stage: reading.stage,
      outside: isOutside(reading.z ?? 0),
      hint: hint(reading, `z ${formatScore(reading.z)}`),
    })),
    foretold: [],
    curves: [],
    rules: [
      { kind: 'centre', value: 0, label: '' },
      ...bothSides(individuals, series.sides, (value) => `threshold ${formatScore(value)}`),
    ],
  };
}

/** Weighted moving average with its exact limits. */
export function ewmaPanel({ known, ewma, series }: UnitCharts): PanelInput {
  const points = (ewma ?? []).map(({ ewma: value, limit }, index) => ({
    reading: known[index] as ChartedReading,
    value,
    limit,
  }));
  const limits = (sign: number) =>
    points.map(({ reading, limit }) => ({ date: reading.date, value: sign * limit }));
  return {
    title: 'weighted mean of z, SD',
    joined: true,
    points: points.map(({ reading, value, limit }) => ({
      date: reading.date,
      value,
      stage: reading.stage,
      outside: value > limit || (series.sides === 'both' && value < -limit),
      hint: hint(reading, `${formatScore(value)}, limit ${formatScore(limit)}`),
    })),
    foretold: [],
    curves: [
      { kind: 'limit', points: limits(1) },
      ...(series.sides === 'both' ? [{ kind: 'limit' as const, points: limits(-1) }] : []),
    ],
    rules: [{ kind: 'centre', value: 0, label: '' }],
  };
}

/** Cumulative sums: above zero of rises, below zero of falls. */
export function cusumPanel({ known, cusum, series }: UnitCharts): PanelInput {
  const { threshold, upper, lower } = cusum ?? { threshold: null, upper: [], lower: null };
  return {
    title: 'cumulative sum of z, SD',
    joined: true,
    points: upper.map((value, index) => {
      const reading = known[index] as ChartedReading;
      const fall = lower?.[index] ?? 0;
      const isOut = threshold !== null && (value > threshold || fall > threshold);
      return {
        date: reading.date,
        value,
        stage: reading.stage,
        outside: isOut,
        hint: hint(
          reading,
          `rise ${formatScore(value)}${lower === null ? '' : `, fall ${formatScore(fall)}`}`,
        ),
      };
    }),
    foretold: [],
    curves:
      lower === null
        ? []
        : [
            {
              kind: 'statistic',
              points: lower.map((value, index) => ({
                date: (known[index] as ChartedReading).date,
                value: -value,
              })),
            },
          ],
    rules: [
      { kind: 'centre', value: 0, label: '' },
      ...bothSides(threshold, series.sides, (value) => `threshold ${formatScore(value)}`),
    ],
  };
}

/** Readings of one stage in mm with limits by their moving range. */
export function movingRangePanel({ movingRange: { readings, chart, stage } }: UnitCharts): PanelInput {
  const signals = new Set(chart?.signals.map(({ index }) => index));
  return {
    title: `${stageWords[stage]}, mm`,
    joined: true,
    points: readings.map((reading, index) => ({
      date: reading.date,
      value: reading.value_mm,
      stage: reading.stage,
      outside: signals.has(index),
      hint: hint(reading, formatMm(reading.value_mm)),
    })),
    foretold: [],
    curves: [],
    rules:
      chart === null
        ? []
        : [
            { kind: 'centre', value: chart.centre, label: `mean ${formatLength(chart.centre)}` },
            { kind: 'limit', value: chart.upper, label: `upper ${formatLength(chart.upper)}` },
            ...(chart.lower === null
              ? []
              : [
                  { kind: 'limit' as const, value: chart.lower, label: `lower ${formatLength(chart.lower)}` },
                ]),
          ],
  };
}

/** What one workshop left, as forecast residuals in order of date, with the mean of them all. */
export function workshopPanel({ readings }: Workshop): PanelInput {
  const known = readings.filter(({ z }) => z !== null);
  const mean = known.reduce((sum, { z }) => sum + (z ?? 0), 0) / Math.max(1, known.length);
  return {
    title: 'forecast residual z as left, SD',
    joined: false,
    points: known.map((reading) => ({
      date: reading.date,
      value: reading.z ?? 0,
      stage: 'left',
      outside: Math.abs(reading.z ?? 0) > 3,
      hint: `${reading.unit}, ${formatDate(reading.date)}: ${formatMm(reading.value_mm)}, z ${formatScore(reading.z)}`,
    })),
    foretold: [],
    curves: [],
    rules: [
      { kind: 'centre', value: 0, label: '' },
      { kind: 'centre', value: mean, label: `mean ${formatScore(mean)}` },
      { kind: 'limit', value: 3, label: '' },
      { kind: 'limit', value: -3, label: '' },
    ],
  };
}

function bothSides(value: number | null, sides: 'both' | 'upper', label: (value: number) => string) {
  if (value === null) return [];
  const rule = (at: number) => ({ kind: 'limit' as const, value: at, label: label(at) });
  return sides === 'both' ? [rule(value), rule(-value)] : [rule(value)];
}
