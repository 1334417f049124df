import { describe, expect, it } from 'vitest';
import { hoursWithinRisk, seriesStateNow } from '../../../lib/analysis/decisions/seriesState';
import { defaultSparesSettings } from '../../../lib/analysis/demand/defaultSparesSettings';
import { quarterOf } from '../../../lib/analysis/demand/demandRows';
import { drawFleet } from '../../../lib/analysis/demand/drawnFleet';
import { sparesOf } from '../../../lib/analysis/demand/sparesOf';
import type { DemandRow } from '../../../lib/analysis/demand/types';
import { isoDatePlus } from '../../../lib/analysis/isoDate';
import { comingOverhauls, noChanges } from '../../../lib/analysis/plan/comingOverhauls';
import type { Planning } from '../../../lib/analysis/plan/planning';
import { seededDraws } from '../../../lib/batch/calibrate/seededDraws';
import { chancePast } from '../../../lib/stats/wear/forecast';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import type { WearPosterior, WearReading } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { asOf, type MadeUnit, madeFit, madePart, madePlanning } from './madePlanning';

const FLEETS = 300;
const UNITS = 8;
const LIMIT = 0.45;
const RISK = 0.1;
const horizonYears = 3;

interface TrueUnit {
  readonly own: MadeUnit;
  readonly readings: WearReading[];
  readonly noise: number;
  /** Line of the present run, and of each new one in turn. */
  line: { readonly start: number; readonly slope: number };
  readonly nextLine: () => { readonly start: number; readonly slope: number };
}

/** A fleet whose lines are known: start 0.20 mm, 0.08 mm per 10,000 h; 2 or 3 runs a unit, read 1 to 3 times each. */
function trueFleet(seed: number): readonly TrueUnit[] {
  const { uniform, normal } = seededDraws(seed);
  const within = (low: number, high: number) => low + (high - low) * uniform();
  const noise = within(0.008, 0.02);
  const [startRun, slopeRun] = [within(0.005, 0.02), within(0.005, 0.02)];
  const [startUnit, slopeUnit] = uniform() < 0.25 ? [0, 0] : [within(0, 0.02), within(0, 0.025)];
  return Array.from({ length: UNITS }, (_, k) => {
    const unit = `U${k}`;
    const centre = { start: 0.2 + startUnit * normal(), slope: 0.08 + slopeUnit * normal() };
    const nextLine = () => ({
      start: centre.start + startRun * normal(),
      slope: centre.slope + slopeRun * normal(),
    });
    const readings: WearReading[] = [];
    const runs = 2 + Math.floor(2 * uniform());
    let line = nextLine();
    let hours = 0;
    let runStart_h = 0;
    for (let run = 0; run < runs; run++) {
      line = nextLine();
      runStart_h = hours;
      const opened = run === runs - 1 ? Math.floor(3 * uniform()) : 2;
      for (let time = 0; time <= opened; time++) {
        if (time > 0) hours += within(8_000, 14_000);
        const x = (hours - runStart_h) / 10_000;
        readings.push({
          unit,
          run: String(run),
          x,
          y: line.start + line.slope * x + noise * normal(),
        });
      }
    }
    const ahead = within(500, 9_000);
    const own = {
      unit,
      hoursNow: hours + within(100, 3_000),
      nextOverhaulDate: isoDatePlus(asOf, ahead / 24),
      interval_h: 10_000,
      run: runs - 1,
      runStart_h,
    };
    return { own, readings, noise, line, nextLine };
  });
}

function planned(fleet: readonly TrueUnit[]): {
  readonly planning: Planning;
  readonly posterior: WearPosterior;
} {
  const statistics = wearStatistics(fleet.flatMap(({ readings }) => readings));
  const posterior = integrateWear(statistics);
  const series = { fit: madeFit(statistics, posterior), limit_mm: LIMIT, byPart: true, part: 'TB' };
  return {
    posterior,
    planning: madePlanning(
      fleet.map(({ own }) => own),
      [series],
      [madePart('TB')],
    ),
  };
}

/**
 * What really happens to a unit: at every overhaul it is read as found, the model takes the reading in, and the part is fitted if
 * the chance of being past the limit then or by the following overhaul is above the accepted risk; then it is read as left.
 */
function fittedQuarters(
  unit: TrueUnit,
  planning: Planning,
  posterior: WearPosterior,
  normal: () => number,
): readonly string[] {
  const plan = planning.units.find((one) => one.plan.unit.row.unit === unit.own.unit)?.plan;
  if (plan === undefined) throw new Error(`no plan of ${unit.own.unit}`);
  const { overhauls } = comingOverhauls(plan, asOf, isoDatePlus(asOf, horizonYears * 365.25), noChanges);
  const readings = [...unit.readings];
  const fitted: string[] = [];
  let [run, start_h, line] = [unit.own.run, unit.own.runStart_h, unit.line];
  for (const { date, unitHours, followingHours } of overhauls) {
    const read = (hours: number) => {
      const x = (hours - start_h) / 10_000;
      const y = line.start + line.slope * x + unit.noise * normal();
      readings.push({ unit: unit.own.unit, run: String(run), x, y });
    };
    const hours = unitHours as number;
    read(hours);
    const statistics = wearStatistics(readings);
    const place = statistics.runNames.indexOf(String(run));
    const level = runLevel(posterior, statistics, 0, place);
    const chance = (at: number) => chancePast(level, LIMIT, 'upper', (at - start_h) / 10_000);
    if (Math.max(chance(hours), chance(followingHours as number)) > RISK) {
      fitted.push(quarterOf(date));
      run += 1;
      start_h = hours;
      line = unit.nextLine();
    }
    read(hours);
  }
  return fitted;
}

/** Where the true count lies in the forecast: uniform on 0 to 1 if the forecast is right, ties broken at random. */
function place(row: DemandRow, count: number, uniform: number): number {
  const atLeast = (k: number) => row.chanceOfAtLeast[k] ?? 0;
  return 1 - atLeast(count) + uniform * (atLeast(count) - atLeast(count + 1));
}

/** Places of the true demand of every quarter in its forecast, and unit intervals run up to the accepted risk. */
function outcomes() {
  const places: number[] = [];
  const edge = { intervals: 0, passed: 0 };
  for (let fleet = 0; fleet < FLEETS; fleet++) {
    const units = trueFleet(fleet + 1);
    const { planning, posterior } = planned(units);
    const { uniform, normal } = seededDraws(10_000 + fleet);
    const settings = { ...defaultSparesSettings, horizonYears };
    const spares = sparesOf(drawFleet(planning, { seed: fleet, draws: 400 }), settings);
    const fitted = units.flatMap((unit) => fittedQuarters(unit, planning, posterior, normal));
    for (const row of spares.demand) {
      const count = fitted.filter((quarter) => quarter === row.quarter).length;
      // A quarter without forecast or true demand tells nothing.
      if (count > 0 || (row.chanceOfAtLeast[1] ?? 0) > 0) places.push(place(row, count, uniform()));
    }
    units.forEach((unit, k) => {
      const plan = planning.units[k]?.series[0];
      const state = plan === undefined ? undefined : seriesStateNow(plan);
      if (state === undefined || 'reason' in state) throw new Error(`no state of ${unit.own.unit}`);
      const now = unit.own.hoursNow as number;
      const edge_h = hoursWithinRisk(state, RISK, now, now + 60_000);
      if (edge_h <= now || edge_h >= now + 60_000) return;
      edge.intervals += 1;
      const x = (edge_h - unit.own.runStart_h) / 10_000;
      if (unit.line.start + unit.line.slope * x >= LIMIT) edge.passed += 1;
    });
  }
  return { places, edge };
}

describe(`${FLEETS} simulated fleets with known truth`, () => {
  const { places, edge } = outcomes();

  it.each([
    [0.5, 0.45, 0.58],
    [0.9, 0.87, 0.94],
    [0.95, 0.92, 0.98],
  ])('true demand of a quarter lies at or below its %d point as often as it should', (level, least, most) => {
    expect(places.length).toBeGreaterThan(2_000);
    const share = places.filter((one) => one <= level).length / places.length;
    expect(share).toBeGreaterThan(least);
    expect(share).toBeLessThan(most);
  });

  it('running up to an accepted risk of 10 % passes the limit in service in 7 to 13 % of unit intervals', () => {
    expect(edge.intervals).toBeGreaterThan(1_500);
    expect(edge.passed / edge.intervals).toBeGreaterThan(0.07);
    expect(edge.passed / edge.intervals).toBeLessThan(0.13);
  });
});
