import type { BenchSheet, SheetItem, Stage } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatDate, formatHours, formatPieces } from '../../lib/charts/format';
import type { LengthUnit } from '../../lib/records/lengthUnits';
import { fileName } from '../export/fileName';
import {
  benchAnswer,
  expectedWords,
  itemNotes,
  lastLeftWords,
  partChanceWords,
  partName,
  sheetFacts,
} from '../words/benchSheetWords';
import { stageNames, unitNames, workshopCautions } from '../words/benchWords';
import { cautions } from '../words/cautions';
import { seriesName } from '../words/seriesName';
import { element, type Html, text } from './html';

type Characteristics = FleetResult['characteristics'];

/** No script, no picture, nothing fetched: the file is one sheet of paper, on a phone too. */
const style = `
body { margin: 1rem auto; padding: 0 1rem; max-width: 60rem; color: #17191c; background: #ffffff; font: 1rem/1.4 sans-serif; font-variant-numeric: tabular-nums; }
h1 { font-size: 1.3rem; } h2 { font-size: 1.1rem; break-after: avoid; }
table { width: 100%; border-collapse: collapse; }
th, td { padding: .25rem .4rem; border: 1px solid #767a7e; text-align: left; vertical-align: top; font-weight: 400; }
thead th, tbody th[colspan] { font-weight: 700; } tr, li { break-inside: avoid; }
small { display: block; font-weight: 400; } .write { width: 22%; height: 2rem; }
.frame { border: 2px solid #17191c; padding: .25rem .75rem .25rem 1.75rem; } .line { border-bottom: 1px solid #767a7e; height: 2rem; }
ul.parts { padding: 0; list-style: none; } ul.parts li::before { content: "\\2610\\00a0"; }
@page { size: A4; margin: 14mm; } @media print { body { margin: 0; padding: 0; font-size: 9.5pt; } }
`;

/** The bench sheet as one self-contained file that opens without the network: no script, and no address in it. */
export function sheetFile(
  sheet: BenchSheet,
  characteristics: Characteristics,
  uom: LengthUnit,
): { readonly name: string; readonly html: string } {
  const title = `Bench sheet of ${sheet.unit.unit}`;
  const body = [
    element('h1', {}, text(title)),
    element('p', {}, text(benchAnswer(sheet, characteristics))),
    list({ class: 'frame' }, [...cautions, ...workshopCautions]),
    list(
      {},
      sheetFacts(sheet).map(([term, words]) => `${term}: ${words}`),
    ),
    ...overhaulLines(sheet),
    ...(['found', 'left'] as const).flatMap((stage) => [
      element('h2', {}, text(`Readings ${stageNames[stage]}`)),
      stageTable(sheet, stage, characteristics, uom),
      ...(stage === 'found' ? partsList(sheet) : []),
    ]),
    element('h2', {}, text('Remarks')),
    ...[1, 2, 3].map(() => element('p', { class: 'line' })),
  ];
  const head = [
    element('meta', { charset: 'utf-8' }),
    element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    element('title', {}, text(title)),
    element('style', {}, style as Html),
  ];
  const html = element('html', { lang: 'en' }, element('head', {}, ...head), element('body', {}, ...body));
  return { name: fileName(title, 'html'), html: `<!doctype html>\n${html}\n` };
}

function list(attributes: Readonly<Record<string, string>>, lines: readonly string[]): Html {
  return element('ul', attributes, ...lines.map((line) => element('li', {}, text(line))));
}

function overhaulLines({ date, unitHours }: BenchSheet): readonly Html[] {
  const planned = [
    `Date (planned ${formatDate(date)})`,
    `Hours on the unit (expected ${formatHours(unitHours)})`,
    'Workshop and name',
  ];
  const cells = planned.map((words) => element('th', { scope: 'col' }, text(words)));
  const boxes = planned.map(() => element('td', { class: 'write' }));
  return [
    element('h2', {}, text('Overhaul')),
    element('table', {}, element('tr', {}, ...cells), element('tr', {}, ...boxes)),
  ];
}

function partsList({ parts }: BenchSheet): readonly Html[] {
  if (parts.length === 0) return [];
  const lines = parts.map(
    (part) => `${formatPieces(part.pieces)} × ${partName(part)}, ${partChanceWords(part)}`,
  );
  return [element('h2', {}, text('Parts: tick what was fitted')), list({ class: 'parts' }, lines)];
}

function stageTable(
  { items }: BenchSheet,
  stage: Stage,
  characteristics: Characteristics,
  uom: LengthUnit,
): Html {
  const unit = unitNames[uom];
  const heads = [
    'Position',
    `Left last, ${unit}`,
    ...(stage === 'found' ? [`Expected 10 / 50 / 90 %, ${unit}`] : []),
    `Read ${stageNames[stage]}, ${unit}`,
  ];
  const head = element('tr', {}, ...heads.map((words) => element('th', { scope: 'col' }, text(words))));
  return element(
    'table',
    {},
    element('thead', {}, head),
    ...items.map((item) => itemRows(item, stage, characteristics, uom)),
  );
}

function itemRows(item: SheetItem, stage: Stage, characteristics: Characteristics, uom: LengthUnit): Html {
  const columns = stage === 'found' ? 4 : 3;
  const name = element(
    'th',
    { scope: 'rowgroup', colspan: String(columns) },
    text(seriesName(item.characteristic, characteristics)),
    element('small', {}, text(itemNotes(item, stage, characteristics, uom).join(' '))),
  );
  const rows = item.boxes.map(({ clock, lastLeft_mm, expectedFound }) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, text(clock === null ? 'reading' : `${clock} o’clock`)),
      element('td', {}, text(lastLeftWords(lastLeft_mm, uom))),
      ...(stage === 'found'
        ? [element('td', {}, text(expectedWords(expectedFound, uom) ?? 'no forecast'))]
        : []),
      element('td', { class: 'write' }),
    ),
  );
  return element('tbody', {}, element('tr', {}, name), ...rows);
}
