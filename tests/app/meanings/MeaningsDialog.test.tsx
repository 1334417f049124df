// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { UnderstoodSheets } from '../../../app/records/UnderstoodSheets';
import type { SheetPreview } from '../../../lib/analysis/engine/EngineApi';
import type { ColumnMeaning, UnderstoodSheet } from '../../../lib/analysis/types';
import { builtInCharacteristics } from '../../../lib/records/characteristics';
import type { MeaningDecision } from '../../../lib/records/decisions/Decision';

const engine = vi.hoisted(() => ({ request: { preview: {} as unknown } }));
vi.mock('../../../app/engine/EngineProvider', () => ({ useEngine: () => engine }));

const column = (index: number, name: string, changes: Partial<ColumnMeaning> = {}): ColumnMeaning => ({
  index,
  name,
  role: 'unused',
  characteristic: null,
  stage: null,
  clock: null,
  viewingEndOpen: false,
  uom: null,
  uomUnknown: false,
  evidence: '',
  sureness: 0,
  ...changes,
});
const sheet: UnderstoodSheet = {
  file: 'mute.csv',
  shape: '3 columns, 0f',
  names: ['Kennung', 'M1', ''],
  columns: [column(0, 'Kennung'), column(1, 'M1'), column(2, '')],
  samples: [['R-1', 'R-2'], ['0,31'], []],
  characteristics: builtInCharacteristics,
  faults: [],
  reason: 'Not an overhaul sheet: no column for readings was found.',
};
/** Once something is measured the unit is told, too. */
const withUnit = [
  column(0, 'Kennung', { role: 'unit', evidence: 'serials', sureness: 0.4 }),
  ...sheet.columns.slice(1),
];
const previewOf = (changes: Partial<SheetPreview['sheet']>): SheetPreview => ({
  sheet: { ...sheet, reason: null, ...changes },
  lines: [
    {
      line: 2,
      cells: ['R-1', '0,31', ''],
      unit: 'R-1',
      date: '2016-02-03',
      unitHours: 8120,
      readings: [
        {
          column: 'M1',
          characteristic: 'thrust_play',
          stage: 'found',
          clock: null,
          value_mm: 0.31,
          lower_mm: null,
          upper_mm: null,
        },
        {
          column: 'M1',
          characteristic: 'tip_turbine',
          stage: 'left',
          clock: '9',
          value_mm: 0.41,
          lower_mm: 0.4,
          upper_mm: 0.42,
        },
        {
          column: 'M2',
          characteristic: 'tip_turbine',
          stage: 'left',
          clock: '3',
          value_mm: 0.39,
          lower_mm: null,
          upper_mm: null,
        },
      ],
      problems: [
        { file: 'mute.csv', row: 2, column: 'M1', raw: '0,31', reason: 'rounded', action: 'interpreted' },
      ],
    },
    {
      line: 3,
      cells: ['R-2', '<b>', ''],
      unit: null,
      date: null,
      unitHours: null,
      readings: [],
      problems: [
        { file: 'mute.csv', row: 3, column: 'M1', raw: '<b>', reason: 'not a number', action: 'held' },
      ],
    },
    { line: 4, cells: ['', '', ''], unit: null, date: null, unitHours: null, readings: [], problems: [] },
  ],
  isPart: true,
  readingsIn: 2,
  readingsUsed: 1,
  readingsHeld: 1,
  questions: 0,
});

let root: Root;
let box: HTMLElement;
let asked: (readonly MeaningDecision[])[];
let answer: (meanings: readonly MeaningDecision[]) => Promise<SheetPreview>;
let applied: (readonly MeaningDecision[])[];

beforeEach(() => {
  vi.useFakeTimers();
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  box = document.createElement('div');
  document.body.append(box);
  root = createRoot(box);
  asked = [];
  applied = [];
  answer = async () => previewOf({ columns: withUnit });
  engine.request.preview = (_: string, meanings: readonly MeaningDecision[]) => {
    asked.push(meanings);
    return answer(meanings);
  };
  act(() =>
    root.render(
      <UnderstoodSheets
        sheets={[
          sheet,
          { ...sheet, file: 'sister.csv', reason: null },
          { ...sheet, file: 'x.csv', shape: 'other' },
        ]}
        busy={false}
        onApply={(decisions) => void applied.push(decisions)}
      />,
    ),
  );
});

afterEach(() => {
  act(() => root.unmount());
  box.remove();
  vi.useRealTimers();
});

const button = (start: string) => {
  const found = [...box.querySelectorAll('button')].find((one) => one.textContent?.startsWith(start));
  if (found === undefined) throw new Error(`no button '${start}'`);
  return found;
};
const press = (start: string) => act(() => button(start).click());
const select = (label: string) => {
  const found = box.querySelector<HTMLSelectElement>(`select[aria-label="${label}"]`);
  if (found === null) throw new Error(`no select '${label}'`);
  return found;
};
function choose(label: string, value: string): void {
  act(() => {
    const found = select(label);
    found.value = value;
    found.dispatchEvent(new Event('change', { bubbles: true }));
  });
}
const wait = () => act(() => vi.advanceTimersByTimeAsync(400));
const status = () => box.querySelector('dialog [role=status]')?.textContent;

describe('correcting the columns of a sheet', () => {
  test('a sheet that is not understood stands open with its reason, columns and first values', () => {
    const details = box.querySelector('details');
    expect(details?.open).toBe(true);
    expect(details?.querySelector('summary')?.textContent).toBe('mute.csv: not understood, 3 columns');
    expect(details?.textContent).toContain('Not an overhaul sheet');
    expect([...(details?.querySelectorAll('tbody tr') ?? [])].map((row) => row.textContent)).toEqual([
      'KennungR-1 · R-2not useda guess–none: nothing speaks for a use',
      'M10,31not useda guess–none: nothing speaks for a use',
      '–none: the column has no name–none: the column is emptynot useda guess–none: nothing speaks for a use',
    ]);
  });

  test('nothing is applied before the preview of exactly these meanings is there', async () => {
    press('Correct the columns');
    expect(box.querySelector('dialog')?.open).toBe(true);
    await wait();
    expect(asked).toEqual([[]]);
    const apply = button('Apply to this and 1 other file of the same shape');
    expect(apply.disabled).toBe(true);
    choose('M1: read as', 'reading');
    expect(apply.disabled).toBe(true);
    expect(status()).toBe('The preview is being read.');
    choose('M1: characteristic', 'thrust_play');
    choose('M1: as found or as left', 'found');
    choose('M1: unit of measure', 'um');
    await wait();
    // Changes in quick succession are read once.
    expect(asked).toHaveLength(2);
    expect(status()).toBe(
      'In the first 200 lines of the file: 2 cells for readings, 1 reading used, 1 held.',
    );
    expect(select('Kennung: read as').value).toBe('unit');
    press('Apply');
    // The unit was told by the values of this file; applied, it holds for its sisters.
    expect(applied).toEqual([
      [
        expect.objectContaining({ index: 0, role: 'unit', shape: sheet.shape, file: 'mute.csv' }),
        {
          kind: 'meaning',
          id: `meaning | ${sheet.shape} | 1`,
          shape: sheet.shape,
          file: 'mute.csv',
          column: 'M1',
          index: 1,
          role: 'reading',
          characteristic: 'thrust_play',
          stage: 'found',
          clock: null,
          uom: 'um',
        },
      ],
    ]);
    expect(box.querySelector('dialog')).toBeNull();
  });

  test('the preview shows cells, readings and reasons as text', async () => {
    press('Correct the columns');
    await wait();
    const rows = [...box.querySelectorAll('dialog table')].at(-1)?.querySelectorAll('tbody tr') ?? [];
    expect([...rows].map((row) => row.textContent?.replaceAll(/[\u00a0\u202f]/g, ' '))).toEqual([
      'Line 2R-10,31R-1, 2016-02-03, 8 120 hthrust play, as found: 0.310 mmtip clearance, turbine, as left: 0.400 to 0.420 (9), 0.390 (3) mm1 note on how it was read‘0,31’ in ‘M1’: interpreted, rounded',
      'Line 3R-2<b>‘<b>’ in ‘M1’: held, not a number',
      'Line 4nothing comes of it',
    ]);
    expect(box.querySelector('dialog b')).toBeNull();
    expect(box.textContent).not.toMatch(/\b(undefined|null|NaN|Infinity|object Object)\b/);
  });

  test('meanings that cannot hold together are said and cannot be applied', async () => {
    answer = async () => previewOf({ faults: ['Two days.'], reason: 'It cannot hold. Two days.' });
    press('Correct the columns');
    choose('M1: read as', 'date');
    await wait();
    expect(status()).toBe('Two days.');
    expect(button('Apply').disabled).toBe(true);
    press('Apply');
    expect(applied).toEqual([]);
  });

  test('what a role cannot say is neither offered nor kept', async () => {
    press('Correct the columns');
    choose('M1: read as', 'reading');
    choose('M1: characteristic', 'tip_turbine');
    choose('M1: clock position', '9');
    choose('M1: characteristic', 'runout');
    expect(box.querySelector('select[aria-label="M1: clock position"]')).toBeNull();
    await wait();
    expect(asked.at(-1)).toEqual([expect.objectContaining({ characteristic: 'runout', clock: null })]);
    choose('M1: read as', 'remarks');
    await wait();
    expect(asked.at(-1)).toEqual([
      expect.objectContaining({ role: 'remarks', characteristic: null, uom: null }),
    ]);
    expect(box.querySelectorAll('dialog select')).toHaveLength(3);
  });

  test('cancelling applies nothing and forgets what was chosen', async () => {
    press('Correct the columns');
    choose('M1: read as', 'date');
    await wait();
    press('Cancel');
    expect(applied).toEqual([]);
    expect(box.querySelector('dialog')).toBeNull();
    press('Correct the columns');
    expect(select('M1: read as').value).toBe('unused');
  });

  test('a preview that fails says why', async () => {
    answer = () => Promise.reject(new Error('The file is gone.'));
    press('Correct the columns');
    choose('M1: read as', 'date');
    await wait();
    expect(status()).toBe('The file is gone.');
    expect(button('Apply').disabled).toBe(true);
  });
});
