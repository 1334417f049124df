import { calibration } from '../../lib/analysis/calibration/calibration';
import { formatCount } from '../../lib/charts/format';
import { MethodsTable } from './MethodsTable';

const percent = (share: number) => `${(100 * share).toFixed(1)}\u00a0%`;

/** What simulations of known truth gave; the numbers are written by a script, not by hand. */
export function CalibrationMethods() {
  const { coverage, falseSignals, detection } = calibration;
  return (
    <>
      <h2 id="calibration">Calibration</h2>
      <p>
        The tables below come from a script (<code>npm run -s calibrate</code>) that makes up fleets with a
        known truth, analyses them with the same code as these pages, and writes what it found.
      </p>
      <MethodsTable
        caption="80 % intervals that held the truth"
        header={['Units in the group', 'Runs looked at', 'Hours to the limit', 'Next reading']}
        rows={coverage.map(({ units, runs, crossing, reading }) => [
          formatCount(units),
          formatCount(runs),
          percent(crossing),
          percent(reading),
        ])}
      />
      <MethodsTable
        caption={`Signals a year where nothing drifts: ${falseSignals.fleets} fleets of ${falseSignals.units} units over ${falseSignals.years} years`}
        header={['Budget a year', 'Found a year', 'Standard error']}
        rows={falseSignals.rows.map(({ budget_per_year, found_per_year, standardError }) => [
          String(budget_per_year),
          found_per_year.toFixed(2),
          standardError.toFixed(2),
        ])}
      />
      <MethodsTable
        caption={`One unit of 20 whose runout drifts: share found, ${detection.fleets} fleets a line; every rule flags ${percent(detection.falseShare.charts)} of undrifting units in their whole history`}
        header={[
          'Drift an overhaul, noise SDs',
          'Within overhauls',
          'Charts of this page',
          'Rule of standard deviations',
          'Regression t test',
        ]}
        rows={detection.rows.map(({ perOverhaul_sd, withinOverhauls, charts, spread, trend }) => [
          String(perOverhaul_sd),
          String(withinOverhauls),
          percent(charts),
          percent(spread),
          percent(trend),
        ])}
      />
      <p>
        The rule of standard deviations flags a reading so many standard deviations above the mean of all
        readings as found; the t test looks at the slope of a unit&rsquo;s own readings as found. Both had
        their thresholds moved until they raised as many false flags as the charts.
      </p>
    </>
  );
}
