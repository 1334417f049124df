import { defaultSparesSettings } from '../../lib/analysis/demand/defaultSparesSettings';
import type { IntervalCosts } from '../../lib/analysis/demand/intervalCurve';
import type { SparesSettings } from '../../lib/analysis/demand/types';

/** A number in the address within its range, or the usual one. */
function numberOf(query: URLSearchParams, name: string, usual: number, least: number, most: number): number {
  const text = query.get(name);
  const value = Number(text);
  return text !== null && text !== '' && value >= least && value <= most ? value : usual;
}

/** Settings of the present plan from the address: accepted risk and service level in percent. */
export function sparesSettings(query: URLSearchParams): SparesSettings {
  const { acceptedRisk, serviceLevel, reviewPeriod_weeks } = defaultSparesSettings;
  return {
    ...defaultSparesSettings,
    acceptedRisk: numberOf(query, 'risk', acceptedRisk * 100, 0.1, 99) / 100,
    serviceLevel: numberOf(query, 'service', serviceLevel * 100, 50, 99.9) / 100,
    reviewPeriod_weeks: numberOf(query, 'review', reviewPeriod_weeks, 0, 104),
  };
}

/** Costs from the address, and which of overhaul, limit passed and currency are given; null unless all three are. */
export function intervalCosts(query: URLSearchParams): {
  readonly given: readonly boolean[];
  readonly costs: IntervalCosts | null;
} {
  const texts = ['costo', 'coste', 'currency'].map((name) => (query.get(name) ?? '').trim());
  const [overhaul, exceedance] = texts.map(Number) as [number, number];
  const currency = texts[2] ?? '';
  const isCost = (text: string | undefined, cost: number) => text !== '' && cost >= 0 && cost < 1e12;
  const given = [isCost(texts[0], overhaul), isCost(texts[1], exceedance), currency !== ''];
  return { given, costs: given.every(Boolean) ? { overhaul, exceedance, currency } : null };
}

/** Address of this view with another part shown. */
export function partAddress(query: URLSearchParams, part: string): string {
  const next = new URLSearchParams(query);
  next.set('part', part);
  return `?${next}`;
}

/** A changed plan from the address; null if nothing is changed. */
export function changedPlan(query: URLSearchParams, present: SparesSettings): Partial<SparesSettings> | null {
  const unit = query.get('moved') ?? '';
  const date = query.get('to') ?? '';
  const changed: Partial<SparesSettings> = {
    acceptedRisk: numberOf(query, 'wrisk', present.acceptedRisk * 100, 0.1, 99) / 100,
    serviceLevel: numberOf(query, 'wservice', present.serviceLevel * 100, 50, 99.9) / 100,
    leadTimeFactor: numberOf(query, 'lead', 1, 0, 10),
    changes: {
      hoursPerYearFactor: numberOf(query, 'hours', 100, 10, 300) / 100,
      intervalFactor: numberOf(query, 'interval', 100, 25, 300) / 100,
      moved: unit !== '' && /^\d{4}-\d{2}-\d{2}$/.test(date) ? { unit, date } : null,
    },
  };
  const before = JSON.stringify({ ...present });
  return JSON.stringify({ ...present, ...changed }) === before ? null : changed;
}
