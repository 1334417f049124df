import { percentText } from '../../stats/sentenceNumbers';
import { daysBetween, isoDatePlus } from '../isoDate';
import type { PartStock } from '../plan/partStocks';
import { piecesByDraw } from './demandRows';
import { countQuantileOfDraws, meanOfDraws } from './drawnCounts';
import type { DemandEvent } from './simulateFleet';
import { type StockPath, stockPath } from './stockPath';
import type { OrderRow, SparesSettings } from './types';

const daysPerWeek = 7;

/**
 * Last order day and quantity of one part.
 *
 * Short on: the first day on which demand up to then exceeds what is on hand and due with a chance above 1 - service level. Order
 * by: that day less the lead time. Quantity: the fewest pieces with which demand is met at the service level on every day from
 * the order's arrival to the end of lead time plus review period, counted from the order day or from today if that is past. A
 * shortage that deliveries already due make up for before a new order could come in is told in the reason, and the next one counts.
 */
export function orderRow(
  part: PartStock,
  events: readonly DemandEvent[],
  draws: number,
  asOf: string,
  until: string,
  settings: SparesSettings,
): OrderRow {
  const leadTime_weeks = part.leadTime_weeks === null ? null : part.leadTime_weeks * settings.leadTimeFactor;
  const leadDays = Math.ceil((leadTime_weeks ?? 0) * daysPerWeek);
  const stock = stockPath(part, events, draws, asOf);
  const first = stock.firstShort(0, settings.serviceLevel);
  const passing =
    first !== null && first < leadDays && quantityFor(stock, leadDays, leadDays, asOf, until, settings) === 0;
  const short = passing ? stock.firstShort(leadDays, settings.serviceLevel) : first;
  const orderDay = short === null ? null : short - leadDays;
  const arrival = Math.max(0, orderDay ?? 0) + leadDays;
  const quantity = short === null ? 0 : quantityFor(stock, arrival, leadDays, asOf, until, settings);
  const total = piecesByDraw(events, draws);
  const { unitCost, currency, name, onHand, onOrder, due } = part;
  const row = {
    part: part.part,
    name,
    onHand,
    onOrder,
    due,
    leadTime_weeks,
    shortOn: short === null ? null : isoDatePlus(asOf, short),
    orderBy: orderDay === null || leadTime_weeks === null ? null : isoDatePlus(asOf, orderDay),
    late: leadTime_weeks !== null && orderDay !== null && orderDay < 0,
    quantity,
    expectedShortage: meanOfDraws(
      stock.lacking(0, windowEnd(arrival, asOf, until, settings)).map((count) => Math.max(0, count)),
    ),
    demandMean: meanOfDraws(total),
    demandP90: countQuantileOfDraws(total.sort(), 0.9),
    cost: unitCost === null ? null : unitCost * quantity,
    currency,
  };
  const passingDay = passing && first !== null ? isoDatePlus(asOf, first) : null;
  return { ...row, reason: orderReason(row, events.length, until, settings, passingDay) };
}

/** Last day that an order which arrives on a day must last for. */
function windowEnd(
  arrival: number,
  asOf: string,
  until: string,
  { reviewPeriod_weeks }: SparesSettings,
): number {
  return Math.min(daysBetween(asOf, until), arrival + Math.ceil(reviewPeriod_weeks * daysPerWeek));
}

function quantityFor(
  stock: StockPath,
  arrival: number,
  leadDays: number,
  asOf: string,
  until: string,
  settings: SparesSettings,
): number {
  const lacking = stock.lacking(Math.max(arrival, leadDays), windowEnd(arrival, asOf, until, settings));
  return Math.max(0, Math.ceil(countQuantileOfDraws(lacking.sort(), settings.serviceLevel)));
}

function orderReason(
  { shortOn, late, leadTime_weeks, orderBy, due }: Omit<OrderRow, 'reason'>,
  demands: number,
  until: string,
  { serviceLevel }: SparesSettings,
  passingDay: string | null,
): string {
  const level = percentText(serviceLevel);
  if (demands === 0) return `no demand up to ${until}`;
  const passing =
    passingDay === null
      ? ''
      : `short from ${passingDay} until the delivery due on ${due}, before which no new order can come in; `;
  if (shortOn === null)
    return `${passing}stock and deliveries ${passing === '' ? '' : 'then '}meet demand up to ${until} at ${level}`;
  const short = `${passing}stock and deliveries fall short on ${shortOn} at ${level}`;
  if (leadTime_weeks === null) return `${short}; no lead time, so the last order day cannot be told`;
  const lead = `lead time ${Math.round(10 * leadTime_weeks) / 10} weeks`;
  return late ? `${short}; ${lead}: the last order day ${orderBy} is past, order now` : `${short}; ${lead}`;
}
