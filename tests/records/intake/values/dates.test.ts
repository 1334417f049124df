import { describe, expect, it } from 'vitest';
import { dateOrder } from '../../../../lib/records/intake/values/dateOrder';
import type { SettledOrder } from '../../../../lib/records/intake/values/orderedDate';
import { readDate } from '../../../../lib/records/intake/values/readDate';

describe('dateOrder', () => {
  it.each([
    [['03/04/2016', '05/11/2017', '13/04/2016', '07/12/2017'], 'day first'],
    [['03/04/2016', '04/13/2016'], 'month first'],
    [['03/04/2016', '05/11/2017'], 'open'],
    [['13/04/2016', '04/13/2016'], 'open'],
    [['2016-04-03', '2017-11-05'], 'year first'],
    [['2016/04/03'], 'year first'],
    [['2016-04-03', '03/04/2016'], 'open'],
    [['2016-04-03', '13/04/2016'], 'day first'],
    [['14.03.2019', '31.04.2021'], 'day first'],
    [['03.04.2016', '05.11.2017'], 'day first'],
    [['03.04.2016', '04.13.2016'], 'month first'],
    [['03.04.2016', '04/13/2016'], 'open'],
    [['03.04.2016', '05/11/2017'], 'open'],
    [['03.04.16'], 'day first'],
    [['05/05/2016'], 'day first'],
    [['01-01-70'], 'day first'],
    [['01-01-70', '70-01-01'], 'open'],
    [['05.05.2016', '04/13/2016'], 'month first'],
    [['05/05/2016', '03/04/2016'], 'open'],
    [['13/04/16', '07/12/17'], 'day first'],
    [['16-04-13', '03-04-02'], 'open'],
    [['99-04-13'], 'year first'],
    [['13-04-99'], 'day first'],
    [['14 March 2019', '45306', 'n/a', ''], 'year first'],
    [['=1+1', 'soon', '32/13/2016'], 'year first'],
    [['20190314'], 'year first'],
    [[], 'year first'],
  ] as const)('settles %j as %s', (texts, order) => {
    expect(dateOrder(texts).order).toBe(order);
  });

  it('says why', () => {
    expect(dateOrder(['03/04/2016', '13/04/2016']).evidence).toBe(
      "'13/04/2016' can only be day first, which settles the whole column",
    );
    expect(dateOrder(['03.04.2016']).evidence).toBe(
      "dotted dates ('03.04.2016') are written day first; no value contradicts",
    );
    expect(dateOrder(['03/04/2016']).evidence).toBe("'03/04/2016' may be day first or month first");
    expect(dateOrder(['13/04/2016', '04/13/2016']).evidence).toBe(
      "'13/04/2016' can only be day first, '04/13/2016' cannot",
    );
  });
});

const dates: readonly (readonly [string, SettledOrder, string, string | null])[] = [
  ['2019-03-14', 'year first', '2019-03-14', null],
  ['2019-03-14', 'day first', '2019-03-14', null],
  ['2019/3/4', 'month first', '2019-03-04', null],
  ['2019.03.14', 'year first', '2019-03-14', null],
  ['20190314', 'year first', '2019-03-14', 'digits without separators'],
  ['14032019', 'day first', '2019-03-14', 'digits without separators'],
  ['14.03.2019', 'day first', '2019-03-14', null],
  ['14. 3. 2019', 'day first', '2019-03-14', null],
  ['14. 03.19', 'day first', '2019-03-14', 'two-digit year read as 2019'],
  ['03/04/2016', 'day first', '2016-04-03', null],
  ['03/04/2016', 'month first', '2016-03-04', null],
  ['13-04-2016', 'day first', '2016-04-13', null],
  ['14 03 2019', 'day first', '2019-03-14', null],
  ['29.02.2020', 'day first', '2020-02-29', null],
  ['14.03.49', 'day first', '2049-03-14', 'two-digit year read as 2049'],
  ['14.03.50', 'day first', '1950-03-14', 'two-digit year read as 1950'],
  ['03/14/16', 'month first', '2016-03-14', 'two-digit year read as 2016'],
  ['16-03-14', 'year first', '2016-03-14', 'two-digit year read as 2016'],
  ['14 March 2019', 'year first', '2019-03-14', null],
  ['March 14, 2019', 'day first', '2019-03-14', null],
  ['14th of Mar. 2019', 'day first', '2019-03-14', null],
  ['14-Mar-2019', 'month first', '2019-03-14', null],
  ['14-Mar-19', 'day first', '2019-03-14', 'two-digit year read as 2019'],
  ["14 Mar '19", 'day first', '2019-03-14', 'two-digit year read as 2019'],
  ['2019-Mar-14', 'day first', '2019-03-14', null],
  ['14Mar2019', 'day first', '2019-03-14', null],
  ['14. März 2019', 'day first', '2019-03-14', null],
  ['1. Dez. 2019', 'day first', '2019-12-01', null],
  ['1er février 2019', 'day first', '2019-02-01', null],
  ['14 AOÛT 2019', 'day first', '2019-08-14', null],
  ['14 de enero de 2019', 'day first', '2019-01-14', null],
  ['14 dic 2019', 'day first', '2019-12-14', null],
  ['14. desember 2019', 'day first', '2019-12-14', null],
  ['14 марта 2019 г.', 'day first', '2019-03-14', null],
  ['14 МАЯ 2019', 'day first', '2019-05-14', null],
  ['2019-03-14T08:15:00Z', 'year first', '2019-03-14', 'time of day ignored'],
  ['2019-03-14 00:00:00.000', 'year first', '2019-03-14', 'time of day ignored'],
  ['14.03.2019 8:15 Uhr', 'day first', '2019-03-14', 'time of day ignored'],
  ['3/14/2019 8:15 PM', 'month first', '2019-03-14', 'time of day ignored'],
  ['14/03/2019 08h15', 'day first', '2019-03-14', 'time of day ignored'],
  ['14.03.2019 kl. 08.15', 'day first', '2019-03-14', 'time of day ignored'],
  ['14.03.2019*', 'day first', '2019-03-14', "'*' taken off: a mark that may refer to a remark"],
];

const asked: readonly (readonly [string, SettledOrder, string, string])[] = [
  ['45306', 'year first', '2024-01-15', 'serial number'],
  ['45306.5', 'day first', '2024-01-15', 'serial number'],
  ['36526', 'day first', '2000-01-01', 'serial number'],
  ['20000', 'day first', '1954-10-03', 'serial number'],
  ['80000', 'day first', '2119-01-11', 'serial number'],
  ['04/13/2016', 'day first', '2016-04-13', 'not written day first'],
  ['13/04/2016', 'month first', '2016-04-13', 'not written month first'],
  ['03/04/2016', 'year first', '2016-04-03', 'either way'],
  ['19-Mar-14', 'year first', '2014-03-19', 'may be the year'],
];

const heldDates: readonly (readonly [string, SettledOrder, string])[] = [
  ['31.04.2021', 'day first', 'day 31 of month 4 of 2021 is no day of the calendar'],
  ['29.02.2019', 'day first', 'no day'],
  ['29/02/1900', 'day first', 'no day'],
  ['30 Feb 2020', 'day first', 'no day'],
  ['2020-02-30', 'year first', 'no day'],
  ['2020-13-02', 'year first', 'no month'],
  ['00.01.2020', 'day first', 'no day'],
  ['32/13/2016', 'day first', 'no month'],
  ['14.03.0019', 'day first', 'year 19 is not 1900 to 2100'],
  ['3019-03-14', 'year first', 'year 3019'],
  ['March 2019', 'day first', 'missing'],
  ['14 March', 'day first', 'missing'],
  ['03/2019', 'day first', 'missing'],
  ['2019', 'day first', 'missing'],
  ['19999', 'day first', 'not written'],
  ['80001', 'day first', 'not written'],
  ['14.03-2019', 'day first', 'not written'],
  ['14 Foo 2019', 'day first', 'not written'],
  ['14.03.2019 99:99', 'day first', 'not written'],
  ['14.03.2019 - 16.03.2019', 'day first', 'not written'],
  ['soon', 'day first', 'not written'],
  ['=DATE(2019,3,14)', 'day first', 'formula'],
  ['1'.repeat(121), 'day first', 'too long'],
];

describe('readDate', () => {
  it.each(dates)('reads %j (%s) as %s', (text, order, iso, note) => {
    expect(readDate(text, order)).toEqual({ kind: 'date', iso, note });
  });

  it.each(asked)('asks %j (%s) as %s', (text, order, iso, reason) => {
    expect(readDate(text, order)).toEqual({ kind: 'ask', iso, reason: expect.stringContaining(reason) });
  });

  it.each(heldDates)('holds %j (%s)', (text, order, reason) => {
    expect(readDate(text, order)).toEqual({ kind: 'held', reason: expect.stringContaining(reason) });
  });

  it.each(['', 'n/a', '-', 'inconnu', 'неизвестно'])('takes %j as none', (text) => {
    expect(readDate(text, 'day first')).toEqual({ kind: 'none', word: text === '' ? null : text });
  });

  it('asks a two-digit year that falls after the latest date given', () => {
    const reason = 'two-digit year 48 read as 2048: after 2026-11-25';
    expect(readDate('14.03.48', 'day first', '2026-11-25')).toEqual({
      kind: 'ask',
      iso: '2048-03-14',
      reason,
    });
    expect(readDate('14.03.26', 'day first', '2026-11-25').kind).toBe('date');
    expect(readDate('14 Mar 48', 'day first', '2026-11-25').kind).toBe('ask');
  });
});
