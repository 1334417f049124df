import type { UnitOutlook } from '../../lib/analysis/combineChances';
import type { UnitResult } from '../../lib/analysis/types';
import { formatChance, formatDate, formatHours, noValue } from '../../lib/charts/format';
import { Prose } from '../frame/Prose';
import { NoValue } from '../table/NoValue';
import styles from './unit.module.css';

interface Fact {
  readonly term: string;
  readonly text: string | null;
  readonly reason: string;
}

function factsOf({ unit }: UnitResult, outlook: UnitOutlook): readonly Fact[] {
  const notGiven = 'not given in the data';
  const source = unit.hoursSource === 'overhauls' ? " (from the unit's own overhauls)" : '';
  const perYear = unit.hoursPerYear === null ? null : `${formatHours(unit.hoursPerYear)} a year${source}`;
  const position = [unit.site, unit.engine, unit.bank].filter((part) => part !== null).join(' / ');
  return [
    { term: 'Frame', text: unit.frame, reason: notGiven },
    { term: 'Sister group', text: unit.group, reason: notGiven },
    { term: 'Position', text: position, reason: 'not installed, or not on record' },
    { term: 'Hours now', text: formatHours(unit.hoursNow), reason: 'hours cannot be derived' },
    { term: 'Duty', text: perYear, reason: 'no plan and too few overhauls' },
    { term: 'Next overhaul', text: formatDate(unit.nextOverhaulDate), reason: 'no overhaul planned' },
    {
      term: 'Chance of any limit by then',
      text: formatChance(outlook.chanceAtNextOverhaul),
      reason: 'no plan, no limit or no forecast',
    },
    { term: 'Rated life ends', text: formatDate(unit.ratedLifeDate), reason: 'no rated life given' },
    { term: 'Last overhaul', text: formatDate(unit.lastOverhaulDate), reason: 'no overhaul on record' },
  ];
}

/** What is known of the unit besides its readings. */
export function UnitFacts({
  result,
  outlook,
}: {
  readonly result: UnitResult;
  readonly outlook: UnitOutlook;
}) {
  return (
    <dl className={styles.facts}>
      {factsOf(result, outlook).map((fact) => (
        <div key={fact.term}>
          <dt>{fact.term}</dt>
          <dd>
            {fact.text === null || fact.text === noValue || fact.text === '' ? (
              <NoValue reason={fact.reason} />
            ) : (
              <Prose text={fact.text} />
            )}
          </dd>
        </div>
      ))}
    </dl>
  );
}
