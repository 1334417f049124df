import type { UnitOutlook } from '../../lib/analysis/combineChances';
import type { UnitResult } from '../../lib/analysis/types';
import { formatChance, formatDate, formatHours, noValue } from '../../lib/charts/format';
import { MarkedName } from '../frame/MarkedName';
import { Prose } from '../frame/Prose';
import { NoValue } from '../table/NoValue';
import type { TermName } from '../words/terms';
import styles from './unit.module.css';

interface Fact {
  readonly name: string;
  readonly term?: TermName;
  readonly text: string | null;
  readonly reason: string;
}

function factsOf({ unit }: UnitResult, outlook: UnitOutlook): readonly Fact[] {
  const notGiven = 'not given in the data';
  const source = unit.hoursSource === 'overhauls' ? " (from the unit's own overhauls)" : '';
  const perYear = unit.hoursPerYear === null ? null : `${formatHours(unit.hoursPerYear)} a year${source}`;
  const position = [unit.site, unit.engine, unit.bank].filter((part) => part !== null).join(' / ');
  return [
    { name: 'Frame', term: 'frame', text: unit.frame, reason: notGiven },
    { name: 'Sister group', term: 'sisterGroup', text: unit.group, reason: notGiven },
    { name: 'Position', term: 'position', text: position, reason: 'not installed, or not on record' },
    { name: 'Hours now', text: formatHours(unit.hoursNow), reason: 'hours cannot be derived' },
    { name: 'Duty', text: perYear, reason: 'no plan and too few overhauls' },
    {
      name: 'Next overhaul',
      term: 'overhaul',
      text: formatDate(unit.nextOverhaulDate),
      reason: 'no overhaul planned',
    },
    {
      name: 'Chance of any limit by then',
      term: 'chance',
      text: formatChance(outlook.chanceAtNextOverhaul),
      reason: 'no plan, no limit or no forecast',
    },
    { name: 'Rated life ends', text: formatDate(unit.ratedLifeDate), reason: 'no rated life given' },
    { name: 'Last overhaul', text: formatDate(unit.lastOverhaulDate), reason: 'no overhaul on record' },
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
        <div key={fact.name}>
          <dt>
            <MarkedName name={fact.name} term={fact.term} />
          </dt>
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
