// @vitest-environment happy-dom
import { act } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { initialState } from '../../../app/engine/engineState';
import { ExamplePage } from '../../../app/example/ExamplePage';
import Methods from '../../../app/methods/page';
import type { Decision } from '../../../lib/analysis/decisions/types';
import type { Spares } from '../../../lib/analysis/demand/types';
import type { FleetResult, UnitResult } from '../../../lib/analysis/types';
import { accessFaults } from '../accessFaults';
import { fleet, marginWithoutForecast, unit, unitResult, unitSeries } from '../fixture';
import { mounted } from '../mounted';
import { bearing, decision, followed, gasket, spares } from './madeExample';

const engine = vi.hoisted(() => ({ current: {} as unknown }));
vi.mock('../../../app/engine/EngineProvider', () => ({ useEngine: () => engine.current }));
vi.mock('next/navigation', () => ({
  useRouter: () => ({ push: () => {} }),
  useSearchParams: () => new URLSearchParams(),
}));

const now = mounted('main');

interface Answers {
  readonly open?: FleetResult | null;
  readonly unit?: UnitResult | null;
  readonly decisions?: readonly Decision[];
  readonly spares?: Spares;
  readonly fileLine?: (file: string, line: number) => Promise<string | null>;
}

async function show(answers: Answers) {
  const given = {
    unit: followed,
    decisions: [decision('L-1107', [gasket, bearing])],
    spares: spares(),
    ...answers,
  };
  engine.current = {
    state: { ...initialState, work: null, fleet: answers.open === undefined ? fleet() : answers.open },
    request: {
      ask: async (name: 'unit' | 'decisions' | 'spares') => given[name],
      fileLine: answers.fileLine ?? (async () => null),
    },
  };
  await act(async () => now.root.render(<ExamplePage />));
  await act(async () => {});
  expect(now.box.textContent).not.toMatch(/\b(undefined|null|NaN|Infinity|object Object)\b/);
}
const step = (name: string) =>
  now.box
    .querySelector(`section[aria-label="${name}"] > p`)
    ?.textContent?.replaceAll(/[\u00a0\u202f]/g, ' ') ?? '';

describe('the example from file to order', () => {
  test('gives each step its number with unit and uncertainty, as the worker answered', async () => {
    await show({});
    expect(now.box.querySelector('.answer')?.textContent).toContain(
      'L-1107 is followed from its readings to the order of TB-L',
    );
    expect(step('Rows of the files')).toContain(
      '3 readings of thrust play belong to the present run. The latest, of 2021-03-04, is 0.275 mm; one reading carries a noise of 0.010 mm',
    );
    expect(step('The run')).toContain(
      'started on 2019-05-02 at 12 200 h on the unit, by TB-L. The unit stands at 48 210 h now, carried forward by the plan: that makes 36 010 h in the run.',
    );
    expect(step('The fit of the sister group')).toContain(
      'starts at 0.140 mm and wears by 0.070 mm per 10 000 h; from unit to unit the rate differs by 0.010 mm per 10 000 h',
    );
    expect(step('Level and margin today')).toContain('Thrust play of L-1107 is 0.212 ± 0.011 mm now');
    expect(step('Level and margin today')).toContain(
      'limit is 0.300 mm (invented table 1); limit less level, the margin is 0.088 ± 0.011 mm.',
    );
    expect(step('Early, median and late')).toContain(
      'early 2027-11-20 (in 7 000 h), median 2028-07-01 (in 10 900 h), late 2029-06-10 (in 16 400 h)',
    );
    expect(step('The decision')).toContain(
      'At the overhaul planned for 2028-02-01, with an accepted risk of 10 %: fit new part.',
    );
    expect(step('The part')).toContain(
      'The overhaul needs 1 × GS-L (every overhaul), 1 × TB-L (limit). The fleet as a whole needs 3.0 of TB-L (Thrust bearing) up to 2031-11-01',
    );
    expect(step('The order')).toContain('Order 2 of TB-L by 2027-02-19, for 4 400 EUR.');
    expect(await accessFaults(now.box)).toEqual([]);
  });

  test('each step leads to a paragraph of Methods that exists', async () => {
    await show({});
    const methods = document.createElement('div');
    methods.innerHTML = renderToStaticMarkup(<Methods />);
    const links = [...now.box.querySelectorAll('section > p a')].map(
      (link) => link.getAttribute('href') ?? '',
    );
    expect(links).toHaveLength(8);
    for (const link of links)
      expect(methods.querySelector(`[id="${link.split('#')[1]}"]`), link).not.toBeNull();
  });

  test('quotes the lines of the files where they are kept here', async () => {
    await show({
      fileLine: async (file, line) => (file === 'readings.csv' ? `O-1,thrust_play,line ${line}` : null),
    });
    const heads = [...now.box.querySelectorAll('thead th')].map(
      (head) => head.getAttribute('aria-label') ?? head.textContent,
    );
    expect(heads.at(-1)).toBe('The line as it stands');
    expect(now.box.querySelector('tbody tr')?.lastElementChild?.textContent).toBe('O-1,thrust_play,line 17');
    await show({ fileLine: async () => Promise.reject(new Error('gone')) });
    expect(now.box.textContent).not.toContain('The line as it stands');
  });

  test('says at each step what is lacking', async () => {
    await show({
      spares: spares({ orders: [] }),
      decisions: [decision('L-1107', [], { date: null, reason: 'no overhaul is planned' })],
    });
    expect(now.box.querySelector('.answer')?.textContent).toContain(
      'no unit of the open fleet needs a part on account of a limit',
    );
    expect(step('The decision')).toContain('What is lacking: no overhaul is planned.');
    expect(step('The part')).toContain('The overhaul needs no part. What is lacking: a part that a limit');
    expect(step('The order')).toContain('What is lacking: a part to be ordered');
    const none = marginWithoutForecast({ runHours: null });
    await show({
      unit: unitResult({
        unit: unit({ hoursNow: null }),
        series: [unitSeries({ margins: [none], fit: null })],
      }),
      decisions: [],
      spares: spares({ orders: [] }),
    });
    expect(step('Rows of the files')).toContain('What is lacking: the hours of the unit now');
    expect(step('The fit of the sister group')).toContain('What is lacking: readings of the sister group');
    expect(step('Level and margin today')).toContain('What is lacking: a forecast.');
    await show({ unit: unitResult({ series: [] }) });
    expect(now.box.textContent).toContain(
      'What is lacking: a usable reading and a limit of one series of L-1107.',
    );
    await show({ open: fleet({ units: [] }) });
    expect(now.box.textContent).toContain('What is lacking: a unit.');
    await show({ open: null });
    expect(now.box.textContent).toMatch(/^No data are open, .* add your own files on the Records page\.$/);
  });
});
