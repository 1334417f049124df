import { extent, group } from 'd3-array';
import { falseDiscovery } from '../../stats/sisters/falseDiscovery';
import { type Funnel, type FunnelOf, funnel, funnelLimits } from '../../stats/sisters/funnel';
import { rateRatio } from '../../stats/sisters/rateRatio';
import { unitRate } from '../../stats/wear/unitRate';
import type { GroupFit } from '../groupFits';
import { startRows } from './startRows';
import type { SisterFunnel, SisterGroup, SisterRow, StartRow } from './types';

/** Points on a funnel's curves. */
const curvePoints = 24;
/** Fewer units leave the spread between units so open that no funnel by it means anything. */
const fewestForFunnel = 3;

/** Rate ratios and funnels of every group and series; q-values are within a series, over all of its groups. */
export function sisterGroups(fits: Iterable<GroupFit>): readonly SisterGroup[] {
  const groups = [...fits].map(sisterGroup);
  const qOf = new Map<SisterRow | StartRow, number>();
  for (const ofSeries of group(groups, ({ series }) => series).values()) {
    const rates = ofSeries.flatMap(({ rows }) => rows);
    addQ(
      qOf,
      rates,
      rates.map(({ rate }) => rate.tailProbability),
    );
    const starts = ofSeries.flatMap(({ startRows: own }) => own);
    addQ(
      qOf,
      starts,
      starts.map(({ tailProbability }) => tailProbability),
    );
  }
  const withQ = <Row extends SisterRow | StartRow>(row: Row): Row => ({ ...row, q: qOf.get(row) ?? 1 });
  return groups.map((one) => ({
    ...one,
    rows: one.rows.map(withQ),
    startRows: one.startRows.map(withQ),
  }));
}

function addQ<Row>(qOf: Map<Row, number>, rows: readonly Row[], probabilities: readonly number[]): void {
  const q = falseDiscovery(probabilities);
  rows.forEach((row, index) => {
    qOf.set(row, q[index] ?? 1);
  });
}

function sisterGroup({ row, statistics, posterior, fit }: GroupFit): SisterGroup {
  const { group: name, series } = row;
  const common = { group: name, series, slope_mm_per_10kh: row.slope_mm_per_10kh };
  if (posterior === null || fit === null)
    return { ...common, rows: [], startRows: [], rates: null, starts: null, reason: row.reason };
  const funnelOf = (of: FunnelOf) =>
    statistics.unitNames.length < fewestForFunnel ? null : sisterFunnel(funnel(statistics, fit, of));
  const starts = funnelOf('start');
  return {
    ...common,
    startRows: startRows(name, series, starts),
    rows: statistics.unitNames.map((unit, index) => ({
      unit,
      group: name,
      series,
      rate: rateRatio(unitRate(posterior, statistics, index)),
      q: 1,
      readings: readingsOf(statistics, index),
    })),
    rates: funnelOf('rate'),
    starts,
    reason: null,
  };
}

function readingsOf({ firstRun, count }: GroupFit['statistics'], unit: number): number {
  let readings = 0;
  for (let run = firstRun[unit] ?? 0; run < (firstRun[unit + 1] ?? 0); run++) readings += count[run] ?? 0;
  return readings;
}

function sisterFunnel(drawn: Funnel): SisterFunnel {
  const sds = drawn.units.flatMap((unit) => (unit.reason === null ? [unit.sd] : []));
  const [least = 0, most = 0] = extent(sds);
  const [narrowest, widest] = [0.85 * least, 1.05 * most];
  const limits =
    sds.length === 0
      ? []
      : funnelLimits(
          drawn,
          Array.from(
            { length: curvePoints + 1 },
            (_, step) => narrowest + ((widest - narrowest) * step) / curvePoints,
          ),
        );
  return { centre: drawn.centre, units: drawn.units, limits };
}

/** What the funnels of a series say of each unit in standard deviations, for comparing sites and duties. */
export function unitScores(groups: readonly SisterGroup[], of: FunnelOf): ReadonlyMap<string, number> {
  const scores = new Map<string, number>();
  for (const one of groups) {
    const drawn = of === 'rate' ? one.rates : one.starts;
    for (const unit of drawn?.units ?? []) if (unit.reason === null) scores.set(unit.unit, unit.score);
  }
  return scores;
}
