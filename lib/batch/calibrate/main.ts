import { writeFile } from 'node:fs/promises';
import type { Calibration } from '../../analysis/calibration/calibration';
import { benchSlips } from './benchSlips';
import { coverage } from './coverage';
import { detection } from './detection';
import { falseSignals } from './falseSignals';

/** Fleets of each size for the coverage of intervals: 2,000 current runs a size. */
const sizes = [
  [4, 500],
  [8, 250],
  [20, 100],
] as const;
const watched = { units: 50, years: 12, fleets: 200 } as const;
const budgets_per_year = [0.5, 2, 6] as const;
const driftingFleets = 150;
/** Groups whose next overhauls are typed with slips, and units of each. */
const typed = { fleets: 60, units: 14 } as const;

function said(step: string): void {
  process.stderr.write(`${step}\n`);
}

said('coverage of 80 % intervals');
const covered = sizes.map(([units, fleets]) => {
  const { runs, crossing, reading } = coverage(units, fleets, units);
  return { units, runs, crossing: crossing / runs, reading: reading / runs };
});
said('false signals');
const rows = falseSignals(watched.units, watched.years, watched.fleets, budgets_per_year);
said('slips of typing');
const slips = benchSlips(typed.fleets, typed.units);
said('drift found');
const result: Calibration = {
  coverage: covered,
  falseSignals: { ...watched, rows: [...rows] },
  detection: (({ rows: found, ...rest }) => ({ ...rest, rows: [...found] }))(detection(driftingFleets)),
  benchSlips: { ...slips, rows: [...slips.rows] },
};
await writeFile(
  new URL('../../analysis/calibration/calibration.json', import.meta.url),
  `${JSON.stringify(result, null, 2)}\n`,
);
