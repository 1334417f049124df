import { addMonths, formatISO, parseISO } from 'date-fns';
import type { Decision } from '../decisions/types';
import type { Spares } from '../demand/types';

/** One day of the calendar. */
export interface CalendarRow {
  readonly kind: 'overhaul' | 'bring forward' | 'rated life ends' | 'order' | 'delivery';
  readonly date: string;
  /** Unit or part. */
  readonly subject: string;
  readonly summary: string;
  readonly detail: string;
}

/** Months that the calendar looks ahead. */
const monthsAhead = 24;

/**
 * Overhauls with their decisions, days to bring forward to, ends of rated life, last order days and deliveries of the
 * next 24 months, in order of day. A last order day that is past stands on the day asked on.
 */
export function calendarRows(decisions: readonly Decision[], spares: Spares): readonly CalendarRow[] {
  const { asOf } = spares;
  const until = formatISO(addMonths(parseISO(asOf), monthsAhead), { representation: 'date' });
  const rows = [...decisions.flatMap(decisionRows), ...orderRows(spares)];
  return rows
    .filter(({ date }) => date >= asOf && date <= until)
    .sort((a, b) => compare(a.date, b.date) || compare(a.kind, b.kind) || compare(a.subject, b.subject));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function decisionRows(decision: Decision): readonly CalendarRow[] {
  const { unit, engine, bank, date, action, bringForwardTo, ratedLifeEnds, parts, reason } = decision;
  const place = [engine, bank].filter((name) => name !== null).join(' ');
  const where = place === '' ? unit : `${unit} (${place})`;
  const list = parts.map((one) => `${one.pieces} x ${one.part} (${one.because})`).join(', ');
  const detail = [reason, list === '' ? null : `Parts: ${list}`].filter((text) => text !== null).join('. ');
  const rows: CalendarRow[] = [];
  if (date !== null) {
    rows.push({
      kind: 'overhaul',
      date,
      subject: unit,
      summary: `Overhaul ${where}: ${action ?? 'no verdict'}`,
      detail,
    });
  }
  if (bringForwardTo !== null) {
    const summary = `Overhaul ${where} by this day: ${decision.drivenBy?.replaceAll('_', ' ')}`;
    rows.push({
      kind: 'bring forward',
      date: bringForwardTo,
      subject: unit,
      summary,
      detail: `Planned for ${date}`,
    });
  }
  if (ratedLifeEnds !== null) {
    rows.push({
      kind: 'rated life ends',
      date: ratedLifeEnds,
      subject: unit,
      summary: `Rated life of ${where} ends`,
      detail: date === null ? (reason ?? '') : '',
    });
  }
  return rows;
}

function orderRows({ orders, asOf }: Spares): readonly CalendarRow[] {
  return orders.flatMap(({ part, name, quantity, orderBy, late, reason, due, onOrder }) => {
    const title = name === null ? part : `${part} ${name}`;
    const rows: CalendarRow[] = [];
    if (orderBy !== null && quantity > 0) {
      const date = late ? asOf : orderBy;
      rows.push({
        kind: 'order',
        date,
        subject: part,
        summary: `Order ${quantity} x ${title}`,
        detail: reason,
      });
    }
    if (due !== null && onOrder > 0) {
      rows.push({
        kind: 'delivery',
        date: due,
        subject: part,
        summary: `${onOrder} x ${title} due`,
        detail: '',
      });
    }
    return rows;
  });
}
