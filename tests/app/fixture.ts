import type {
  FitRow,
  FleetResult,
  MarginRow,
  Question,
  SeriesReading,
  UnitResult,
  UnitRow,
  UnitSeries,
} from '../../lib/analysis/types';
import type { ChancePoint } from '../../lib/charts/fleetStripData';

/** Results written by hand for the tests of pages and charts: invented, and small enough to check by eye. */

export const asOf = '2026-11-01';

const quarters = Array.from({ length: 13 }, (_, quarter) =>
  new Date(Date.UTC(2026, 10 + quarter * 3, 1)).toISOString().slice(0, 10),
);

export function chances(...values: readonly number[]): readonly ChancePoint[] {
  return values.map((chance, quarter) => ({ date: quarters[quarter] ?? '', chance }));
}

export function margin(changes: Partial<MarginRow> = {}): MarginRow {
  return {
    unit: 'L-1107',
    group: 'Lark',
    series: 'thrust_play',
    limitKind: 'upper',
    limit_mm: 0.3,
    limitSource: 'invented table 1',
    runHours: 9200,
    level_mm: 0.212,
    levelSd_mm: 0.011,
    slope_mm_per_10kh: 0.081,
    slopeSd_mm_per_10kh: 0.012,
    margin_mm: 0.088,
    hoursEarly: 7000,
    hoursMedian: 10_900,
    hoursLate: 16_400,
    dateEarly: '2027-11-20',
    dateMedian: '2028-07-01',
    dateLate: '2029-06-10',
    chanceNow: 0.0002,
    nextOverhaulDate: '2028-02-01',
    chanceAtNextOverhaul: 0.18,
    expectedFoundLower_mm: 0.25,
    expectedFoundMedian_mm: 0.28,
    expectedFoundUpper_mm: 0.31,
    cappedByRatedLife: false,
    extrapolated: false,
    reason: null,
    chanceByQuarter: [0, 0.01, 0.03, 0.06, 0.12, 0.2, 0.34, 0.5, 0.66, 0.8, 0.9, 0.96, 0.98],
    ...changes,
  };
}

/** A limited margin without a forecast. */
export function marginWithoutForecast(changes: Partial<MarginRow> = {}): MarginRow {
  return margin({
    level_mm: null,
    levelSd_mm: null,
    slope_mm_per_10kh: null,
    slopeSd_mm_per_10kh: null,
    margin_mm: null,
    hoursEarly: null,
    hoursMedian: null,
    hoursLate: null,
    dateEarly: null,
    dateMedian: null,
    dateLate: null,
    chanceNow: null,
    chanceAtNextOverhaul: null,
    expectedFoundLower_mm: null,
    expectedFoundMedian_mm: null,
    expectedFoundUpper_mm: null,
    chanceByQuarter: [],
    reason: 'the group has under 2 units with 2 readings in a run',
    ...changes,
  });
}

export function unit(changes: Partial<UnitRow> = {}): UnitRow {
  return {
    unit: 'L-1107',
    frame: 'Lark',
    group: 'Lark',
    site: 'North Skerry',
    engine: 'NS-2',
    bank: 'A',
    hoursNow: 48_210,
    hoursPerYear: 6200,
    hoursSource: 'plan',
    nextOverhaulDate: '2028-02-01',
    plannedOverhauls: ['2028-02-01', '2029-10-01'],
    ratedLifeDate: '2029-06-01',
    lastOverhaulDate: '2025-03-10',
    lastWorkshop: 'Fulmar Rotor Shop',
    overhauls: 5,
    ...changes,
  };
}

export const fit: FitRow = {
  group: 'Lark',
  series: 'thrust_play',
  runs: 14,
  units: 6,
  readings: 41,
  intercept_mm: 0.14,
  slope_mm_per_10kh: 0.07,
  sdNoise_mm: 0.01,
  sdStart_mm: 0.012,
  sdSlopeUnit_mm_per_10kh: 0.01,
  sdSlopeRun_mm_per_10kh: 0.006,
  remlCriterion: -120.4,
  boundary: [],
  converged: true,
  observedRunHours: 16_000,
  reason: null,
};

export const characteristics = [
  { code: 'thrust_play', name: 'Thrust play' },
  { code: 'runout', name: 'Runout' },
  { code: 'tip_compressor', name: 'Tip clearance, compressor' },
];

export function fleet(changes: Partial<FleetResult> = {}): FleetResult {
  return {
    asOf,
    source: 'demo',
    units: [
      unit({ unit: 'L-1102', site: 'South Stack', engine: 'SS-1', bank: null, ratedLifeDate: null }),
      unit(),
      unit({ unit: 'H-2001', frame: 'Heron', group: 'Heron', engine: 'NS-3', hoursNow: null }),
    ],
    fits: [fit],
    margins: [
      margin({ unit: 'L-1102', chanceAtNextOverhaul: 0.02, hoursEarly: 21_000, dateEarly: '2030-02-01' }),
      margin(),
      margin({
        series: 'runout',
        limit_mm: 0.04,
        chanceAtNextOverhaul: 0.1,
        chanceByQuarter: [0, 0.05, 0.1],
      }),
      marginWithoutForecast({ unit: 'H-2001', group: 'Heron' }),
    ],
    files: [],
    problems: [],
    problemsFound: 0,
    questions: [],
    sheets: [],
    characteristics,
    quarters,
    ...changes,
  };
}

export function reading(changes: Partial<SeriesReading> = {}): SeriesReading {
  return {
    overhaul: 'O-1',
    date: '2021-03-04',
    stage: 'found',
    unitHours: 20_400,
    runHours: 8200,
    run: 'R2',
    value_mm: 0.21,
    lower_mm: null,
    upper_mm: null,
    workshop: 'Skerry Works',
    sourceFile: 'readings.csv',
    sourceRow: 17,
    ...changes,
  };
}

export function unitSeries(changes: Partial<UnitSeries> = {}): UnitSeries {
  return {
    series: 'thrust_play',
    readings: [
      reading({ unitHours: 0, runHours: 0, stage: 'left', value_mm: 0.14, run: 'R1' }),
      reading({ unitHours: 12_200, runHours: 12_200, value_mm: 0.24, run: 'R1' }),
      reading({ unitHours: 12_200, runHours: 0, stage: 'left', value_mm: 0.15 }),
      reading(),
      reading({ unitHours: 30_100, runHours: 17_900, value_mm: 0.275, lower_mm: 0.25, upper_mm: 0.3 }),
    ],
    sisterBand: [12_200, 20_000, 30_000, 48_210, 56_000].map((hours, index) => ({
      unitHours: hours,
      date: null,
      lower_mm: 0.13 + index * 0.03,
      median_mm: 0.15 + index * 0.035,
      upper_mm: 0.17 + index * 0.04,
    })),
    ownLine: [12_200, 30_100, 56_000].map((hours, index) => ({
      unitHours: hours,
      date: null,
      lower_mm: 0.12 + index * 0.05,
      median_mm: 0.15 + index * 0.06,
      upper_mm: 0.18 + index * 0.07,
    })),
    ownLineReason: null,
    ownSlope_mm_per_10kh: 0.08,
    theilSenSlope_mm_per_10kh: 0.079,
    resets: [{ unitHours: 12_200, date: '2019-05-02', by: 'TB-L' }],
    margins: [margin()],
    fit,
    nextOverhaulUnitHours: 52_000,
    ...changes,
  };
}

export function unitResult(changes: Partial<UnitResult> = {}): UnitResult {
  return {
    unit: unit(),
    asOf,
    source: 'demo',
    series: [unitSeries()],
    history: [
      {
        overhaul: 'O-1',
        date: '2021-03-04',
        unitHours: 20_400,
        hoursDerived: false,
        engine: 'NS-2',
        bank: 'A',
        site: 'North Skerry',
        workshop: 'Skerry Works',
        kind: 'planned',
        fitted: null,
        remarks: null,
      },
    ],
    places: { stays: [], meterEvents: [], derived: [] },
    ...changes,
  };
}

export function question(changes: Partial<Question> = {}): Question {
  return {
    id: 'unit of measure | sheet.csv |  | ',
    file: 'sheet.csv',
    column: 'Axial play',
    question: 'Which unit of measure do these readings have?',
    choices: ['mm', 'in', 'mil'],
    guess: 'mm',
    cellsWaiting: 12,
    ...changes,
  };
}
