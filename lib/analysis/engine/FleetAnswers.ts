import type { EditedTable } from '../../records/decisions/editedTables';
import { assemblyRanges } from '../../store/questions';
import { tableRows } from '../../store/tables/tableRows';
import { benchChecks } from '../bench/benchChecks';
import { benchSheet } from '../bench/benchSheet';
import type { BenchEntry } from '../bench/types';
import { type UnitBench, unitBench } from '../bench/unitBench';
import { calendarRows } from '../calendar/calendarRows';
import { clearanceCircles } from '../circle/clearanceCircles';
import { decisionsOf } from '../decisions/decisionsOf';
import { defaultDecisionSettings } from '../decisions/defaultDecisionSettings';
import type { DecisionSettings } from '../decisions/types';
import { type DrawnFleet, drawFleet } from '../demand/drawnFleet';
import { type IntervalCosts, intervalCurve } from '../demand/intervalCurve';
import { intervalGrid_h, intervalWear } from '../demand/intervalWear';
import { sparesOf } from '../demand/sparesOf';
import type { Spares, SparesSettings } from '../demand/types';
import { whatIf } from '../demand/whatIf';
import { type ChartedFleet, chartedSeries } from '../drift/chartedSeries';
import { driftResult } from '../drift/driftResult';
import type { ChartedReading, DriftSettings } from '../drift/types';
import { unitCharts } from '../drift/unitCharts';
import { workshopsAsLeft } from '../drift/workshops';
import { fitChecksOf } from '../fitChecksOf';
import { groupKey } from '../groupFits';
import type { GroupBy } from '../grouping/sisterGroupOf';
import { type Analysis, type OnProgress, onDay, regrouped } from '../openAnalysis';
import { type Planning, planningOf } from '../plan/planning';
import { gaugeRepeatability } from '../repeatability/gaugeRepeatability';
import { OtherDays } from '../report/OtherDays';
import { reportOf } from '../report/reportOf';
import type { PaperSettings } from '../report/types';
import { factorDifferences } from '../sisters/factorDifferences';
import { sistersResult } from '../sisters/sistersResult';
import { unitResult } from '../unitResult';
import type { FleetAnswer, FleetQuestion, FleetQuestions, QuestionWords } from './FleetQuestions';

/**
 * Answers questions about one analysed fleet and keeps what several answers are made from.
 *
 * A question that fails is asked anew the next time.
 */
export class FleetAnswers implements FleetQuestions {
  private readonly made = new Map<string, Promise<unknown>>();
  private readonly otherDays = new OtherDays(
    async (day) => new FleetAnswers(await onDay(this.analysis, day, this.between), this.between),
  );

  /** @param between called between the steps of long work, so that other messages have their turn */
  constructor(
    readonly analysis: Analysis,
    private readonly between: OnProgress,
  ) {}

  unit(unit: string) {
    return unitResult(this.analysis, unit);
  }

  async circles(unit: string, characteristic: string) {
    return clearanceCircles(this.analysis, unit, characteristic, await this.repeatability());
  }

  async benchSheet(unit: string, hours: string, date: string) {
    const bench = await this.bench(unit);
    return bench === null ? null : benchSheet(bench, this.analysis.fleet, hours, date);
  }

  async benchChecks(entry: BenchEntry) {
    const bench = await this.bench(entry.unit);
    return bench === null ? null : benchChecks(bench, this.analysis.fleet.asOf, entry);
  }

  fitChecks(group: string, series: string) {
    return this.once(`fit checks ${groupKey(group, series)}`, () =>
      fitChecksOf(this.analysis, group, series),
    );
  }

  repeatability() {
    const { connector, fleet } = this.analysis;
    return this.once('repeatability', () => gaugeRepeatability(connector, fleet.asOf));
  }

  drift(settings: DriftSettings) {
    return this.once(`drift ${JSON.stringify(settings)}`, async () =>
      driftResult(this.analysis.fleet, await this.chartedFleet(), settings),
    );
  }

  async unitCharts(
    unit: string,
    series: string,
    settings: DriftSettings,
    stage: ChartedReading['stage'],
    baseline: number | null,
  ) {
    const own = (await this.charts(series)).find((one) => one.unit === unit);
    if (own === undefined) return null;
    return unitCharts(own, (await this.drift(settings)).thresholds, stage, baseline);
  }

  async workshops(series: string) {
    const { connector, fleet, units } = this.analysis;
    const ranges = await assemblyRanges(connector, fleet.asOf);
    return workshopsAsLeft((await this.chartedFleet()).charted, series, units, ranges);
  }

  async charts(series: string) {
    return (await this.chartedFleet()).charted.filter((one) => one.series === series);
  }

  async tableRows(table: EditedTable) {
    return tableRows(this.analysis.connector, table);
  }

  sisters(groupBy: GroupBy) {
    return this.once(`sisters by ${groupBy}`, async () => sistersResult(await this.grouped(groupBy)));
  }

  differences(groupBy: GroupBy) {
    return this.once(`differences by ${groupBy}`, async () => {
      const { groups } = await this.sisters(groupBy);
      const { units } = this.analysis;
      return factorDifferences(units, groups, (await this.chartedFleet()).charted, groupBy);
    });
  }

  async decisions(settings: DecisionSettings) {
    return decisionsOf(await this.planning(), settings);
  }

  async spares(settings: SparesSettings) {
    return this.sparesUnder(settings);
  }

  async calendar(settings: SparesSettings) {
    const decisions = await this.decisions({
      ...defaultDecisionSettings,
      acceptedRisk: settings.acceptedRisk,
    });
    return calendarRows(decisions, await this.sparesUnder(settings));
  }

  async intervalCurve(acceptedRisk: number, costs: IntervalCosts | null) {
    const step = 'Comparing intervals between overhauls';
    const worn = await this.once(`interval ${acceptedRisk}`, async () =>
      intervalWear(await this.drawnFleet(), acceptedRisk, intervalGrid_h, (share) =>
        this.between({ step, share }),
      ),
    );
    return intervalCurve(worn, (await this.planning()).parts, costs);
  }

  async whatIf(present: SparesSettings, change: Partial<SparesSettings>) {
    return whatIf(await this.drawnFleet(), await this.sparesUnder(present), change);
  }

  async report(settings: PaperSettings) {
    const { asOf } = this.analysis.fleet;
    return reportOf(settings, async (day) => (day === asOf ? this : this.otherDays.of(day)));
  }

  drawnFleet(): Promise<DrawnFleet> {
    return this.once('drawn', async () => drawFleet(await this.planning()));
  }

  private bench(unit: string): Promise<UnitBench | null> {
    return this.once(`bench ${unit}`, async () =>
      unitBench(this.analysis, unit, await this.planning(), await this.repeatability()),
    );
  }

  private sparesUnder(settings: SparesSettings): Promise<Spares> {
    return this.once(`spares ${JSON.stringify(settings)}`, async () =>
      sparesOf(await this.drawnFleet(), settings),
    );
  }

  private chartedFleet(): Promise<ChartedFleet> {
    return this.once('charted', () => chartedSeries(this.analysis, this.between));
  }

  private planning(): Promise<Planning> {
    return this.once('planning', () => planningOf(this.analysis));
  }

  private async grouped(groupBy: GroupBy): Promise<Analysis> {
    if (groupBy === this.analysis.groupBy) return this.analysis;
    return this.once(`grouped by ${groupBy}`, () => regrouped(this.analysis, groupBy, this.between));
  }

  private once<T>(name: string, make: () => Promise<T>): Promise<T> {
    const known = this.made.get(name) as Promise<T> | undefined;
    if (known !== undefined) return known;
    const making = make();
    this.made.set(name, making);
    making.catch(() => this.made.delete(name));
    return making;
  }
}

/** The answer to a question that came over from the page. */
export function answerTo<Name extends FleetQuestion>(
  answers: FleetQuestions,
  question: Name,
  words: QuestionWords<Name>,
): Promise<FleetAnswer<Name>> {
  const answer = answers[question] as (...given: QuestionWords<Name>) => Promise<FleetAnswer<Name>>;
  return answer.apply(answers, words);
}
