// @vitest-environment happy-dom
import { act } from 'react';
import { createRoot } from 'react-dom/client';
import { afterEach, describe, expect, test } from 'vitest';
import type { DataColumn } from '../../../app/table/DataColumn';
import { DataTable } from '../../../app/table/DataTable';
import { unitLinkColumn } from '../../../app/table/unitLinkColumn';
import { markRules, markUnit, unitAt } from '../../../app/units/unitMarks';
import { useUnitMarks } from '../../../app/units/useUnitMarks';

const hostile = 'L"]{}</style>\\ 7';

interface Row {
  readonly unit: string;
  readonly series: string;
}
const columns: readonly DataColumn<Row>[] = [unitLinkColumn(({ series }) => series)];
const rows = [
  { unit: 'L-1', series: 'runout' },
  { unit: 'L-2', series: 'runout' },
];
function Page() {
  useUnitMarks();
  return (
    <>
      <button type="button">elsewhere</button>
      <DataTable caption="Units" columns={columns} rows={rows} rowKey={({ unit }) => unit} empty="None." />
    </>
  );
}

/** Style rules that are in force for marks. */
const rules = () => [...document.adoptedStyleSheets].flatMap(({ cssRules }) => [...cssRules]);

afterEach(() => markUnit(null));

describe('a unit is marked wherever it stands', () => {
  test('by one rule, which goes with it', () => {
    markUnit('L-1');
    expect(rules().length).toBe(1);
    expect(rules()[0]?.cssText).toContain('L-1');
    markUnit('L-2');
    expect(rules().length).toBe(1);
    expect(rules()[0]?.cssText).not.toContain('L-1');
    markUnit(null);
    expect(rules()).toEqual([]);
  });

  test('whatever it is called: its name ends no string of the rule, and reads back as it is', () => {
    const written = /\[data-unit="((?:[^"\\]|\\.)*)"\]/s.exec(markRules(hostile))?.[1] ?? '';
    // What CSS makes of an escape: a code in hexadecimal with a space behind it, or the sign itself.
    const read = written.replace(
      /\\(?:([\da-f]{1,6}) ?|(.))/gi,
      (_, code: string | undefined, sign: string) =>
        code === undefined ? sign : String.fromCodePoint(Number.parseInt(code, 16)),
    );
    expect(read).toBe(hostile);
  });

  test('on focus and under the pointer, from a row of a table, in it or out of it', () => {
    Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
    const main = document.createElement('main');
    document.body.append(main);
    const root = createRoot(main);
    act(() => root.render(<Page />));
    const second = main.querySelector<HTMLElement>('[data-unit="L-2"] a');
    expect(unitAt(second)).toBe('L-2');
    expect(unitAt(main)).toBeNull();
    act(() => second?.focus());
    expect(rules()[0]?.cssText).toContain('L-2');
    act(() => main.querySelector('button')?.focus());
    expect(rules()).toEqual([]);
    main.querySelector('[data-unit="L-1"] th')?.dispatchEvent(new Event('pointerover', { bubbles: true }));
    expect(rules()[0]?.cssText).toContain('L-1');
    act(() => root.unmount());
    main.remove();
    expect(rules()).toEqual([]);
  });
});
