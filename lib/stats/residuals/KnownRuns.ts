import { fillRun, RUN } from '../wear/absorb';
import type { WearStatistics } from '../wear/types';
import { type RunSums, statisticsAbout } from '../wear/wearStatisticsFromColumns';
import type { TakenReadings } from './TakenReadings';

/** Columns of RunSums that are added to reading by reading; y is counted from the statistics' centre. */
type Sums = { readonly [name in keyof RunSums]: Float64Array };

/**
 * What is known of one unit's runs while its readings are taken one by one: sums about each run's own means, which are moved
 * with every reading (West 1979, Communications of the ACM 22, 532), so that no reading is summed twice.
 *
 * Made once for a group and begun anew for each unit.
 */
export class KnownRuns {
  /** Runs of the unit as absorption takes them, see fillRun; those without a reading are zero. */
  readonly records: Float64Array;
  /** Readings known. */
  readings = 0;
  /** Run of the last reading, counted from the unit's first; -1 before any reading. */
  open = -1;
  /** Runs of the unit. */
  runs = 0;
  private readonly sums: Sums;
  private unit = 0;

  constructor(
    private readonly statistics: WearStatistics,
    private readonly taken: TakenReadings,
  ) {
    const most = statistics.firstRun.reduce(
      (longest, end, unit) => Math.max(longest, end - (statistics.firstRun[unit - 1] ?? 0)),
      0,
    );
    this.records = new Float64Array(RUN * most);
    const column = () => new Float64Array(most);
    this.sums = {
      count: column(),
      n: column(),
      log_weight_sum: column(),
      mean_x: column(),
      mean_y: column(),
      sxx_c: column(),
      sxy_c: column(),
      syy_c: column(),
      min_x: column(),
      max_x: column(),
    };
  }

  /** Turns to a unit of which nothing is known yet. */
  begin(unit: number): void {
    const { firstRun } = this.statistics;
    this.unit = unit;
    this.runs = (firstRun[unit + 1] as number) - (firstRun[unit] as number);
    this.readings = 0;
    this.open = -1;
    this.records.fill(0, 0, RUN * this.runs);
    for (const column of Object.values(this.sums)) column.fill(0, 0, this.runs);
  }

  /** Readings known of a run, counted from the unit's first. */
  readingsOf(run: number): number {
    return this.sums.count[run] as number;
  }

  /** Run of one of the unit's readings, counted from the unit's first run. */
  runOf(reading: number): number {
    return (this.taken.run[reading] as number) - (this.statistics.firstRun[this.unit] as number);
  }

  /** Takes the unit's next reading. */
  take(): void {
    const reading = (this.taken.firstReading[this.unit] as number) + this.readings;
    const x = this.taken.x[reading] as number;
    const y = (this.taken.y[reading] as number) - this.statistics.yCentre;
    const weight = this.taken.weight[reading] as number;
    const run = this.runOf(reading);
    const { count, n, mean_x, mean_y, sxx_c, sxy_c, syy_c, min_x, max_x } = this.sums;
    const isFirst = count[run] === 0;
    const total = (n[run] as number) + weight;
    const dx = x - (mean_x[run] as number);
    const dy = y - (mean_y[run] as number);
    const meanX = isFirst ? x : (mean_x[run] as number) + (weight / total) * dx;
    const meanY = isFirst ? y : (mean_y[run] as number) + (weight / total) * dy;
    const xx = isFirst ? 0 : (sxx_c[run] as number) + weight * dx * (x - meanX);
    const xy = isFirst ? 0 : (sxy_c[run] as number) + weight * dx * (y - meanY);
    const yy = isFirst ? 0 : (syy_c[run] as number) + weight * dy * (y - meanY);
    count[run] = (count[run] as number) + 1;
    n[run] = total;
    mean_x[run] = meanX;
    mean_y[run] = meanY;
    sxx_c[run] = xx;
    sxy_c[run] = xy;
    syy_c[run] = yy;
    min_x[run] = isFirst ? x : Math.min(min_x[run] as number, x);
    max_x[run] = isFirst ? x : Math.max(max_x[run] as number, x);
    const sx = total * meanX;
    const sy = total * meanY;
    const sxx = xx + sx * meanX;
    fillRun(this.records, RUN * run, total, sx, sy, sxx, xy + sx * meanY, yy + sy * meanY, xx, xy, yy);
    this.readings += 1;
    this.open = run;
  }

  /** The runs with a reading as statistics about the group's centre; the sum of log weights is left at zero, see unitsOf. */
  statisticsKnown(): WearStatistics {
    const { unitNames, runNames, firstRun, yCentre } = this.statistics;
    const known = Array.from({ length: this.runs }, (_, run) => run).filter(
      (run) => this.readingsOf(run) > 0,
    );
    const columns = Object.entries(this.sums).map(([name, column]) => [
      name,
      Float64Array.from(known, (run) => column[run] as number),
    ]);
    const names = known.map((run) => runNames[(firstRun[this.unit] as number) + run] as string);
    const first = Int32Array.of(0, known.length);
    const sums = Object.fromEntries(columns) as RunSums;
    return { ...statisticsAbout(0, [unitNames[this.unit] as string], first, names, sums), yCentre };
  }
}
