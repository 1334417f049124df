import { describe, expect, test } from 'vitest';
import { fitSentences } from '../../app/words/fitSentences';
import { marginRemark, pointWords } from '../../app/words/marginWords';
import { ownLineSentence } from '../../app/words/ownLineSentence';
import { expectedSentence, marginSentences, unitSentences } from '../../app/words/unitSentence';
import { fit, margin, marginWithoutForecast, unit, unitSeries } from './fixture';

const plain = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, ' ');
const said = (changes: Parameters<typeof margin>[0]) =>
  plain(marginSentences('L-1107', 'Thrust play', margin(changes)).join(' '));

describe('marginSentences', () => {
  test('say the level, its movement, the limit by hours and date, and the chance at the next overhaul', () => {
    expect(said({})).toBe(
      'Thrust play of L-1107 is 0.212 ± 0.011 mm now and rises by 0.081 ± 0.012 mm per 10 000 h. It meets the upper limit of 0.300 mm: early 2027-11-20 (in 7 000 h), median 2028-07-01 (in 10 900 h), late 2029-06-10 (in 16 400 h). At the next planned overhaul, 2028-02-01, the chance of being past it is 18 %.',
    );
  });

  test('a level that falls towards a lower limit', () => {
    const text = said({ slope_mm_per_10kh: -0.05, limitKind: 'lower' });
    expect(text).toContain('falls by 0.050 ± 0.012 mm per 10 000 h');
    expect(text).toContain('the lower limit of 0.300 mm');
  });

  test('a level past its limit, said once', () => {
    const text = said({ chanceNow: 0.97, hoursEarly: 0, hoursMedian: 0, hoursLate: 0, reason: 'past limit' });
    expect(text).toContain('It is past the upper limit of 0.300 mm with a chance of 97 %.');
    expect(text).not.toContain('Past limit.');
  });

  test('a limit that is not met before the rated life ends, and one that may be', () => {
    const end = { hoursLate: 4000, dateLate: '2028-01-05', cappedByRatedLife: true };
    const first = said({
      ...end,
      hoursEarly: 4000,
      dateEarly: '2028-01-05',
      hoursMedian: 4000,
      dateMedian: '2028-01-05',
    });
    expect(first).toContain(
      'The rated life ends first, 2028-01-05 (in 4 000 h): by then it meets the upper limit of 0.300 mm with a chance of under 10 %.',
    );
    expect(first).not.toContain('It meets');
    expect(first).not.toContain('Capped by');
    const later = said({ ...end, hoursEarly: 1000, hoursMedian: 4000 });
    expect(later).toContain('It meets the upper limit of 0.300 mm: early');
    expect(later).toContain('Capped by the rated life');
  });

  test('a limit that is not met within the reach of a forecast', () => {
    expect(said({ hoursEarly: null, hoursMedian: null, hoursLate: null })).toContain(
      'It does not meet the upper limit of 0.300 mm within 100 000 h with a chance of 10 % or more.',
    );
    expect(said({ hoursLate: null, dateLate: null })).toContain('late beyond 100 000 h');
  });

  test('without a plan, without a limit, without a forecast', () => {
    expect(said({ nextOverhaulDate: null, chanceAtNextOverhaul: null })).toContain('No overhaul is planned');
    expect(said({ limit_mm: null, chanceNow: null, reason: 'no limit' })).toContain(
      'No limit is known for it, so there is no verdict.',
    );
    expect(plain(marginSentences('L-1107', 'Thrust play', marginWithoutForecast()).join(' '))).toBe(
      'The level of thrust play of L-1107 is not known. No forecast: the group has under 2 units with 2 readings in a run.',
    );
  });

  test('cautions follow the forecast', () => {
    const text = said({ cappedByRatedLife: true, extrapolated: true });
    expect(text).toContain('Capped by the rated life');
    expect(text).toContain('an extrapolation');
  });
});

test('unitSentences say that without a limit there is no verdict', () => {
  expect(unitSentences(unit(), null, null)).toEqual([
    'No limit is known for any series of L-1107, so there is no verdict: add limits on the Tables page, or limits.csv on the Records page.',
  ]);
  expect(unitSentences(unit(), 'Thrust play', margin())).toHaveLength(3);
});

test('pointWords: hours alone where there is no date, now where there are no hours left', () => {
  expect(plain(pointWords(7000, null))).toBe('in 7 000 h');
  expect(pointWords(0, '2026-11-01')).toBe('now');
  expect(plain(pointWords(null, null))).toBe('beyond 100 000 h');
});

test('expectedSentence gives the range, or nothing', () => {
  expect(plain(expectedSentence(margin()) ?? '')).toContain(
    'between 0.250 and 0.310 mm (10 to 90 %), median 0.280 mm',
  );
  expect(expectedSentence(marginWithoutForecast())).toBeNull();
});

test('marginRemark keeps quiet about a plain forecast', () => {
  expect(marginRemark(margin())).toBeNull();
  expect(marginRemark(margin({ reason: 'past limit' }))).toBe('Past limit.');
  expect(marginRemark(margin({ limit_mm: null }))).toBe('No limit, no verdict.');
});

test('ownLineSentence gives both slopes, or the reason', () => {
  expect(plain(ownLineSentence(unitSeries()))).toContain('slope of 0.080 mm per 10 000 h; by Theil');
  const none = unitSeries({ ownSlope_mm_per_10kh: null, ownLineReason: 'too few readings: 2 of 3' });
  expect(ownLineSentence(none)).toBe('The unit has no straight line of its own: too few readings: 2 of 3.');
});

describe('fitSentences', () => {
  test('give the data and the spread', () => {
    const text = plain(fitSentences({ ...fit, boundary: ['sdSlopeRun'], converged: false }).join(' '));
    expect(text).toContain('Sister group Lark: 41 readings in 14 runs of 6 units.');
    expect(text).toContain('the spread of wear rates between runs');
    expect(text).toContain('did not converge');
  });

  test('give the reason where there is no fit', () => {
    expect(fitSentences({ ...fit, reason: 'under 7 readings' })[1]).toBe('No forecast: under 7 readings.');
  });
});
