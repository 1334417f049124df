import type { EditedTable } from '../../records/decisions/editedTables';
import type { TableRow } from '../../records/tables/TableRow';
import type { BenchChecks, BenchEntry, BenchSheet } from '../bench/types';
import type { CalendarRow } from '../calendar/calendarRows';
import type { ClearanceCircles } from '../circle/types';
import type { Decision, DecisionSettings } from '../decisions/types';
import type { IntervalCosts, IntervalPoint } from '../demand/intervalCurve';
import type { Spares, SparesSettings } from '../demand/types';
import type { WhatIf } from '../demand/whatIf';
import type {
  ChartedReading,
  ChartedSeries,
  DriftResult,
  DriftSettings,
  UnitCharts,
  Workshop,
} from '../drift/types';
import type { GroupBy } from '../grouping/sisterGroupOf';
import type { GaugeRepeatability } from '../repeatability/gaugeRepeatability';
import type { PaperSettings, Report } from '../report/types';
import type { FactorDifference, SistersResult } from '../sisters/types';
import type { UnitResult } from '../types';

/** What pages ask about the open fleet; each answer is data only, so that it can leave the worker. */
export interface FleetQuestions {
  /** Everything about one unit, or null if there is no such unit. */
  unit(unit: string): Promise<UnitResult | null>;
  /** What each set of clock readings of a unit says of the whole circle. */
  circles(unit: string, characteristic: string): Promise<ClearanceCircles>;
  /** The sheet of a unit's overhaul at the hours and on the day as typed, else as planned; null if there is no such unit. */
  benchSheet(unit: string, hours: string, date: string): Promise<BenchSheet | null>;
  /** What is to be said of an overhaul as typed so far; null if there is no such unit. */
  benchChecks(entry: BenchEntry): Promise<BenchChecks | null>;
  /** What the readings of a sister group say against the fit of one series, in sentences. */
  fitChecks(group: string, series: string): Promise<readonly string[]>;
  /** How far readings of one state repeat, by series and workshop. */
  repeatability(): Promise<readonly GaugeRepeatability[]>;
  /** Signals within a yearly budget of false ones. */
  drift(settings: DriftSettings): Promise<DriftResult>;
  /** Forecast residuals of every unit in one series. */
  charts(series: string): Promise<readonly ChartedSeries[]>;
  /** The charts of one unit's series; null if there are none. */
  unitCharts(
    unit: string,
    series: string,
    settings: DriftSettings,
    stage: ChartedReading['stage'],
    baseline: number | null,
  ): Promise<UnitCharts | null>;
  /** What each workshop leaves behind in one series. */
  workshops(series: string): Promise<readonly Workshop[]>;
  /** Rows of a table that may be edited, held ones included. */
  tableRows(table: EditedTable): Promise<readonly TableRow[]>;
  /** Every unit against its sisters, for the chosen sister groups. */
  sisters(groupBy: GroupBy): Promise<SistersResult>;
  /** Sites, duties and workshops against each other, for the chosen sister groups. */
  differences(groupBy: GroupBy): Promise<readonly FactorDifference[]>;
  /** What to do at each planned overhaul. */
  decisions(settings: DecisionSettings): Promise<readonly Decision[]>;
  /** Demand and orders under the present plan. */
  spares(settings: SparesSettings): Promise<Spares>;
  /** Overhauls, order days and deliveries of the next 24 months, in order of day. */
  calendar(settings: SparesSettings): Promise<readonly CalendarRow[]>;
  /** Chance of passing a limit in service against the interval, by group. */
  intervalCurve(acceptedRisk: number, costs: IntervalCosts | null): Promise<readonly IntervalPoint[]>;
  /** A changed plan beside the present one. */
  whatIf(present: SparesSettings, change: Partial<SparesSettings>): Promise<WhatIf>;
  /** The planning paper of a scope and day, and what changed since an earlier day. */
  report(settings: PaperSettings): Promise<Report>;
}

export type FleetQuestion = keyof FleetQuestions;
export type QuestionWords<Name extends FleetQuestion> = Parameters<FleetQuestions[Name]>;
export type FleetAnswer<Name extends FleetQuestion> = Awaited<ReturnType<FleetQuestions[Name]>>;
