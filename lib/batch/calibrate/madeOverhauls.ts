import { boxName } from '../../analysis/bench/benchEntry';
import { clocksOf } from '../../analysis/bench/boxes';
import type { CheckBasis, LineAt } from '../../analysis/bench/types';
import {
  clockForecast,
  clockNoise,
  type FourClock,
  type KnownSet,
} from '../../stats/benchCheck/clockForecast';
import { repeatability } from '../../stats/repeatability/repeatability';
import { fitWear } from '../../stats/wear/fitWear';
import { integrateWear } from '../../stats/wear/integrateWear';
import { runLevel } from '../../stats/wear/runLevel';
import type { WearReading } from '../../stats/wear/types';
import { wearStatistics } from '../../stats/wear/wearStatistics';
import { type WearTruth, wearTruths } from '../demo/wearTruth';
import { seededDraws } from './seededDraws';

/** One overhaul of one unit: what is known before it, and the right readings in mm by the name of their box. */
export interface MadeOverhaul {
  readonly basis: CheckBasis;
  readonly noise_mm: number;
  readonly decimals: number;
  readonly right: ReadonlyMap<string, number>;
}

const frames = ['Lark', 'Heron', 'Osprey'] as const;
const codes = ['thrust_play', 'runout', 'tip_turbine'] as const;
/** Share of overhauls at which the part is fitted that starts a new run of the thrust play. */
const fittedShare = 0.35;

interface Opening {
  readonly run: string;
  readonly stage: 'found' | 'left';
  readonly x: number;
  readonly readings_mm: readonly number[];
}

/**
 * The next overhaul of every unit of a made-up group, with the truth of the demo fleet's frames: 5 to 8 earlier overhauls 8,000 to
 * 16,000 h apart, read as found and as left. Thrust play runs on until its part is fitted; every assembly starts the others anew.
 */
export function madeOverhauls(seed: number, units: number): readonly MadeOverhaul[] {
  const { uniform, normal } = seededDraws(seed);
  return codes.flatMap((code) => {
    const truth = wearTruths[frames[seed % frames.length] ?? 'Heron'][code];
    if (truth === undefined) throw new Error(`madeOverhauls requires a truth of ${code}`);
    const made = Array.from({ length: units }, (_, unit) => openings(code, truth, unit, uniform, normal));
    return overhauls(code, truth, made);
  });
}

function openings(
  code: (typeof codes)[number],
  truth: WearTruth,
  unit: number,
  uniform: () => number,
  normal: () => number,
) {
  const own = { start: truth.sdStartUnit * normal(), rate: truth.sdRateUnit * normal() };
  const low = truth.vertical === undefined ? null : truth.vertical.mean + truth.vertical.sdUnit * normal();
  const newRun = (number: number) => ({
    name: `U${unit} run ${number}`,
    start: truth.start + own.start + truth.sdStartRun * normal(),
    rate: truth.rate + own.rate + truth.sdRateRun * normal(),
    departures:
      low === null || truth.vertical === undefined
        ? null
        : departures(low + truth.vertical.sdRun * normal(), normal),
  });
  const read = (run: ReturnType<typeof newRun>, x: number) => {
    const level = run.start + run.rate * x;
    return (run.departures ?? [0]).map((departure) => {
      const value = level + departure + truth.sdNoise * normal();
      return Math.max(0, Math.round(value / truth.step) * truth.step);
    });
  };
  let [run, runs, x] = [newRun(0), 1, 0];
  const known: Opening[] = [{ run: run.name, stage: 'left', x, readings_mm: read(run, x) }];
  const count = 5 + Math.floor(4 * uniform());
  for (let overhaul = 0; ; overhaul++) {
    x += 0.8 + 0.8 * uniform();
    const found: Opening = { run: run.name, stage: 'found', x, readings_mm: read(run, x) };
    const renewed = code !== 'thrust_play' || uniform() < fittedShare;
    if (renewed) [run, runs, x] = [newRun(runs), runs + 1, 0];
    const left: Opening = { run: run.name, stage: 'left', x, readings_mm: read(run, x) };
    if (overhaul === count) return { unit: `U${unit}`, known, found, left, renewed };
    known.push(found, left);
  }
}

/** A vertical offset, a small horizontal one and an ovality. */
function departures(vertical: number, normal: () => number): readonly number[] {
  const [across, oval] = [0.15 * vertical * normal(), 0.15 * vertical * normal()];
  return [vertical + oval, across - oval, oval - vertical, -across - oval];
}

function overhauls(
  code: (typeof codes)[number],
  truth: WearTruth,
  made: readonly ReturnType<typeof openings>[],
): readonly MadeOverhaul[] {
  const mean = ({ readings_mm }: Opening) =>
    readings_mm.reduce((sum, one) => sum + one, 0) / readings_mm.length;
  const readings = made.flatMap(({ unit, known }) =>
    known.map((one): WearReading => ({ unit, run: one.run, x: one.x, y: mean(one) })),
  );
  const statistics = wearStatistics(readings);
  const posterior = integrateWear(statistics);
  const isFour = truth.vertical !== undefined;
  const sets = isFour
    ? made.flatMap(({ unit, known }) =>
        known.map(
          ({ run, readings_mm }): KnownSet => ({
            unit,
            run,
            readings_mm: readings_mm as unknown as FourClock,
          }),
        ),
      )
    : [];
  const pairs = made.flatMap(({ known }) =>
    known.flatMap((one, index) => {
      const before = known[index - 1];
      const isPair = one.stage === 'left' && before?.stage === 'found' && before.run === one.run;
      return isPair ? [mean(one) - mean(before)] : [];
    }),
  );
  const paired = pairs.length >= 8 ? (repeatability(pairs)?.sd_mm ?? null) : null;
  const gaugeSd_mm = isFour ? clockNoise(sets) : (paired ?? fitWear(statistics).sdNoise_mm);
  return made.map(({ unit, found, left, renewed }, index) => {
    const line = (run: string | null) =>
      runLevel(posterior, statistics, index, run === null ? null : statistics.runNames.indexOf(run));
    const at = (run: string | null, x: number): LineAt => ({ line: line(run), x });
    const clock = (run: string | null) => (isFour ? clockForecast(sets, unit, run) : null);
    const leftRun = renewed ? null : left.run;
    const basis: CheckBasis = {
      characteristic: code,
      shape: isFour ? 'four_clock' : 'single',
      neverNegative: true,
      forecasts: {
        found: { level: at(found.run, found.x), clock: clock(found.run), reason: null },
        left: { level: at(leftRun, renewed ? 0 : left.x), clock: clock(leftRun), reason: null },
      },
      sameState: !renewed,
      gaugeSd_mm,
      usual_mm: null,
    };
    const clocks = clocksOf(basis);
    const boxes = [found, left].flatMap(({ stage, readings_mm }) =>
      readings_mm.map((value, position) => [boxName(code, stage, clocks[position] ?? null), value] as const),
    );
    const decimals = Math.ceil(-Math.log10(truth.step) - 1e-9);
    return { basis, noise_mm: truth.sdNoise, decimals, right: new Map(boxes) };
  });
}
