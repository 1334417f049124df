import { group } from 'd3-array';
import type { PartInStock } from '../../store/questions';
import type { PlanMessage } from './types';

/** One part with its stock; a part that fits several frames has one stock. */
export interface PartStock {
  readonly part: string;
  readonly name: string | null;
  /** Pieces a unit by frame. */
  readonly perUnit: ReadonlyMap<string, number>;
  /** Series that it renews, by frame; none for a consumable. */
  readonly resets: ReadonlyMap<string, readonly string[]>;
  readonly leadTime_weeks: number | null;
  readonly unitCost: number | null;
  readonly currency: string | null;
  readonly onHand: number;
  readonly onOrder: number;
  /** Day on which what is on order comes in; null: nothing is, or its day is not known and it is not counted. */
  readonly due: string | null;
}

/** Codes parted by semicolons. */
export function codesOf(text: string | null): readonly string[] {
  return (text ?? '')
    .split(';')
    .map((code) => code.trim())
    .filter((code) => code !== '');
}

/**
 * Gathers the rows of parts.csv to one stock a part.
 *
 * Where the rows of a part differ, the cautious one counts: the lower stock, the longer lead time, the later delivery, the higher price.
 *
 * @param frames frames that the fleet has
 */
export function partStocks(
  rows: readonly PartInStock[],
  frames: ReadonlySet<string>,
  asOf: string,
): { readonly parts: readonly PartStock[]; readonly messages: readonly PlanMessage[] } {
  const messages: PlanMessage[] = [];
  const parts = [...group(rows, (row) => row.part)].map(([part, own]) => {
    const say = (text: string) => messages.push({ about: 'part', name: part, text });
    return partStock(part, own, frames, asOf, say);
  });
  return { parts, messages };
}

function partStock(
  part: string,
  rows: readonly PartInStock[],
  frames: ReadonlySet<string>,
  asOf: string,
  say: (text: string) => void,
): PartStock {
  if (!rows.some((row) => frames.has(row.frame)))
    say(`no unit of frame ${rows.map((row) => row.frame).join(', ')}: no demand`);
  const pick = (
    name: string,
    value: (row: PartInStock) => number | null,
    cautious: (...values: number[]) => number,
  ) =>
    agreed(
      name,
      rows.flatMap((row) => value(row) ?? []),
      cautious,
      say,
    );
  const onHand = pick('on_hand', (row) => row.on_hand, Math.min);
  if (onHand === null) say('no stock given: counted as none on hand');
  const currencies = [...new Set(rows.flatMap((row) => row.currency ?? []))];
  if (currencies.length > 1) say(`its rows give several currencies (${currencies.join(', ')}): no cost`);
  const unitCost = pick('unit_cost', (row) => row.unit_cost, Math.max);
  if (unitCost === null) say('no price given: no cost');
  else if (currencies.length === 0) say('no currency given: no cost');
  const leadTime = pick('lead_time_weeks', (row) => row.lead_time_weeks, Math.max);
  if (leadTime === null) say('no lead time given: the last order day cannot be told');
  else if (leadTime < 0) say(`a lead time of ${leadTime} weeks cannot be: the last order day cannot be told`);
  const consumable = rows.every((row) => codesOf(row.resets).length === 0);
  if (consumable && rows.some((row) => row.per_unit === null)) {
    say('renews no series and has no pieces a unit: not counted');
  }
  const costKnown = unitCost !== null && currencies.length === 1;
  return {
    part,
    name: rows.find((row) => row.name !== null)?.name ?? null,
    perUnit: new Map(
      rows.map((row) => [row.frame, row.per_unit ?? (codesOf(row.resets).length > 0 ? 1 : 0)]),
    ),
    resets: new Map(rows.map((row) => [row.frame, codesOf(row.resets)])),
    leadTime_weeks: leadTime !== null && leadTime >= 0 ? leadTime : null,
    unitCost: costKnown ? unitCost : null,
    currency: costKnown ? (currencies[0] ?? null) : null,
    onHand: Math.max(0, onHand ?? 0),
    ...onOrderOf(rows, asOf, pick, say),
  };
}

function onOrderOf(
  rows: readonly PartInStock[],
  asOf: string,
  pick: (
    name: string,
    value: (row: PartInStock) => number | null,
    cautious: (...values: number[]) => number,
  ) => number | null,
  say: (text: string) => void,
): { readonly onOrder: number; readonly due: string | null } {
  const onOrder = pick('on_order', (row) => row.on_order, Math.min) ?? 0;
  if (onOrder <= 0) return { onOrder: 0, due: null };
  const due = rows
    .flatMap((row) => row.due ?? [])
    .sort()
    .at(-1);
  if (due === undefined) {
    say(`${onOrder} on order without a due day: not counted`);
    return { onOrder, due: null };
  }
  if (due >= asOf) return { onOrder, due };
  say(`${onOrder} on order were due on ${due}: counted as coming in on ${asOf}`);
  return { onOrder, due: asOf };
}

function agreed(
  name: string,
  values: readonly number[],
  cautious: (...values: number[]) => number,
  say: (text: string) => void,
): number | null {
  if (values.length === 0) return null;
  const value = cautious(...values);
  const different = [...new Set(values)];
  if (different.length > 1) say(`its rows give ${name} as ${different.join(' and ')}: ${value} is counted`);
  return value;
}
