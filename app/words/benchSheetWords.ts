import type { BenchSheet, SheetItem, SheetPart, SheetSeries, Stage } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatChance, formatDate, formatHours } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import type { LengthUnit } from '../../lib/records/lengthUnits';
import { lengthIn, lengthWords, rangeWords } from './benchWords';
import { capitalised, midSentence, seriesName } from './seriesName';

type Characteristics = FleetResult['characteristics'];

const hoursFrom: Readonly<Record<'typed' | 'plan' | 'now', string>> = {
  typed: 'as typed',
  plan: 'as planned',
  now: 'now, since no overhaul is planned',
};

/** Chance from which a part is worth naming in the answer. */
const likely = 0.2;

/** What the sheet expects, in a sentence or two. */
export function benchAnswer(sheet: BenchSheet, characteristics: Characteristics): string {
  const { unit, date, unitHours, hoursFrom: from, items, parts } = sheet;
  if (items.every(({ boxes }) => boxes.every(({ expectedFound }) => expectedFound === null))) {
    const reason = items.find((item) => item.reason !== null)?.reason ?? 'no reading is on record';
    return `Nothing can be foretold of ${unit.unit}: ${rewritten(reason)}. The sheet holds limits and boxes only.`;
  }
  const when = [
    unitHours === null ? null : `at ${formatHours(unitHours)}${from === null ? '' : ` (${hoursFrom[from]})`}`,
    date === null ? null : `on ${formatDate(date)}`,
  ].filter((words) => words !== null);
  const limited = items
    .flatMap(({ series }) => series)
    .filter(({ chancePast }) => chancePast !== null)
    .sort((a, b) => (b.chancePast ?? 0) - (a.chancePast ?? 0));
  const [first] = limited;
  const past =
    first === undefined
      ? 'No limit is known, so there is no verdict.'
      : `Likeliest past its limit then is ${midSentence(seriesName(first.series, characteristics))}, with a chance of ${formatChance(first.chancePast)}.`;
  const named = parts.filter(
    ({ chance, because }) => because !== 'every overhaul' && chance !== null && chance >= likely,
  );
  const wanted =
    named.length === 0
      ? 'No part beyond those of every overhaul is likely to be called for.'
      : `Likely to be called for: ${named.map((part) => `${partName(part)} (${part.because === 'rated life' ? partChanceWords(part) : formatChance(part.chance)})`).join(', ')}.`;
  return `The overhaul of ${unit.unit} ${when.join(', ')}. ${past} ${wanted}`;
}

/** A part as it is named: 'Thrust bearing TB-H'. */
export function partName({ part, name }: Pick<SheetPart, 'part' | 'name'>): string {
  return name === null ? part : `${name} ${part}`;
}

/** How likely a part is fitted, and why. */
export function partChanceWords({ chance, because }: SheetPart): string {
  if (because === 'every overhaul') return 'at every overhaul';
  if (because === 'rated life') return 'the rated life ends before the overhaul after this one';
  return chance === null ? 'no chance can be given' : `chance ${formatChance(chance)}`;
}

/** What is known of the unit, for the head of the sheet. */
export function sheetFacts(sheet: BenchSheet): readonly (readonly [term: string, text: string])[] {
  const { unit, last, asOf } = sheet;
  const position = [unit.site, unit.engine, unit.bank].filter((part) => part !== null).join(' / ');
  const lastWords =
    last === null
      ? 'none on record'
      : [formatDate(last.date), last.unitHours === null ? null : formatHours(last.unitHours), last.workshop]
          .filter((part) => part !== null)
          .join(', ');
  return [
    ['Frame', unit.frame],
    ['Position', position === '' ? 'not on record' : position],
    ['Last overhaul', lastWords],
    ['Data as of', formatDate(asOf)],
  ];
}

/** What was left last time, or the words for none. */
export function lastLeftWords(value_mm: number | null, uom: LengthUnit): string {
  return value_mm === null ? 'none' : lengthIn(value_mm, uom);
}

/** 10, 50 and 90 % of the reading as found: '0.328 / 0.349 / 0.371'. */
export function expectedWords(
  expected: SheetItem['boxes'][number]['expectedFound'],
  uom: LengthUnit,
): string | null {
  if (expected === null) return null;
  return [expected.lower_mm, expected.median_mm, expected.upper_mm]
    .map((value) => lengthIn(value, uom))
    .join(' / ');
}

const gauges: Readonly<Record<'pairs' | 'sets' | 'fit', string>> = {
  pairs: 'from pairs of readings of one state',
  sets: 'from clock readings of one run',
  fit: 'from the scatter about the fitted lines',
};

/** What is to be known of one characteristic at a stage: limits, assembly range, expectation of largest and smallest, the gauge. */
export function itemNotes(
  item: SheetItem,
  stage: Stage,
  characteristics: Characteristics,
  uom: LengthUnit,
): readonly string[] {
  const bounded = item.series.flatMap((one) => seriesNotes(item, one, stage, characteristics, uom));
  const hasLimit = item.series.some(({ limits }) => limits.length > 0);
  const { gaugeSd_mm, gaugeFrom } = item;
  return [
    ...(hasLimit ? [] : ['No limit, no verdict.']),
    ...bounded,
    ...(stage === 'found' && item.reason !== null ? [`No forecast: ${item.reason}.`] : []),
    ...(stage === 'left' ? [resetWords(item)] : []),
    gaugeSd_mm === null || gaugeFrom === null
      ? 'How far one reading repeats is not known.'
      : `One reading repeats within ${lengthWords(gaugeSd_mm, uom)} (standard deviation, ${gauges[gaugeFrom]}).`,
  ];
}

function seriesNotes(
  { shape }: SheetItem,
  { series, limits, assembly, chancePast, expectedFound }: SheetSeries,
  stage: Stage,
  characteristics: Characteristics,
  uom: LengthUnit,
): readonly string[] {
  const name = shape === 'single' ? 'Limit' : partOfName(series, characteristics);
  const bounds = limits.map(
    ({ kind, limit_mm, source }) =>
      `${name}: ${kind === 'upper' ? 'at most' : 'at least'} ${lengthWords(limit_mm, uom)}${source === null ? '' : ` (${source})`}.`,
  );
  if (stage === 'left')
    return assembly === null
      ? bounds
      : [
          ...bounds,
          `${shape === 'single' ? 'Assembly range' : `${name}: assembly range`} ${rangeWords(assembly, uom)}.`,
        ];
  const expected = shape === 'single' ? null : expectedWords(expectedFound, uom);
  const told = [
    ...(expected === null ? [] : [`expected ${expected}`]),
    ...(chancePast === null ? [] : [`chance of being past it ${formatChance(chancePast)}`]),
  ];
  if (limits.length === 0 || told.length === 0) return bounds;
  return [...bounds.slice(0, -1), `${(bounds.at(-1) ?? '').replace(/\.$/, '')}; ${told.join(', ')}.`];
}

/** Which number of a set it is: 'Largest'. */
function partOfName(series: string, characteristics: Characteristics): string {
  return capitalised(seriesName(series, characteristics).split(', ').at(-1) ?? series);
}

function resetWords({ resetParts }: SheetItem): string {
  return resetParts.length === 0
    ? 'Every assembly starts it anew.'
    : `It goes on from as found unless ${resetParts.join(' or ')} is fitted.`;
}
