// @vitest-environment happy-dom
import { describe, expect, test } from 'vitest';
import { fileName } from '../../../app/export/fileName';
import { standAlone } from '../../../app/export/standAlone';
import type { SisterRow } from '../../../lib/analysis/sisters/types';
import { drawSvg } from '../../../lib/charts/drawSvg';
import { ratioPicture } from '../../../lib/charts/ratioPicture';
import type { ChartTheme } from '../../../lib/charts/theme';

const theme: ChartTheme = {
  paper: '#ffffff',
  ink: '#111111',
  muted: '#555555',
  grid: '#dddddd',
  accent: '#b3261e',
  hue: '#14497f',
  chance: ['#111', '#222', '#333', '#444', '#555', '#666', '#777'],
  font: 'DejaVu Sans, Arial, sans-serif',
};
const set = { median: 1.4, lower80: 1.1, upper80: 1.8, lower95: 0.9, upper95: 2.1 };
const row = {
  unit: 'A & <B>',
  series: 'thrust_play',
  rate: { ratio: set, reason: null, difference_mm_per_10kh: set, tailProbability: 0.02 },
  q: 0.04,
  readings: 12,
} as unknown as SisterRow;

describe('a picture that is saved', () => {
  test('is XML that says what it is and shows, with its own paper and font, and leads nowhere', async () => {
    const drawn = await drawSvg(ratioPicture([row], 'ratio', 0.1, theme, false), 900);
    expect(drawn).toContain('<a ');
    const title = 'Wear & rate <1>\u0000';
    const saved = standAlone(drawn, { title, description: '>99 % by 2027-10-01' });
    const parsed = new DOMParser().parseFromString(saved, 'image/svg+xml');
    expect(parsed.querySelector('parsererror')).toBeNull();
    expect(parsed.querySelector('svg > title')?.textContent).toBe('Wear & rate <1>\ufffd');
    expect(parsed.querySelector('svg > desc')?.textContent).toBe('>99 % by 2027-10-01');
    const root = parsed.documentElement;
    expect(root.getAttribute('role')).toBe('img');
    for (const [label, name] of [
      ['aria-labelledby', 'title'],
      ['aria-describedby', 'desc'],
    ] as const)
      expect(parsed.querySelector(`#${root.getAttribute(label)}`)?.tagName).toBe(name);
    expect(saved).toContain('fill="#ffffff"');
    expect(saved).toContain('font-family="DejaVu Sans, Arial, sans-serif"');
    expect(saved).not.toMatch(/NaN|Infinity|undefined|null/);
    expect(saved).not.toMatch(/<(a|script|image|foreignObject|style|use)[\s>]|href=|url\(|var\(/);
    expect(saved.startsWith('<?xml')).toBe(true);
  });

  test('keeps what was drawn inside a link', async () => {
    const drawn = '<svg xmlns="http://www.w3.org/2000/svg"><a href="#x"><path d="M0,0"/></a></svg>';
    expect(standAlone(drawn, { title: 't', description: 'd' })).toContain('<path d="M0,0"');
  });
});

test('file names hold small letters, digits and hyphens, whatever the title', () => {
  expect(fileName('Demand of TB-H (thrust bearing), Überlauf', 'csv')).toBe(
    'demand-of-tb-h-thrust-bearing-uberlauf.csv',
  );
  expect(fileName('../../=1', 'svg')).toBe('1.svg');
  expect(fileName('…', 'png')).toBe('endfloat.png');
  expect(fileName('a'.repeat(500), 'csv')).toHaveLength(64);
});
