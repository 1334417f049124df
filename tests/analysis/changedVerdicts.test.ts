import { expect, test } from 'vitest';
import type { Decision } from '../../lib/analysis/decisions/types';
import { changedVerdicts } from '../../lib/analysis/tables/changedVerdicts';
import { margin } from '../app/fixture';

const decision = (action: 'run on' | 'fit new part'): Decision => ({
  unit: 'L-1107',
  group: 'Lark',
  engine: null,
  bank: null,
  overhaul: 1,
  date: '2028-02-01',
  unitHours: null,
  followingDate: null,
  action,
  bringForwardTo: null,
  chanceBefore: null,
  chanceRunningOn: null,
  drivenBy: null,
  parts: [],
  ratedLifeEnds: null,
  reason: null,
  series: [
    {
      series: 'thrust_play',
      limitKind: 'upper',
      limit_mm: 0.3,
      action,
      chanceBefore: null,
      chanceRunningOn: null,
      chanceRenewed: null,
      bringForwardTo: null,
      doubt: null,
      reason: null,
    },
  ],
});
const judged = (
  changes: Parameters<typeof margin>[0] = {},
  action: 'run on' | 'fit new part' = 'run on',
) => ({
  margins: [margin(changes), margin({ series: 'runout', limitKind: null, limit_mm: null })],
  decisions: [decision(action)],
});
const changed = (after: ReturnType<typeof judged>) =>
  changedVerdicts(judged(), after).map(({ series, limitKind, before, after: is }) => [
    series,
    limitKind,
    before?.action,
    is?.action,
  ]);

test('only what is shown counts: a limit or a chance that rounds to the same is no change', () => {
  expect(changed(judged())).toEqual([]);
  expect(changed(judged({ limit_mm: 0.2999, chanceAtNextOverhaul: 0.1801, level_mm: 0.213 }))).toEqual([]);
});

test.each([
  ['chance', { chanceAtNextOverhaul: 0.19 }],
  ['chance now', { chanceNow: 0.95 }],
  ['median date', { dateMedian: '2028-07-02' }],
  ['overhaul', { nextOverhaulDate: null }],
  ['no forecast', { reason: 'no reading' }],
])('another %s is a change', (_, changes) => {
  expect(changed(judged(changes))).toEqual([['thrust_play', 'upper', 'run on', 'run on']]);
});

test('other advice, and a limit that comes or goes', () => {
  expect(changed(judged({}, 'fit new part'))).toEqual([['thrust_play', 'upper', 'run on', 'fit new part']]);
  expect(changed(judged({ limitKind: 'lower' }))).toEqual([
    ['thrust_play', 'lower', undefined, null],
    ['thrust_play', 'upper', 'run on', undefined],
  ]);
});
