// @vitest-environment happy-dom
import { act, type ReactNode } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { renderToStaticMarkup } from 'react-dom/server';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { StageTable } from '../../app/bench/StageTable';
import { Findings } from '../../app/drift/Findings';
import { initialState } from '../../app/engine/engineState';
import { FleetPage } from '../../app/fleet/FleetPage';
import { Term } from '../../app/frame/Term';
import { TermNotes } from '../../app/frame/TermNotes';
import Methods from '../../app/methods/page';
import { FilesTable } from '../../app/records/FilesTable';
import { SisterControls } from '../../app/sisters/SisterControls';
import { SparesControls } from '../../app/spares/SparesControls';
import { UnitView } from '../../app/unit/UnitView';
import { type TermName, termId, termNames, terms } from '../../app/words/terms';
import { WorkspacePanel } from '../../app/workspace/WorkspacePanel';
import { emptyEntry } from '../../lib/analysis/bench/benchEntry';
import { defaultSparesSettings } from '../../lib/analysis/demand/defaultSparesSettings';
import type { DriftResult } from '../../lib/analysis/drift/types';
import type { ImportedFile } from '../../lib/analysis/types';
import { finding } from '../analysis/report/madePapers';
import { accessFaults } from './accessFaults';
import { sheet } from './bench/madeSheet';
import { fleet, unitResult } from './fixture';

vi.mock('next/navigation', () => ({
  useRouter: () => ({ push: () => {} }),
  useSearchParams: () => new URLSearchParams(),
}));
vi.mock('../../app/engine/EngineProvider', () => ({
  useEngine: () => ({
    state: { ...initialState, work: null, fleet: fleet() },
    request: { ask: async () => undefined },
  }),
}));

const acknowledged = { of: () => null, busy: false, acknowledge: () => {}, takeBack: () => {} };
const drift = { findings: [finding('L-1107', 'runout')], source: 'demo' } as unknown as DriftResult;
const file: ImportedFile = {
  file: 'readings.csv',
  table: 'readings',
  rowsIn: 3,
  rowsUsed: 2,
  rowsHeld: 1,
  readingsIn: 3,
  readingsUsed: 2,
  readingsHeld: 1,
  readingsNone: 0,
  message: null,
};
const nothing = () => {};

/** What each page explains, in the words where it says them first. */
const pages: readonly (readonly [string, ReactNode, readonly TermName[]])[] = [
  [
    'Fleet',
    <FleetPage key="" />,
    [
      ...(['unit', 'position', 'frame', 'series', 'level', 'margin', 'early', 'median', 'late'] as const),
      ...(['overhaul', 'chance', 'limit', 'characteristic', 'verdict'] as const),
    ],
  ],
  [
    'Unit',
    <UnitView key="" result={unitResult()} fleet={fleet()} series="" onSeries={nothing} />,
    ['series', 'run', 'runHours', 'stage', 'level', 'margin', 'frame', 'sisterGroup', 'position', 'overhaul'],
  ],
  [
    'Sisters',
    <SisterControls
      key=""
      result={{ groupBy: 'frame', groups: [] } as never}
      series="runout"
      group=""
      measure="rate"
      characteristics={[]}
      onChange={nothing}
    />,
    ['series', 'sisterGroup'],
  ],
  [
    'Drift',
    <Findings
      key=""
      result={drift}
      acknowledged={acknowledged as never}
      characteristics={[]}
      onShow={nothing}
    />,
    ['drift', 'signal', 'unit', 'series'],
  ],
  [
    'Spares',
    <SparesControls key="" settings={defaultSparesSettings} onChange={nothing} />,
    ['chance', 'limit', 'overhaul'],
  ],
  [
    'Bench',
    <StageTable
      key=""
      stage="found"
      sheet={sheet()}
      entry={emptyEntry('L-1107')}
      change={nothing}
      checks={null}
      characteristics={[]}
    />,
    ['clockPosition'],
  ],
  [
    'Records',
    <>
      <FilesTable files={[file]} />
      <WorkspacePanel dropped={null} />
    </>,
    ['heldRow', 'workspace'],
  ],
];

function page(content: ReactNode): HTMLElement {
  const element = document.createElement('div');
  element.innerHTML = renderToStaticMarkup(content);
  return element;
}

const explained = (element: HTMLElement) =>
  [...element.querySelectorAll<HTMLElement>('[data-term]')].map((one) => one.dataset.term);

describe('every term explains itself', () => {
  test.each(pages)('%s explains the words that it uses', (_, content, expected) => {
    const shown = page(content);
    for (const name of expected) expect(explained(shown), name).toContain(name);
    for (const one of shown.querySelectorAll('[data-term]'))
      expect(one.parentElement?.closest('a, button, label'), one.outerHTML).toBeNull();
  });

  test('each has a meaning of its own, is used on a page, and stands in the list of Methods', () => {
    const used = new Set(pages.flatMap(([, content]) => explained(page(content))));
    const methods = page(<Methods />);
    for (const name of termNames) {
      expect(terms[name].says, name).toMatch(/^[A-Z].{15,}\.$/);
      expect(used, name).toContain(name);
      expect(methods.querySelector(`[id="${termId(name)}"]`)?.textContent, name).toContain(terms[name].says);
    }
    expect(new Set(termNames.map((name) => terms[name].says)).size).toBe(termNames.length);
    // The words of the design, spelt out here a second time so that none is lost from the list.
    const words =
      'unit, position, frame, sister group, overhaul, as found / as left, characteristic, clock position, series, run, run hours, limit, margin, level, early, median, late, chance, verdict, drift, signal, held row, workspace';
    expect(termNames.map((name) => terms[name].word).join(', ')).toBe(words);
  });

  test('the list of Methods leads to paragraphs that exist', () => {
    const methods = page(<Methods />);
    const links = [...methods.querySelectorAll('dl a')].map((link) => link.getAttribute('href')?.slice(1));
    expect(links.length).toBeGreaterThan(10);
    for (const id of links) expect(methods.querySelector(`[id="${id}"]`), id).not.toBeNull();
  });
});

describe('a term', () => {
  let root: Root;
  let box: HTMLElement;
  const original = HTMLElement.prototype.togglePopover;

  beforeEach(async () => {
    Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
    // The test's document has no popovers: what the browser is asked for is noted on the element.
    HTMLElement.prototype.togglePopover = function toggle(asked) {
      const isOpen = asked === true || (typeof asked === 'object' && asked.force === true);
      this.toggleAttribute('data-open', isOpen);
      return isOpen;
    };
    box = document.createElement('main');
    document.body.append(box);
    root = createRoot(box);
    await act(async () =>
      root.render(
        <>
          <p>
            A <Term name="run">run</Term> has a <Term name="limit" />.
          </p>
          <TermNotes />
        </>,
      ),
    );
  });
  afterEach(() => {
    HTMLElement.prototype.togglePopover = original;
    act(() => root.unmount());
    box.remove();
  });

  const open = () => [...box.querySelectorAll('[data-open]')].map((note) => note.id);
  const button = (name: TermName) => box.querySelector<HTMLElement>(`[data-term=${name}]`) as HTMLElement;

  test('opens on focus and on a click, closes on Escape and when the focus goes on, but not on the way into the note', async () => {
    await act(async () => button('run').focus());
    expect(open()).toEqual(['note-run']);
    await act(async () =>
      button('run').dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true })),
    );
    expect(open()).toEqual([]);
    await act(async () => button('run').click());
    expect(open()).toEqual(['note-run']);
    await act(async () => box.querySelector<HTMLElement>('#note-run a')?.focus());
    expect(open()).toEqual(['note-run']);
    await act(async () => button('limit').focus());
    expect(open()).toEqual(['note-limit']);
    await act(async () => button('limit').blur());
    expect(open()).toEqual([]);
  });

  test('says its meaning to those who hear the page, and axe finds nothing', async () => {
    for (const name of ['run', 'limit'] as const) {
      const described = document.getElementById(button(name).getAttribute('aria-describedby') ?? '');
      expect(described?.textContent).toBe(terms[name].says);
    }
    expect(button('limit').getAttribute('aria-label')).toBe('What ‘limit’ means');
    expect(await accessFaults(box)).toEqual([]);
  });
});
