import { describe, expect, it } from 'vitest';
import { decimalSign } from '../../../../lib/records/intake/values/decimalSign';

describe('decimalSign', () => {
  it.each([
    [['0,31'], 'comma'],
    [['0.31'], 'point'],
    [['1.234,5'], 'comma'],
    [['1,234.5'], 'point'],
    [['14,200', '27,950'], 'open'],
    [['1.234'], 'open'],
    [['0,31', '0.31'], 'open'],
    [['0,310'], 'comma'],
    [['.310'], 'point'],
    [['0,31', '1.234'], 'comma'],
    [['0.31', '1,234'], 'point'],
    [['1.234.567'], 'comma'],
    [['20', '25', '1 234', 'n/a', ''], 'point'],
    [[], 'point'],
    [['0,45-0,50', 'OK'], 'comma'],
    [['<0,02'], 'comma'],
    [['8,5 thou'], 'comma'],
    [['0.52*'], 'point'],
    [['geht 0,40 / geht nicht 0,45'], 'comma'],
    [['=1.5+2', 'see item 3.4', '0,31'], 'comma'],
  ] as const)('settles %j as %s', (texts, sign) => {
    expect(decimalSign(texts).sign).toBe(sign);
  });

  it.each([
    [['14,200', '27,950'], 'point'],
    [['12.480', '23.910'], 'comma'],
    [['14,200', '27100H'], 'point'],
    [['14,200', '14.200'], 'open'],
    [['12.480', '9840.5'], 'open'],
    [['12.480', '9840,5'], 'comma'],
    [['12480.500', '980.500'], 'point'],
    [['1.234.567', '14,200'], 'open'],
    [['12 480', '9840'], 'point'],
    [['12.480 Std.'], 'comma'],
  ] as const)('settles hours %j as %s', (texts, sign) => {
    expect(decimalSign(texts, { expectsThousands: true }).sign).toBe(sign);
  });

  it('says why, with the values that decided', () => {
    expect(decimalSign(['0,31', '0,29', '20']).evidence).toBe(
      "'0,31' and 1 more can only be read with a decimal comma",
    );
    expect(decimalSign(['0,31', '0.29']).evidence).toBe(
      "'0.29' needs a decimal point, '0,31' a decimal comma",
    );
    expect(decimalSign(['14,200'], { expectsThousands: true }).evidence).toBe(
      "'14,200' is written in thousands, which leaves the decimal point",
    );
    expect(decimalSign(['14,200']).evidence).toBe("'14,200' may be thousands or decimals");
  });
});
