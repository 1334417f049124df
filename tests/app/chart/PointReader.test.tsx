// @vitest-environment happy-dom
import { act, createRef } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PointReader } from '../../../app/chart/PointReader';
import { countPoints, placeByKey, pointsOf } from '../../../app/chart/picturePoints';
import { placeSvg } from '../../../app/chart/placeSvg';
import { drawSvg } from '../../../lib/charts/drawSvg';
import { fleetStrip } from '../../../lib/charts/fleetStrip';
import { seriesPicture } from '../../../lib/charts/seriesPicture';
import { theme } from '../../charts/checkSpec';
import { accessFaults } from '../accessFaults';
import { asOf, chances, unitSeries } from '../fixture';

const units = ['L-1', 'L-2', 'L-3'];

function strips(): Promise<string> {
  const rows = units.map((unit) => ({
    unit,
    chanceByDate: chances(0.1, 0.4, 0.95),
    plannedOverhauls: [],
    ratedLifeDate: null,
    note: '34 %',
    longNote: '34 %  thrust play',
    hint: `${unit}: thrust play decides`,
  }));
  return drawSvg(fleetStrip(rows, { from: asOf, to: '2027-05-01' }, theme, false), 700);
}

let root: Root;
let main: HTMLElement;
const picture = createRef<HTMLDivElement>();
const onPick = vi.fn<(picked: string) => void>();
beforeEach(async () => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  onPick.mockClear();
  main = document.createElement('main');
  document.body.append(main);
  root = createRoot(main);
  const svg = await strips();
  const show = (count: number) =>
    act(() =>
      root.render(
        <>
          <div ref={picture} role="img" aria-label="Strips" />
          {count > 0 && (
            <PointReader box={picture} label="Strips" count={count} drawing={1} onPick={onPick} />
          )}
        </>,
      ),
    );
  show(0);
  if (picture.current !== null) placeSvg(picture.current, svg);
  show(countPoints(main));
});
afterEach(() => {
  act(() => root.unmount());
  main.remove();
});

const slider = () => main.querySelector<HTMLElement>('[role=slider]');
const press = (key: string) =>
  act(() => slider()?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true })));
const says = () => slider()?.getAttribute('aria-valuetext');

describe('the points of a picture by keyboard', () => {
  test('are one stop of the Tab key, and every point is reached and says its own finding', async () => {
    expect(main.querySelectorAll('[tabindex="0"]').length).toBe(1);
    expect(says()).toBe('3 points, arrow keys move');
    act(() => slider()?.focus());
    const heard = [says()];
    for (let time = 0; time < 2; time++) {
      press('ArrowRight');
      heard.push(says());
    }
    expect(heard).toEqual(units.map((unit) => `${unit}: thrust play decides`));
    expect(slider()?.getAttribute('aria-valuenow')).toBe('3');
    expect(slider()?.getAttribute('aria-valuemax')).toBe('3');
    press('Home');
    expect(says()).toBe('L-1: thrust play decides');
    expect(await accessFaults(main)).toEqual([]);
  });

  test('Enter opens what the point stands for; Escape puts its words away and the next key brings them back', () => {
    act(() => slider()?.focus());
    press('End');
    press('Enter');
    expect(onPick.mock.calls).toEqual([['L-3']]);
    const words = () => main.querySelector('p')?.textContent ?? null;
    expect(words()).toBe('L-3: thrust play decides');
    press('Escape');
    expect(words()).toBeNull();
    press('ArrowUp');
    expect(words()).toBe('L-2: thrust play decides');
    act(() => slider()?.blur());
    expect(words()).toBeNull();
  });

  test('a key leads no further than the ends, and other keys nowhere', () => {
    expect(placeByKey('ArrowLeft', 0, 3)).toBe(0);
    expect(placeByKey('ArrowDown', 2, 3)).toBe(2);
    expect(placeByKey('PageDown', 5, 100)).toBe(15);
    expect(placeByKey('PageUp', 5, 100)).toBe(0);
    expect(placeByKey('End', 5, 100)).toBe(99);
    expect(placeByKey('a', 5, 100)).toBeNull();
  });

  test('of a series are its readings, resets and the expected reading, and not its axes', async () => {
    const given = { series: unitSeries(), hoursNow: 48_210, asOf, nextOverhaulDate: '2028-02-01' };
    const box = document.createElement('div');
    placeSvg(box, await drawSvg(seriesPicture(given, theme, false), 700));
    const heard = pointsOf(box).map((point) => point.getAttribute('aria-label') ?? '');
    expect(countPoints(box)).toBe(heard.length);
    for (const { date } of given.series.readings)
      expect(heard.filter((text) => text.includes(date)).length).toBeGreaterThan(0);
    expect(heard.some((text) => text.startsWith('next overhaul 2028-02-01: expected as found'))).toBe(true);
    expect(heard.filter((text) => /axis/i.test(text))).toEqual([]);
  });
});
