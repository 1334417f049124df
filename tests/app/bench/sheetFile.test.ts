// @vitest-environment happy-dom
import { describe, expect, test } from 'vitest';
import { sheetFile } from '../../../app/bench/sheetFile';
import { workshopCautions } from '../../../app/words/benchWords';
import { cautions } from '../../../app/words/cautions';
import { hostileTexts } from '../../support/hostileTexts';
import { characteristics, unit } from '../fixture';
import { sheet, thrustPlay } from './madeSheet';

const parse = (html: string) => new DOMParser().parseFromString(html, 'text/html');

describe('the sheet as one file', () => {
  test('holds every caution, what is expected, a box to write in for each reading, and parts with their chance', () => {
    const { name, html } = sheetFile(sheet(), characteristics, 'mm');
    expect(name).toBe('bench-sheet-of-l-1107.html');
    const { body } = parse(html);
    const words = (body.textContent ?? '').replaceAll(/[\u00a0\u202f]/g, ' ');
    for (const caution of [...cautions, ...workshopCautions]) expect(words).toContain(caution);
    expect(words).toContain('0.210 / 0.230 / 0.250');
    expect(words).toContain('1 × Thrust bearing TB-L, chance 42 %');
    expect(words).toContain('no chance can be given');
    // Date, hours and workshop, and one reading at two stages.
    expect(body.querySelectorAll('td.write')).toHaveLength(3 + 2);
    expect(words).not.toMatch(/\b(undefined|null|NaN|Infinity)\b/);
  });

  test('leads nowhere and runs nothing, whatever names and sources say', () => {
    for (const hostile of hostileTexts('http://elsewhere.invalid')) {
      const series = thrustPlay.series.map((one) => ({
        ...one,
        limits: one.limits.map((limit) => ({ ...limit, source: hostile })),
      }));
      const made = sheet({
        unit: unit({ unit: hostile, frame: hostile, site: hostile }),
        items: [{ ...thrustPlay, series }],
        parts: [{ part: hostile, name: hostile, pieces: 1, chance: 0.5, because: 'limit' }],
      });
      const { name, html } = sheetFile(made, characteristics, 'mm');
      const page = parse(html);
      const elements = [...page.querySelectorAll('*')];
      const allowed = 'HTML HEAD META TITLE STYLE BODY H1 H2 P UL LI TABLE THEAD TBODY TR TH TD SMALL'.split(
        ' ',
      );
      for (const { tagName } of elements) expect(allowed, hostile).toContain(tagName);
      for (const element of elements)
        for (const { name: attribute } of element.attributes)
          expect(['charset', 'name', 'content', 'lang', 'class', 'scope', 'colspan']).toContain(attribute);
      expect(page.querySelector('style')?.textContent).not.toMatch(/url\(|@import/);
      expect(name).toMatch(/^[\p{L}\p{N}.-]+\.html$/u);
    }
  });
});
