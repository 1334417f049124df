import { decimalSign } from '../values/decimalSign';
import { readDate } from '../values/readDate';
import { readHours } from '../values/readHours';
import { tidyText } from '../values/tidyText';
import { foldText } from '../words/foldText';
import type { RemarkDate } from './RemarkFact';

/** Hours in a remark, as written with their sign, and whether something says that they are hours. */
export interface RemarkHours {
  readonly hours: number;
  /** 'at 75900', '30500 h': not only a bare number. */
  readonly isNamed: boolean;
  /** '+312' or '-312'. */
  readonly isSigned: boolean;
}

/** A remark cut into clauses, with dates, hours and engines taken out: '§d0§', '§h0§', '§e0§' stand in their places. */
export interface MaskedRemark {
  /** Folded. */
  readonly clauses: readonly string[];
  readonly dates: readonly RemarkDate[];
  readonly hours: readonly RemarkHours[];
  readonly engines: readonly string[];
}

const dateText =
  /(?<![\p{L}\p{N}])(?:\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}([-/.])\s?\d{1,2}\1\s?\d{2,4}|\d{1,2}(?:st|nd|rd|th|er|º)?[.\s-]{1,2}(?:de |of )?\p{L}{3,}\.?[,\s-]{1,2}(?:de )?\d{4}|\p{L}{3,}\.? \d{1,2}(?:st|nd|rd|th)?,? \d{4})(?![\p{L}\p{N}])/giu;
const hoursSuffix =
  '\\s?(?:h|hrs?|hours?|b?std|stunden|betriebsstunden|bh|heures?|horas?|timer|t|ч|час(?:а|ов)?|моточас(?:а|ов)?)';
const otherUnit =
  '\\s?(?:mm|cm|µm|um|m|%|bar|rpm|kw|kg|mil|thou|°|c|days?|weeks?|months?|years?|tage|jahre|мм|%)';
const hoursText = new RegExp(
  `(?<![\\p{L}\\p{N}.,§/-])([+-]\\s?)?(\\d{1,3}(?:[.,' ]\\d{3})+(?:[.,]\\d+)?|\\d+(?:[.,]\\d+)?)(?:(${hoursSuffix})(?![\\p{L}\\p{N}])|(?![\\p{L}\\p{N}§/-]|[.,]\\d|${otherUnit}(?![\\p{L}\\p{N}])))`,
  'giu',
);
const before =
  /(?:^|[^\p{L}])(?:at|by|with|of|to|bei|mit|um|von|auf|à|a|avec|de|con|en|ved|med|på|på|при|на|с|до|@)\s*$/iu;

/** Takes dates, hours and the known engines out of a remark and cuts the rest into clauses; total. */
export function maskedRemark(text: string, engines: readonly string[]): MaskedRemark {
  const dates: RemarkDate[] = [];
  const hours: RemarkHours[] = [];
  const named = [...new Set(engines)].sort((a, b) => b.length - a.length);
  const withoutEngines = named.reduce(
    (rest, engine, index) => rest.replaceAll(wholeName(engine), `§e${index}§`),
    tidyText(text).replaceAll('§', ' '),
  );
  const withoutDates = withoutEngines.replaceAll(dateText, (found) => {
    const date = remarkDate(found);
    return date === null ? found : `§d${dates.push(date) - 1}§`;
  });
  const masked = withoutDates.replaceAll(
    hoursText,
    (found, sign: string | undefined, digits: string, suffix, at) => {
      const isNamed = suffix !== undefined || before.test(withoutDates.slice(0, at as number));
      const size = hoursOf(digits);
      // A bare 2016 is a year.
      if (size === null || (!isNamed && sign === undefined && size >= 1950 && size <= 2100)) return found;
      const isSigned = sign !== undefined;
      return `§h${hours.push({ hours: sign?.startsWith('-') ? -size : size, isNamed, isSigned }) - 1}§`;
    },
  );
  const clauses = masked
    .split(/[;\n|]|\.(?=\s|$)|,\s|\s[-–—]\s/u)
    .map((clause) =>
      foldText(clause)
        .replaceAll(/[^\p{L}\p{N}§@]+/gu, ' ')
        .trim(),
    )
    .filter((clause) => clause !== '');
  return { clauses, dates, hours, engines: named };
}

/** The name as a word of its own; one without a letter only after a word for an engine, since '2' stands for much else. */
function wholeName(name: string): RegExp {
  const escaped = name.replaceAll(/[.*+?^${}()|[\]\\/]/g, '\\$&');
  const after = /\p{L}/u.test(name)
    ? '(?<![\\p{L}\\p{N}§])'
    : '(?<=(?:engine|motor|moteur|maskin|двигател\\p{L}*)\\s(?:(?:no|nr)\\.?\\s)?)';
  return new RegExp(`${after}${escaped}(?![\\p{L}\\p{N}§])`, 'giu');
}

function remarkDate(text: string): RemarkDate | null {
  const day = readDate(text, 'day first');
  const month = readDate(text, 'month first');
  const dayIso = day.kind === 'date' ? day.iso : null;
  const monthIso = month.kind === 'date' ? month.iso : null;
  const iso = dayIso ?? monthIso;
  // Dotted dates are written day first.
  const isOpen = dayIso !== null && monthIso !== null && dayIso !== monthIso && !text.includes('.');
  return iso === null ? null : { iso, otherwise: isOpen ? monthIso : null };
}

function hoursOf(digits: string): number | null {
  const { sign } = decimalSign([digits], { expectsThousands: true });
  const reading = sign === 'open' ? null : readHours(digits, sign);
  return reading?.kind === 'number' && reading.value <= 1_000_000 ? reading.value : null;
}
