import type { CellReading, DecimalSign } from '../types';
import { lengthUnitOfCell } from './lengthUnitOfCell';
import type { SettledSign } from './numeral';
import { withoutHoursSuffix } from './readHours';
import { readQuantity } from './readQuantity';

/** Decimal sign of a column and why. */
export interface SettledDecimalSign {
  readonly sign: DecimalSign;
  readonly evidence: string;
}

interface Votes {
  /** First text that only this sign can read, and how many there are. */
  example: string | null;
  count: number;
  /** All of them have exactly three digits after the sign ('12480.500'). */
  threeDecimals: boolean;
  /** First text that both signs read, differently, and that has a thousands separator if this is the sign. */
  thousands: string | null;
}

const sizeOf = (reading: CellReading): number | null => {
  if (reading.kind === 'number') return Math.abs(reading.value);
  return reading.kind === 'interval' ? reading.lower + reading.upper : null;
};

function countVotes(texts: Iterable<string>): Record<SettledSign, Votes> {
  const none = { example: null, count: 0, threeDecimals: true, thousands: null };
  const votes: Record<SettledSign, Votes> = { point: { ...none }, comma: { ...none } };
  for (const text of texts) {
    const unit = lengthUnitOfCell(text);
    const bare = unit?.kind === 'unit' ? unit.text : withoutHoursSuffix(text).text;
    const asPoint = sizeOf(readQuantity(bare, 'point'));
    const asComma = sizeOf(readQuantity(bare, 'comma'));
    if (asPoint === asComma) continue;
    if (asPoint !== null && asComma !== null) {
      votes[asPoint > asComma ? 'point' : 'comma'].thousands ??= text.trim();
      continue;
    }
    const vote = votes[asPoint === null ? 'comma' : 'point'];
    vote.example ??= text.trim();
    vote.count += 1;
    vote.threeDecimals &&= (asPoint === null ? /,\d{3}(?!\d)/ : /\.\d{3}(?!\d)/).test(bare);
  }
  return votes;
}

/** Evidence of a column whose values say nothing about the decimal sign. */
export const readsAlike = 'every value reads alike with a decimal point and a decimal comma';

const open = (evidence: string): SettledDecimalSign => ({ sign: 'open', evidence });

/**
 * Settles the decimal sign of a column from all of its distinct texts: a text that can be read with one sign only
 * settles it ('0,31' comma; '1,234.5' point). Open, to be asked: texts that settle it both ways, or only texts like
 * '14,200' that both signs read. With expectsThousands (hours) those count as thousands: '14,200' alone is settled as
 * point, and '12.480' beside '9840.5' contradicts it. Texts that both signs read alike ('20') need none: 'point'.
 */
export function decimalSign(
  texts: Iterable<string>,
  options: { readonly expectsThousands?: boolean } = {},
): SettledDecimalSign {
  const votes = countVotes(texts);
  const { point, comma } = votes;
  if (point.example !== null && comma.example !== null)
    return open(`'${point.example}' needs a decimal point, '${comma.example}' a decimal comma`);
  for (const sign of ['point', 'comma'] as const) {
    const { example, count, threeDecimals } = votes[sign];
    if (example === null) continue;
    const contrary = votes[sign === 'point' ? 'comma' : 'point'].thousands;
    if (options.expectsThousands === true && contrary !== null && !threeDecimals)
      return open(`'${example}' needs a decimal ${sign}, but '${contrary}' looks like thousands`);
    const others = count > 1 ? ` and ${count - 1} more` : '';
    return { sign, evidence: `'${example}'${others} can only be read with a decimal ${sign}` };
  }
  if (point.thousands === null && comma.thousands === null) return { sign: 'point', evidence: readsAlike };
  const example = point.thousands ?? comma.thousands ?? '';
  if (options.expectsThousands !== true) return open(`'${example}' may be thousands or decimals`);
  if (point.thousands !== null && comma.thousands !== null)
    return open(`'${point.thousands}' and '${comma.thousands}' cannot both be thousands`);
  const sign = point.thousands !== null ? 'point' : 'comma';
  return { sign, evidence: `'${example}' is written in thousands, which leaves the decimal ${sign}` };
}
