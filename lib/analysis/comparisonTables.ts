import type { DriftFinding } from './drift/types';
import { chances, lengths } from './fileNumbers';
import type { ResultTable } from './fleetTables';
import type { SisterRatio } from './sisters/types';

/**
 * Every unit against its sisters, rate ratio with its 80 % interval: sisters.csv.
 *
 * @param q q-value of a row; undefined leaves the cell empty
 */
export function sistersTable(
  rows: readonly SisterRatio[],
  q: (row: number) => number | undefined,
): ResultTable {
  return {
    name: 'sisters',
    header: [
      'unit',
      'group',
      'series',
      'rate_ratio',
      'rate_ratio_lower',
      'rate_ratio_upper',
      'tail_probability',
      'q_value',
    ],
    rows: rows.map(({ unit, group, series, rate }, row) => [
      unit,
      group,
      series,
      lengths(rate.ratio?.median ?? null),
      lengths(rate.ratio?.lower80 ?? null),
      lengths(rate.ratio?.upper80 ?? null),
      chances(rate.tailProbability),
      chances(q(row) ?? null),
    ]),
  };
}

/** Every signal, by unit, series and date: signals.csv. */
export function signalsTable({
  findings,
}: {
  readonly findings: readonly Pick<DriftFinding, 'signals'>[];
}): ResultTable {
  const signals = findings.flatMap((finding) => finding.signals);
  const key = ({ unit, series, date, chart }: (typeof signals)[number]) =>
    [unit, series, date, chart].join('\u0000');
  return {
    name: 'signals',
    header: ['unit', 'series', 'chart', 'rule', 'overhaul', 'date', 'statistic', 'threshold'],
    rows: signals
      .map((signal) => ({ signal, place: key(signal) }))
      .sort((a, b) => (a.place < b.place ? -1 : a.place > b.place ? 1 : 0))
      .map(({ signal: { unit, series, chart, rule, overhaul, date, statistic, threshold } }) => [
        unit,
        series,
        chart,
        rule,
        overhaul,
        date,
        lengths(statistic),
        chart === 'run rule' ? null : lengths(threshold),
      ]),
  };
}
