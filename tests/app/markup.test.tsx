// @vitest-environment happy-dom
import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { FleetPicture } from '../../app/fleet/FleetPicture';
import { FleetTable } from '../../app/fleet/FleetTable';
import { everything, fleetRows } from '../../app/fleet/fleetRows';
import Methods from '../../app/methods/page';
import { ExpectedTables } from '../../app/records/ExpectedTables';
import { FilesTable } from '../../app/records/FilesTable';
import { ProblemsTable } from '../../app/records/ProblemsTable';
import { UnitView } from '../../app/unit/UnitView';
import { fleetSentence } from '../../app/words/fleetSentence';
import { canonicalTables } from '../../lib/records/canonicalTables';
import { fleet, margin, marginWithoutForecast, reading, unit, unitResult, unitSeries } from './fixture';

vi.mock('next/navigation', () => ({
  useRouter: () => ({ push: () => {} }),
  useSearchParams: () => new URLSearchParams(),
}));
vi.mock('../../app/engine/EngineProvider', () => ({
  useEngine: () => ({ state: { work: null }, request: { ask: async () => undefined } }),
}));

const nothing = {
  site: null,
  engine: null,
  bank: null,
  hoursNow: null,
  hoursPerYear: null,
  hoursSource: null,
  nextOverhaulDate: null,
  plannedOverhauls: [],
  ratedLifeDate: null,
  lastOverhaulDate: null,
  lastWorkshop: null,
} as const;

/** The page as a reader sees it: an element holding the markup. */
function page(content: ReactNode): HTMLElement {
  const element = document.createElement('div');
  element.innerHTML = renderToStaticMarkup(content);
  return element;
}

/** No word of a programming language may reach a screen. */
function expectPlain(element: HTMLElement): void {
  expect(element.textContent).not.toMatch(/\b(undefined|null|NaN|Infinity|object Object)\b/);
  expect(element.textContent?.length).toBeGreaterThan(20);
}

describe('Fleet', () => {
  const bare = fleet({
    units: [unit(nothing)],
    margins: [marginWithoutForecast({ limitKind: null, reason: null })],
  });

  test.each([
    ['typical', fleet()],
    ['bare', bare],
  ])('table and picture of a %s fleet are plain words', (_, open) => {
    const rows = fleetRows(open, everything);
    expectPlain(page(<FleetTable rows={rows} filter={everything} sort="" onSort={() => {}} />));
    expectPlain(
      page(
        <FleetPicture
          fleet={open}
          rows={rows}
          filter={everything}
          description="One."
          page={1}
          onPage={() => {}}
        />,
      ),
    );
  });

  test('each unit links to its page on the series that decides', () => {
    const rows = fleetRows(fleet(), everything);
    const links = [
      ...page(<FleetTable rows={rows} filter={everything} sort="" onSort={() => {}} />).querySelectorAll('a'),
    ];
    // Outside the site's build the link component drops the closing slash of a path.
    expect(links.map((link) => link.getAttribute('href')?.replace('/unit?', '/unit/?'))).toContain(
      '/unit/?id=L-1107&series=thrust_play',
    );
  });

  test('the picture says in words what it shows, and pages over 60 rows', () => {
    const units = Array.from({ length: 130 }, (_, index) => unit({ unit: `L-${index}` }));
    const open = fleet({ units, margins: units.map((one) => margin({ unit: one.unit })) });
    const rows = fleetRows(open, everything);
    const shown = page(
      <FleetPicture
        fleet={open}
        rows={rows}
        filter={everything}
        description={fleetSentence(rows, false)}
        page={3}
        onPage={() => {}}
      />,
    );
    const image = shown.querySelector('[role=img]');
    expect(image?.getAttribute('aria-label')).toMatch(
      /^Chance that the first limit is met, by date\. 130 of 130 units reach a limit/,
    );
    expect(shown.textContent).not.toContain('130 of 130 units reach a limit');
    expect(shown.textContent).toContain('Rows 121 to 130 of 130 units');
    expect(
      [...shown.querySelectorAll<HTMLButtonElement>('.buttons button')].map((button) => button.disabled),
    ).toEqual([false, true]);
  });
});

describe('Unit', () => {
  const view = (result: ReturnType<typeof unitResult>, series = '') =>
    page(<UnitView result={result} fleet={fleet()} series={series} onSeries={() => {}} />);

  test('a typical unit is plain words, with the key of its picture', () => {
    const shown = view(unitResult());
    expectPlain(shown);
    expect(shown.querySelector('.answer')?.textContent).toContain('Thrust play of L-1107');
    expect(shown.textContent).toContain('as foundas leftinterval reading');
  });

  test('a bare unit is plain words too', () => {
    const series = unitSeries({
      readings: [reading({ workshop: null })],
      sisterBand: [],
      ownLine: [],
      ownSlope_mm_per_10kh: null,
      theilSenSlope_mm_per_10kh: null,
      resets: [],
      margins: [marginWithoutForecast({ limitSource: null, nextOverhaulDate: null })],
      fit: null,
      nextOverhaulUnitHours: null,
    });
    const history = [
      {
        ...unitResult().history[0],
        unitHours: null,
        engine: null,
        bank: null,
        site: null,
        workshop: null,
        kind: null,
      },
    ];
    expectPlain(
      view({ ...unitResult({ unit: unit(nothing), series: [series] }), history: history as never }),
    );
    expectPlain(view(unitResult({ unit: unit(nothing), series: [], history: [] })));
  });

  test('a series without a limit says that there is no verdict', () => {
    const open = margin({ series: 'runout', limit_mm: null, limitKind: null, chanceNow: null });
    const runout = unitSeries({ series: 'runout', margins: [open] });
    const shown = view(unitResult({ series: [unitSeries(), runout] }), 'runout');
    expect(shown.querySelector('h3')?.textContent).toBe('Runout');
    expect(shown.textContent).toContain('No limit is known for it, so there is no verdict.');
    expect([...shown.querySelectorAll('fieldset button')].map((button) => button.textContent)).toEqual([
      'Thrust play',
      'Runout no limit',
    ]);
  });
});

describe('Records', () => {
  const problemsView = {
    filter: { file: '', action: '', column: '', reason: '' },
    onChange: () => {},
    mayRule: false,
    busy: false,
    onApply: () => {},
  };
  test('raw text is shown as text, never as markup', () => {
    const problem = {
      file: 'a.csv',
      row: 3,
      column: 'value',
      raw: '<img src=x onerror=1>',
      reason: 'no number',
      action: 'held',
    } as const;
    const shown = page(<ProblemsTable problems={[problem]} found={1} {...problemsView} />);
    expect(shown.querySelector('img')).toBeNull();
    expect(shown.textContent).toContain('<img src=x onerror=1>');
  });

  test('a list that stops short says so', () => {
    const problem = {
      file: 'a.csv',
      row: 3,
      column: '',
      raw: '',
      reason: 'no number',
      action: 'held',
    } as const;
    const shown = page(<ProblemsTable problems={[problem]} found={20_000} {...problemsView} />);
    expect(shown.textContent).toContain(
      '20\u202f000 rows or cells were held or interpreted; the first 1 are listed.',
    );
  });

  test('a file that is not recognised is plain words', () => {
    const file = {
      file: 'x.txt',
      table: null,
      rowsIn: 0,
      rowsUsed: 0,
      rowsHeld: 0,
      readingsIn: 0,
      readingsUsed: 0,
      readingsHeld: 0,
      readingsNone: 0,
      message: null,
    };
    expectPlain(page(<FilesTable files={[file]} />));
  });

  test('every canonical table and column is explained', () => {
    const shown = page(<ExpectedTables />);
    expectPlain(shown);
    for (const table of canonicalTables) {
      expect(shown.textContent).toContain(`${table.name}.csv`);
      for (const column of table.columns) expect(shown.textContent).toContain(column.description);
    }
  });
});

describe('Methods', () => {
  test('every entry of its contents leads to a heading', () => {
    const shown = page(<Methods />);
    expectPlain(shown);
    const targets = [...shown.querySelectorAll('nav a')].map((link) => link.getAttribute('href')?.slice(1));
    expect(targets.length).toBeGreaterThan(9);
    expect(targets).toEqual([...shown.querySelectorAll('h2[id]')].map((heading) => heading.id));
  });
});
