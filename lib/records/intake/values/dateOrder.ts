import type { DateOrder } from '../types';
import { allowedOrders, inOrder, type SettledOrder } from './orderedDate';
import { splitDate } from './splitDate';

/** Order of day, month and year of a column and why. */
export interface SettledDateOrder {
  readonly order: DateOrder;
  readonly evidence: string;
}

interface Numeric {
  readonly text: string;
  readonly allowed: readonly SettledOrder[];
  readonly isDotted: boolean;
  /** '05/05/2016': every order that allows it reads the same day. */
  readonly isAlike: boolean;
}

const open = (evidence: string): SettledDateOrder => ({ order: 'open', evidence });

/** Values that are written in numbers with no four-digit year in front, and how many have one. */
function numericDates(texts: Iterable<string>): {
  readonly dates: readonly Numeric[];
  readonly yearFirst: number;
} {
  const dates: Numeric[] = [];
  let yearFirst = 0;
  for (const text of texts) {
    const split = splitDate(text);
    if (split.kind !== 'numeric') continue;
    if (split.parts[0].length === 4) {
      yearFirst += 1;
      continue;
    }
    const allowed = allowedOrders(split.parts, split.separator);
    const readings = new Set(allowed.map((order) => JSON.stringify(inOrder(split.parts, order))));
    const isAlike = allowed.length > 1 && readings.size === 1;
    if (allowed.length > 0)
      dates.push({ text: text.trim(), allowed, isDotted: split.separator === '.', isAlike });
  }
  return { dates, yearFirst };
}

function settledBy(decisive: Numeric, order: SettledOrder, dates: readonly Numeric[]): SettledDateOrder {
  const contrary = dates.find(({ allowed }) => !allowed.includes(order));
  if (contrary !== undefined)
    return open(`'${decisive.text}' can only be ${order}, '${contrary.text}' cannot`);
  const dotted = dates.find(({ isDotted, isAlike }) => isDotted && !isAlike);
  if (order !== 'day first' && dotted !== undefined && !decisive.isDotted)
    return open(
      `'${decisive.text}' can only be ${order}, but dotted dates ('${dotted.text}') are written day first`,
    );
  return { order, evidence: `'${decisive.text}' can only be ${order}, which settles the whole column` };
}

/**
 * Settles the order of day, month and year of a column from all of its distinct texts. A value that only one order
 * allows settles the column ('13/04/2016'); dotted dates count as day first unless a value contradicts; years of four
 * digits in front, month names and serial numbers need no order. Open, to be asked: values that allow several orders,
 * values that contradict each other.
 */
export function dateOrder(texts: Iterable<string>): SettledDateOrder {
  const { dates, yearFirst } = numericDates(texts);
  const [first] = dates;
  if (first === undefined) {
    const evidence =
      yearFirst > 0
        ? 'years of four digits come first'
        : 'no value depends on the order of day, month and year';
    return { order: 'year first', evidence };
  }
  const decisives = dates.filter(({ allowed }) => allowed.length === 1);
  // A dotted witness is looked at first: it also says how the other dotted dates are meant.
  const decisive = decisives.find(({ isDotted }) => isDotted) ?? decisives[0];
  const only = decisive?.allowed[0];
  if (decisive !== undefined && only !== undefined) return settledBy(decisive, only, dates);
  const common = first.allowed.filter((order) => dates.every(({ allowed }) => allowed.includes(order)));
  const [order, second] = common;
  if (order === undefined) return open('no one order of day, month and year allows every value');
  if (second === undefined) return { order, evidence: `${order} is the only order that every value allows` };
  const doubtful = dates.filter(({ isAlike }) => !isAlike);
  if (doubtful.length === 0)
    return { order: 'day first', evidence: 'every value reads alike day first and month first' };
  const undotted = doubtful.find(({ isDotted }) => !isDotted);
  if (undotted !== undefined) return open(`'${undotted.text}' may be ${common.join(' or ')}`);
  return {
    order: 'day first',
    evidence: `dotted dates ('${(doubtful[0] ?? first).text}') are written day first; no value contradicts`,
  };
}
