import { expect, it } from 'vitest';
import { factorDifferences } from '../../../lib/analysis/sisters/factorDifferences';
import type { SisterFunnel, SisterGroup } from '../../../lib/analysis/sisters/types';
import type { UnitNow } from '../../../lib/analysis/unitNow';

/** Twenty units at two sites; those at Skua score 2 standard deviations more. */
const places = Array.from({ length: 20 }, (_, index) => ({
  unit: `U${index}`,
  site: index % 2 === 0 ? 'Skua' : 'Auk',
  score: (index % 5) - 2 + (index % 2 === 0 ? 1 : -1),
}));
const units = new Map(
  places.map(({ unit, site }) => [unit, { row: { site }, hoursPerYear: 5_000 } as unknown as UnitNow]),
);
const funnel = {
  centre: 0,
  limits: [],
  units: places.map(({ unit, score }) => ({ unit, score, reason: null })),
} as unknown as SisterFunnel;
const group = { group: 'Lark', series: 'runout', rates: funnel, starts: null } as SisterGroup;
const of = (groupBy: 'frame' | 'frame+site' | 'frame+duty', factor: string) =>
  factorDifferences(units, [group], [], groupBy).find(
    (one) => one.factor === factor && one.compared === 'wear rate',
  );

it('sites that differ lie outside, one on each side', () => {
  const outside = of('frame', 'site')?.levels.map(({ level, outside: side }) => [level, side]);
  expect(outside).toEqual([
    ['Skua', 'upper'],
    ['Auk', 'lower'],
  ]);
});

it('sites are not compared by units held against sisters of their own site, and it is said why', () => {
  const site = of('frame+site', 'site');
  expect(site?.levels).toEqual([]);
  expect(site?.reason).toContain('sisters of its own site');
  expect(of('frame+duty', 'site')?.levels).toHaveLength(2);
  expect(of('frame+duty', 'duty')?.reason).toContain('sisters of its own duty');
});

it('one level, and a unit without a place, compare nothing and break nothing', () => {
  expect(of('frame', 'duty')?.reason).not.toBeNull();
  const nowhere = factorDifferences(new Map(), [group], []);
  expect(nowhere.every(({ levels, reason }) => levels.length === 0 && reason !== null)).toBe(true);
});
