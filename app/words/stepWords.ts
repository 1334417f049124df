import type { Decision } from '../../lib/records/decisions/Decision';
import type { Step } from '../../lib/records/decisions/steps';
import { counted } from './counted';

const nouns: Readonly<Record<Decision['kind'], readonly [one: string, many: string]>> = {
  answer: ['answer', 'answers'],
  meaning: ['column meaning', 'column meanings'],
  ruling: ['ruling', 'rulings'],
  acknowledgement: ['acknowledgement', 'acknowledgements'],
  table: ['edited row', 'edited rows'],
};

/** What a step is about, if all of it is about the same: a file, a unit's series or a table. */
function placeOf(decision: Decision): string {
  switch (decision.kind) {
    case 'acknowledgement':
      return `of ${decision.unit}, ${decision.series.replaceAll('_', ' ')}`;
    case 'table':
      return `of ${decision.table}`;
    default:
      return `on ${decision.file}`;
  }
}

/** What was done at once: '3 rulings on sheet.csv', 'taking back of 1 answer on sheet.csv'. */
export function stepWords({ entries }: Step): string {
  const kinds = new Set(entries.map(({ decision }) => decision.kind));
  const [kind, otherKind] = kinds;
  const [one, many] = kind === undefined || otherKind !== undefined ? ['decision', 'decisions'] : nouns[kind];
  const [place, otherPlace] = new Set(entries.map(({ decision }) => placeOf(decision)));
  const what = counted(entries.length, one, many);
  const where = place === undefined || otherPlace !== undefined ? '' : ` ${place}`;
  const isTakenBack = entries.every(({ act }) => act === 'taken back');
  return `${isTakenBack ? 'taking back of ' : ''}${what}${where}`;
}
