import fc from 'fast-check';
import type { SettledSign } from '../../../../lib/records/intake/values/numeral';

/** A number and one of the many ways to write it. */
export interface WrittenNumber {
  readonly value: number;
  readonly sign: SettledSign;
  readonly text: string;
}

const separators = [',', '.', ' ', '\u00A0', '\u2009', '\u202F', "'", '\u2019', ''];

/** Numbers up to 10 digits with 0 to maxDecimals decimals, in every thousands separator, sign and padding. */
export function writtenNumber(
  sign: SettledSign,
  options: { readonly maxDecimals?: number; readonly signs?: readonly string[] } = {},
): fc.Arbitrary<WrittenNumber> {
  const mark = sign === 'point' ? '.' : ',';
  return fc
    .record({
      digits: fc
        .integer({ min: 1, max: 10 })
        .chain((length) => fc.integer({ min: 0, max: 10 ** length - 1 })),
      decimals: fc.integer({ min: 0, max: options.maxDecimals ?? 4 }),
      separator: fc.constantFrom(...separators.filter((separator) => separator !== mark)),
      minus: fc.constantFrom(...(options.signs ?? ['', '-', '\u2212', '(', '+'])),
      before: fc.constantFrom('', ' ', '\u00A0', '\t', '\uFEFF'),
      after: fc.constantFrom('', ' ', '\u202F', '*', '?', ' *'),
      dropsZero: fc.boolean(),
    })
    .map(({ digits, decimals, separator, minus, before, after, dropsZero }) => {
      const padded = String(digits).padStart(decimals + 1, '0');
      const whole = padded.slice(0, padded.length - decimals);
      const fraction = padded.slice(padded.length - decimals);
      let grouped = '';
      for (let index = 0; index < whole.length; index += 1)
        grouped += (index > 0 && (whole.length - index) % 3 === 0 ? separator : '') + whole[index];
      const start = dropsZero && grouped === '0' && fraction !== '' ? '' : grouped;
      const number = start + (fraction === '' ? '' : mark + fraction);
      const isNegative = minus !== '' && minus !== '+';
      return {
        value: (isNegative ? -1 : 1) * (digits / 10 ** decimals),
        sign,
        text: `${before}${minus}${number}${minus === '(' ? ')' : ''}${after}`,
      };
    });
}

export const anySign = fc.constantFrom<SettledSign>('point', 'comma');

/** Equal to 1e-9, relative for numbers above 1. */
export const isNear = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));
