import type { Metadata } from 'next';
import { Cautions } from '../frame/Cautions';
import { FleetMethods } from './FleetMethods';
import { ForecastMethods } from './ForecastMethods';
import { ModelMethods } from './ModelMethods';
import { ReadingMethods } from './ReadingMethods';
import { TrustMethods } from './TrustMethods';

export const metadata: Metadata = { title: 'Methods' };

const contents = [
  { id: 'series', title: 'Series' },
  { id: 'runs', title: 'Runs' },
  { id: 'gauge-noise', title: 'Gauge noise and interval readings' },
  { id: 'wear-model', title: 'The wear model' },
  { id: 'uncertainty', title: 'How uncertainty is integrated' },
  { id: 'margin', title: 'Margin, early, median and late' },
  { id: 'expected-reading', title: 'Expected reading' },
  { id: 'own-line', title: "The unit's own line" },
  { id: 'chance-of-a-unit', title: 'Chance of a unit' },
  { id: 'no-forecast', title: 'When there is no forecast' },
  { id: 'capped', title: 'Capped and extrapolated' },
  { id: 'not-covered', title: 'What is not covered' },
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
      <ReadingMethods />
      <ModelMethods />
      <ForecastMethods />
      <FleetMethods />
      <TrustMethods />
    </>
  );
}
