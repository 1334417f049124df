import type { Metadata } from 'next';
import Link from 'next/link';
import { Cautions } from '../frame/Cautions';
import { BenchMethods } from './BenchMethods';
import { CalibrationMethods } from './CalibrationMethods';
import { CircleMethods } from './CircleMethods';
import { DriftMethods } from './DriftMethods';
import { FleetMethods } from './FleetMethods';
import { ForecastMethods } from './ForecastMethods';
import { ModelMethods } from './ModelMethods';
import { ReadingMethods } from './ReadingMethods';
import { SisterMethods } from './SisterMethods';
import { SparesMethods } from './SparesMethods';
import { SpeedMethods } from './SpeedMethods';
import { TermMethods } from './TermMethods';
import { TrustMethods } from './TrustMethods';

export const metadata: Metadata = { title: 'Methods' };

const contents = [
  { id: 'words', title: 'Words' },
  { id: 'series', title: 'Series' },
  { id: 'runs', title: 'Runs' },
  { id: 'gauge-noise', title: 'Gauge noise and interval readings' },
  { id: 'clearance-circle', title: 'Clearance circle' },
  { id: 'repeatability', title: 'Gauge repeatability' },
  { id: 'wear-model', title: 'The wear model' },
  { id: 'uncertainty', title: 'How uncertainty is integrated' },
  { id: 'margin', title: 'Margin, early, median and late' },
  { id: 'expected-reading', title: 'Expected reading' },
  { id: 'own-line', title: "The unit's own line" },
  { id: 'chance-of-a-unit', title: 'Chance of a unit' },
  { id: 'sisters', title: 'Unlike its sisters' },
  { id: 'differences', title: 'Sites, duties and workshops' },
  { id: 'forecast-residuals', title: 'Forecast residuals' },
  { id: 'charts', title: 'Charts of drift' },
  { id: 'budget', title: 'Budget of false signals' },
  { id: 'pattern', title: 'Persisting or vanishing' },
  { id: 'as-left', title: 'Workshops as left' },
  { id: 'decisions', title: 'What to do at an overhaul' },
  { id: 'spares', title: 'Demand and orders' },
  { id: 'interval-curve', title: 'Interval curve' },
  { id: 'bench', title: 'Bench sheet and check of typed readings' },
  { id: 'no-forecast', title: 'When there is no forecast' },
  { id: 'capped', title: 'Capped and extrapolated' },
  { id: 'not-covered', title: 'What is not covered' },
  { id: 'calibration', title: 'Calibration' },
  { id: 'speed', title: 'Speed and size' },
];

/** Methods: how is each number made, and how far can it be trusted? */
export default function Page() {
  return (
    <>
      <h1>Methods</h1>
      <p className="answer">
        Every number comes from the readings in the open files, by the steps below. Lengths are in mm, hours
        in h, wear rates in mm per 10&nbsp;000&nbsp;h.
      </p>
      <p className="screenOnly">
        <Link href="/example/">From file to order</Link> follows one unit of the open fleet through all of
        them.
      </p>
      <Cautions />
      <nav aria-label="On this page">
        <ol>
          {contents.map((entry) => (
            <li key={entry.id}>
              <a href={`#${entry.id}`}>{entry.title}</a>
            </li>
          ))}
        </ol>
      </nav>
      <TermMethods />
      <ReadingMethods />
      <CircleMethods />
      <ModelMethods />
      <ForecastMethods />
      <FleetMethods />
      <SisterMethods />
      <DriftMethods />
      <SparesMethods />
      <BenchMethods />
      <TrustMethods />
      <CalibrationMethods />
      <SpeedMethods />
    </>
  );
}
