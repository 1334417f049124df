import { describe, expect, test } from 'vitest';
import { benchAnswer, itemNotes } from '../../../app/words/benchSheetWords';
import {
  conformitySentences,
  doubtWords,
  lengthWords,
  questionedSentence,
  rangeWords,
} from '../../../app/words/benchWords';
import type { Doubt, SeriesCheck } from '../../../lib/analysis/bench/types';
import { characteristics } from '../fixture';
import { boxCheck, sheet, thrustPlay } from './madeSheet';

const nothingMissing = /\b(undefined|null|NaN|Infinity|object Object)\b/;
/** Spaces that must not break are spaces to the reader. */
const spoken = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, ' ');

describe('the answer of the sheet', () => {
  test('says when, what may be past its limit, and which parts are likely', () => {
    expect(spoken(benchAnswer(sheet(), characteristics))).toBe(
      'The overhaul of L-1107 at 56 000 h (as planned), on 2028-02-01. Likeliest past its limit then is thrust play, with a chance of 18 %. Likely to be called for: Thrust bearing TB-L (42 %).',
    );
  });

  test('says so where there is no limit, no likely part, or nothing to foretell from', () => {
    const [series] = thrustPlay.series;
    const unlimited = {
      ...thrustPlay,
      series: [{ ...series, limits: [], chancePast: null } as typeof series],
    };
    const free = benchAnswer(sheet({ items: [unlimited as typeof thrustPlay], parts: [] }), characteristics);
    expect(free).toContain('No limit is known, so there is no verdict.');
    expect(free).toContain('No part beyond those of every overhaul');
    const boxes = thrustPlay.boxes.map((box) => ({ ...box, expectedFound: null, lastLeft_mm: null }));
    const reason = 'no overhaul of the unit in the files';
    const unknown = benchAnswer(sheet({ items: [{ ...thrustPlay, boxes, reason }] }), characteristics);
    expect(unknown).toBe(
      `Nothing can be foretold of L-1107: ${reason}. The sheet holds limits and boxes only.`,
    );
  });

  test('notes limits as found and assembly ranges as left, with how far one reading repeats', () => {
    const found = spoken(itemNotes(thrustPlay, 'found', characteristics, 'mm').join(' '));
    expect(found).toBe(
      'Limit: at most 0.300 mm (invented table 1); chance of being past it 18 %. One reading repeats within 0.010 mm (standard deviation, from pairs of readings of one state).',
    );
    const left = spoken(itemNotes(thrustPlay, 'left', characteristics, 'um').join(' '));
    expect(left).toContain('Assembly range 120 to 200 µm.');
    expect(left).toContain('It goes on from as found unless TB-L is fitted.');
  });
});

describe('what is asked about a reading', () => {
  const doubts: readonly Doubt[] = [
    { kind: 'negative' },
    { kind: 'scale', words: 'a tenth', suggestion: '0.31' },
    { kind: 'forecast', z: 3.58, suggestion: '0.45' },
    { kind: 'set', z: -3.2 },
    { kind: 'clock position', expected_mm: 0.83, suggestion: null },
    { kind: 'clock positions exchanged', clocks: ['12', '6'] },
    { kind: 'stages exchanged' },
    { kind: 'before stripping', difference_mm: 0.08, sd_mm: 0.014 },
  ];

  test.each(doubts)('$kind has its reason and what to do next, whole sentences without holes', (doubt) => {
    for (const expected of [null, boxCheck().expected]) {
      const { reason, next } = doubtWords(doubt, { expected, stage: 'left' }, 'mm');
      for (const words of [reason, next]) {
        expect(words).toMatch(/[.?]$/);
        expect(words).not.toMatch(nothingMissing);
      }
    }
  });

  test('a slip of scale is asked, with what would fit and what is expected', () => {
    const words = doubtWords({ kind: 'scale', words: 'a tenth', suggestion: '0.31' }, boxCheck(), 'mm');
    expect(words.suggestion).toBe('0.31');
    expect(spoken(words.reason)).toBe(
      'Is the unit of measure right? 0.31 would fit (a tenth). Expected is 0.210 to 0.250 mm (10 to 90 %).',
    );
  });

  test('the questioned ones are named, without those that stand', () => {
    const asked = boxCheck({ doubts: [{ kind: 'negative' }] });
    expect(questionedSentence([boxCheck()], {}, characteristics)).toBe('No reading is questioned.');
    expect(questionedSentence([asked], {}, characteristics)).toBe('Questioned: thrust play, as found.');
    expect(questionedSentence([asked], { 'thrust_play found': '-1' }, characteristics)).toBe(
      'No reading is questioned.',
    );
  });
});

describe('limits and ranges', () => {
  const check: SeriesCheck = {
    series: 'thrust_play',
    stage: 'left',
    value_mm: 0.205,
    isWaiting: false,
    gaugeSd_mm: 0.01,
    limits: [{ kind: 'upper', limit_mm: 0.3, source: null, conformity: 'within' }],
    assembly: { lower_mm: 0.12, upper_mm: 0.2, conformity: 'cannot be told apart' },
  };

  test('are said in words, with what to do where it is not within', () => {
    const [limit = '', range = ''] = conformitySentences(check, characteristics, 'mm').map(spoken);
    expect(limit).toBe('Thrust play 0.205 mm is within the upper limit of 0.300 mm.');
    expect(range).toBe(
      'Thrust play 0.205 mm cannot be told apart from the assembly range of 0.120 to 0.200 mm. It lies within the gauge’s uncertainty of it: measure again, or with a finer gauge.',
    );
  });

  test('wait for the other clock positions, unless they can change nothing; without a gauge that is said', () => {
    const waiting = { ...check, isWaiting: true };
    expect(conformitySentences(waiting, characteristics, 'mm')).toEqual([]);
    const past = {
      ...waiting,
      gaugeSd_mm: null,
      limits: check.limits.map((limit) => ({ ...limit, conformity: 'not within' as const })),
    };
    expect(conformitySentences(past, characteristics, 'mm').join(' ')).toMatch(/not within.*no guard band/);
  });

  test('are in the unit of measure of the sheet', () => {
    expect(spoken(lengthWords(0.0254, 'mil'))).toBe('1.0 thou');
    expect(spoken(lengthWords(0.25, '0.01mm'))).toBe('25.0 × 0.01 mm');
    expect(spoken(rangeWords({ lower_mm: null, upper_mm: 0.2 }, 'mm'))).toBe('at most 0.200 mm');
    expect(spoken(rangeWords({ lower_mm: 0.1, upper_mm: null }, 'um'))).toBe('at least 100 µm');
  });
});
