import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export const stages = ['found', 'left'] as const;
export const clocks = ['12', '3', '6', '9'] as const;
/** Place of a reading: characteristic, stage and clock position or nothing. */
export type Place = `${'thrust play' | 'runout' | 'turbine tip clearance'} ${'found' | 'left'}${string}`;

/** One overhaul of a unit, with its readings in mm by place. */
export interface Job {
  readonly unit: string;
  readonly date: string;
  readonly hours: number;
  readonly readings: Readonly<Record<string, number>>;
}

const places: readonly string[] = [
  ...stages.flatMap((stage) => [`thrust play ${stage}`, `runout ${stage}`]),
  ...stages.flatMap((stage) => clocks.map((clock) => `turbine tip clearance ${stage} ${clock} o'clock`)),
];
/** Steps in which the readings are written, mm. */
const step = (place: string) => (place.startsWith('runout') ? 0.001 : 0.01);

/**
 * Overhauls of sister units that wear as turbochargers do, readings rounded to the gauge's step: the clearances open with the
 * hours, reassembly brings them back, and each casing is out of line upwards and to the right by an amount of its own.
 */
export function sisterFleet(seed: number, units = 6, overhauls = 4): readonly Job[] {
  const generator = xoroshiro128plus(seed);
  const uniform = () => uniformFloat64(generator);
  const normal = (sd: number) =>
    sd * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return Array.from({ length: units }, (_, at) => {
    const own = { tip: normal(0.03), up: 0.1 + normal(0.006), right: 0.11 + normal(0.006) };
    const start = { thrust: 0.16, runout: 0.02, tip: 0.65 + own.tip };
    let hours = 0;
    return Array.from({ length: overhauls }, (__, job): Job => {
      const run = 9_000 + Math.round(uniform() * 5_000);
      hours += run;
      const worn = (before: number, rate: number) => before + (rate * run) / 10_000;
      const found = {
        thrust: worn(start.thrust, 0.07),
        runout: worn(start.runout, 0.003),
        tip: worn(start.tip, 0.08),
      };
      start.thrust = 0.16 + normal(0.01);
      start.runout = 0.02 + normal(0.003);
      start.tip = 0.65 + own.tip + normal(0.012);
      const level = { found, left: { ...start } };
      const readings = places.map((place) => {
        const stage = place.includes('found') ? 'found' : 'left';
        const clock = / (\d+) o'clock/.exec(place)?.[1];
        const side = { 12: own.up, 6: -own.up, 3: own.right, 9: -own.right }[Number(clock)] ?? 0;
        const true_mm = place.startsWith('thrust')
          ? level[stage].thrust + normal(0.008)
          : place.startsWith('runout')
            ? level[stage].runout + normal(0.002)
            : level[stage].tip + side / 2 + normal(0.01);
        return [place, Number((Math.round(true_mm / step(place)) * step(place)).toFixed(3))] as const;
      });
      return {
        unit: `T-${at + 1}`,
        date: `${2012 + 2 * job}-0${1 + (at % 9)}-17`,
        hours,
        readings: Object.fromEntries(readings),
      };
    });
  }).flat();
}

/** The jobs as a workshop's sheet, one line each, the first in line 2. */
export function writtenJobs(jobs: readonly Job[]): string {
  const header = ['serial', 'date', 'unit hours', ...places.map((place) => `${place} (mm)`)];
  const lines = jobs.map(({ unit, date, hours, readings }) =>
    [unit, date, hours, ...places.map((place) => readings[place] ?? '')].join(','),
  );
  return [header.join(','), ...lines].join('\n');
}

/** A copy of a job with other readings: each place takes the reading of the place that is named for it, of the given job. */
export function withReadings(job: Job, placeOf: (place: string) => string, from: Job = job): Job {
  return {
    ...job,
    readings: Object.fromEntries(
      Object.entries(job.readings).map(([place, value]) => [place, from.readings[placeOf(place)] ?? value]),
    ),
  };
}

/** The place in the other stage. */
export const otherStage = (place: string) =>
  place.includes('found') ? place.replace('found', 'left') : place.replace('left', 'found');

/** The place across the shaft, for the positions of one axis. */
export function across(one: '12' | '3', other: '6' | '9'): (place: string) => string {
  return (place) =>
    place
      .replace(` ${one} o'clock`, ' ? ')
      .replace(` ${other} o'clock`, ` ${one} o'clock`)
      .replace(' ? ', ` ${other} o'clock`);
}
