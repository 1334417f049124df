// @vitest-environment happy-dom
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it, vi } from 'vitest';
import { PaperView } from '../../app/report/PaperView';
import { comparePapers } from '../../lib/analysis/report/comparePapers';
import type { Report } from '../../lib/analysis/report/types';
import { wholeFleet } from '../../lib/analysis/scope';
import { finding, order, summary, unitOnPaper } from '../analysis/report/madePapers';
import { asOf, fleet, margin, marginWithoutForecast, unit } from './fixture';
import { paper } from './madePaper';

vi.mock('next/navigation', () => ({
  useRouter: () => ({ push: () => {} }),
  useSearchParams: () => new URLSearchParams(),
}));
vi.mock('../../app/engine/EngineProvider', () => ({
  useEngine: () => ({ state: { work: null }, request: { journal: async () => [] } }),
}));

/** The paper as a reader sees it; no word of a programming language may be on it. */
function shown(report: Report, address = '', latest = asOf): HTMLElement {
  const element = document.createElement('div');
  element.innerHTML = renderToStaticMarkup(
    <PaperView report={report} latest={latest} query={new URLSearchParams(address)} />,
  );
  expect(element.textContent).not.toMatch(/\b(undefined|null|NaN|Infinity|object Object)\b/);
  return element;
}

const headings = (element: HTMLElement) => [...element.querySelectorAll('h2')].map((one) => one.textContent);
// Outside the site's build the link component drops the closing slash of a path.
const links = (element: HTMLElement) =>
  [...element.querySelectorAll('a')].map((link) => link.getAttribute('href')?.replace('/?', '?') ?? '');

describe('the paper', () => {
  const before = summary('2024-11-01', {
    units: [unitOnPaper('L-1107', ['2026-01-01', '2026-03-01', '2026-06-01'], { cannotWait: true })],
    findings: [finding('L-1107', 'runout')],
  });
  const after = summary(asOf, {
    units: [unitOnPaper('L-1107', ['2029-01-01', '2030-03-01', null])],
    ordersDue: [order('TB-L')],
  });
  const compared = { since: '2024-11-01', changes: comparePapers(before, after) };

  it('has its parts in order, with a comparison only if one is asked for', () => {
    const parts = [
      'The answer',
      'Chance that the first limit is met, by date',
      'Units that cannot wait',
      'Signals of drift',
      'Spares to order',
      'Held data',
      'What changed',
      'Method',
      'Cautions',
    ];
    const whole = shown({ paper: paper(), compared });
    expect(headings(whole)).toEqual(parts);
    expect(whole.textContent).toContain('1 of 3 units reaches a limit with a chance over 10 %');
    expect(whole.querySelectorAll('[aria-label="What changed"] tbody tr')).toHaveLength(4);
    expect(headings(shown({ paper: paper(), compared: null }))).toEqual(
      parts.filter((part) => part !== 'What changed'),
    );
  });

  it('leads to the tables behind it with the same view, and says if they stand on another day', () => {
    const address = 'site=Skua+Head&risk=20&service=99&budget=1&since=2024-11-01';
    const found = links(shown({ paper: paper(), compared: null }, address));
    for (const link of [
      '?site=Skua+Head&risk=20',
      '/drift?budget=1',
      '/spares?risk=20&service=99',
      '/records?action=held',
      '/spares?risk=20&service=99&part=TB-L',
    ])
      expect(found).toContain(link);
    expect(shown({ paper: paper(), compared: null }).textContent).not.toContain('that page stands on');
    expect(shown({ paper: paper(), compared: null }, '', '2027-02-01').textContent).toContain(
      'that page stands on 2027-02-01',
    );
  });

  it('is plain words where there is little or nothing to say', () => {
    const bare = fleet({
      units: [unit({ site: null, engine: null, bank: null, nextOverhaulDate: null, lastWorkshop: null })],
      margins: [marginWithoutForecast()],
    });
    shown({ paper: paper({ fleet: bare, held: [], scope: { ...wholeFleet, site: 'X' } }), compared: null });
    const none = shown({ paper: paper({ fleet: fleet({ units: [] }) }), compared: null });
    expect(none.textContent).toContain('add overhaul records on the Records page');
    expect(headings(none)).toEqual([]);
    const early = shown({ paper: paper({ fleet: fleet({ fits: [], margins: [] }) }), compared: null });
    expect(early.textContent).toContain('choose a later day');
    const past = fleet({
      units: [unit()],
      margins: [margin({ chanceNow: 0.97, chanceAtNextOverhaul: 0.99 })],
    });
    expect(shown({ paper: paper({ fleet: past }), compared: null }).textContent).toContain(
      '1 of 1 unit, the',
    );
  });
});
