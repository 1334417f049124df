// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { hintAt, pickedAt, placeSvg } from '../../app/chart/placeSvg';
import { drawSvg } from '../../lib/charts/drawSvg';
import { fleetStrip } from '../../lib/charts/fleetStrip';
import { theme } from '../charts/checkSpec';
import { asOf, chances } from './fixture';

const hostile = '<img src=x onerror=alert(1)> & "7"';

test('a strip says its finding and stands for its unit, whatever the unit is called', async () => {
  const row = {
    unit: hostile,
    chanceByDate: chances(0.1, 0.4, 0.95),
    plannedOverhauls: [],
    ratedLifeDate: null,
    note: '34 %',
    longNote: '34 %  thrust play',
    hint: `${hostile}: thrust play decides`,
  };
  const box = document.createElement('div');
  placeSvg(box, await drawSvg(fleetStrip([row], { from: asOf, to: '2027-05-01' }, theme, false), 700));
  expect(box.querySelector('svg')?.getAttribute('width')).toBe('700');
  expect(box.querySelector('img')).toBeNull();
  expect(box.querySelectorAll('[href]').length).toBe(0);
  const strip = box.querySelector('[data-pick] [aria-label]');
  expect(pickedAt(strip)).toBe(hostile);
  expect(hintAt(strip)).toBe(`${hostile}: thrust play decides`);
  expect(pickedAt(box)).toBeNull();
  expect(hintAt(box)).toBeNull();
});
