import { describe, expect, test } from 'vitest';
import { driftSettings, listText } from '../../app/drift/driftAddress';
import { journalCsv } from '../../app/records/journal/journalCsv';
import {
  budgetSentence,
  driftSentence,
  patternWords,
  rateWords,
  sideWords,
  strongestWords,
} from '../../app/words/driftSentence';
import { aboutWords, decidedWords } from '../../app/words/rulingWords';
import { usualDriftSettings } from '../../lib/analysis/drift/driftResult';
import type { DriftFinding, DriftResult, DriftSignal } from '../../lib/analysis/drift/types';
import { builtInCharacteristics } from '../../lib/records/characteristics';
import { acknowledgement } from '../../lib/records/decisions/acknowledgements';
import { withDecisions } from '../../lib/records/decisions/journal';

const plain = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, ' ');

function signal(changes: Partial<DriftSignal> = {}): DriftSignal {
  return {
    id: 'signal | H-2005',
    unit: 'H-2005',
    group: 'Heron',
    series: 'runout',
    chart: 'cusum',
    rule: 'sum of departures beyond the threshold',
    overhaul: 'OH-0308',
    date: '2024-11-03',
    stage: 'found',
    side: 'upper',
    statistic: 5.17,
    threshold: 4.4,
    sinceDate: '2021-03-24',
    ...changes,
  };
}

function finding(changes: Partial<DriftFinding> = {}): DriftFinding {
  return {
    unit: 'H-2005',
    group: 'Heron',
    series: 'runout',
    signals: [signal(), signal({ chart: 'ewma' })],
    strongest: signal(),
    byChance_per_year: 0.0011,
    side: 'upper',
    sinceDate: '2021-03-24',
    lastDate: '2026-07-19',
    expectedFalse: 0.06,
    pattern: 'persists',
    ...changes,
  };
}

function result(changes: Partial<DriftResult> = {}): DriftResult {
  return {
    asOf: '2026-10-21',
    source: 'own',
    settings: usualDriftSettings,
    years: 12.9,
    readings: 6945,
    thresholds: [{ chart: 'cusum', sides: 'upper', threshold: 4.4, expected_per_year: 2, met: true }],
    ruleCosts: [{ rule: 'nineOnOneSide', expected_per_year: 1.5 }],
    findings: [finding()],
    uncharted: [],
    ...changes,
  };
}
const said = (drift: DriftResult, open = drift.findings) =>
  plain(driftSentence(drift, open, builtInCharacteristics));

describe('driftSentence', () => {
  test('says which series of which units, which way, since when, how sure, and what it points to', () => {
    expect(said(result())).toBe(
      '1 series of a unit has an open signal; the strongest: H-2005, runout, high since 2021-03-24, last on 2026-07-19 (by chance once in 910 years; persists through reassembly: points to the shaft).',
    );
  });

  test('names the strongest series of at most three units', () => {
    const findings = ['A', 'A', 'B', 'C', 'D'].map((unit) => finding({ unit, pattern: 'cannot be told' }));
    const text = said(result({ findings }));
    expect(text).toMatch(/^5 series of units have an open signal/);
    expect([...text.matchAll(/([A-D]), runout/g)].map(([, unit]) => unit)).toEqual(['A', 'B', 'C']);
  });

  test('says when there is nothing to compare, nothing found, or nothing left to look at', () => {
    expect(said(result({ readings: 0, findings: [] }))).toContain('no drift can be told');
    expect(said(result({ findings: [] }))).toContain('No signal in 6 945 readings');
    expect(said(result(), [])).toBe('Every signal is acknowledged: 1 series of single units.');
  });
});

test('signals found stand against those that chance alone brings, rules in force included', () => {
  expect(plain(budgetSentence(result()))).toMatch(
    /^Over 13 years and 6 945 readings about 26 signals would come by chance alone \(2\.0 a year\); 2 came, at 1 overhaul: /,
  );
  const strict = { ...usualDriftSettings, rules: ['nineOnOneSide'] as const };
  expect(plain(budgetSentence(result({ settings: strict, findings: [] })))).toContain(
    'about 45 signals would come by chance alone (3.5 a year); none came.',
  );
});

test('only a pattern of runout points to a part', () => {
  expect(patternWords({ pattern: 'vanishes', series: 'runout' })).toBe(
    'gone as left: points to seating or dirt in the contact faces',
  );
  expect(patternWords({ pattern: 'vanishes', series: 'tip_turbine_mean' })).toBe('gone as left');
  expect(patternWords({ pattern: 'persists', series: 'thrust_play' })).toBe('persists through reassembly');
});

test.each([
  [3.21, '3.2 a year'],
  [0.6, '0.6 a year'],
  [0.5, 'once in 2 years'],
  [0.034, 'once in 29 years'],
  [0.00123, 'once in 810 years'],
  [0.0009, 'under once in 1 000 years'],
  [0, 'under once in 1 000 years'],
])('a rate of %d a year is %s', (rate, words) => {
  expect(plain(rateWords(rate))).toBe(words);
});

test('a finding with signals both ways says so', () => {
  expect(sideWords(finding())).toBe('high');
  expect(sideWords(finding({ signals: [signal(), signal({ side: 'lower' })] }))).toBe('high, once low');
});

test('the strongest signal is said with its threshold, a rule without', () => {
  expect(strongestWords(finding())).toBe('cumulative sum 5.17 against 4.40');
  const rule = signal({ chart: 'run rule', rule: 'nineOnOneSide', statistic: 0.4, threshold: 0 });
  expect(strongestWords(finding({ strongest: rule }))).toBe('nine on one side 0.40');
});

test('settings come from the address, and what is not understood is as usual', () => {
  const of = (query: string) => driftSettings(new URLSearchParams(query));
  expect(of('')).toEqual(usualDriftSettings);
  expect(of('budget=0.5&charts=cusum,ewma&rules=nineOnOneSide,none')).toEqual({
    budget_per_year: 0.5,
    charts: ['ewma', 'cusum'],
    rules: ['nineOnOneSide'],
  });
  for (const budget of ['x', '0', '-1', '1e9', 'NaN'])
    expect(of(`budget=${budget}`)).toEqual(usualDriftSettings);
  expect(of('charts=none').charts).toEqual(usualDriftSettings.charts);
  expect(listText(['ewma', 'cusum'], usualDriftSettings.charts)).toBe('ewma,cusum');
  expect(listText(usualDriftSettings.charts, usualDriftSettings.charts)).toBe('');
});

test('an acknowledgement stands in the journal and its CSV in words', () => {
  const decision = acknowledgement({
    source: 'demo',
    unit: 'H-2005',
    series: 'runout',
    upTo: '2026-07-19',
    remark: 'shaft to be checked; see note',
  });
  expect(aboutWords(decision)).toBe('signals of H-2005, runout, up to 2026-07-19 (demo fleet)');
  expect(decidedWords(decision)).toBe('acknowledged: shaft to be checked; see note');
  const journal = withDecisions([], [decision], { at: '2026-03-01T08:00:00.000Z', by: 'AB' });
  expect(journalCsv(journal)).toContain(
    '1,2026-03-01T08:00:00.000Z,AB,decided,acknowledgement,"signals of H-2005, runout, up to 2026-07-19 (demo fleet)",nothing decided,acknowledged: shaft to be checked; see note',
  );
});
