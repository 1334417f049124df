import { sistersTable } from '../../analysis/comparisonTables';
import type { ChartedSeries } from '../../analysis/drift/types';
import { chances } from '../../analysis/fileNumbers';
import { type Cell, fitsTable, marginsTable, problemsTable } from '../../analysis/fleetTables';
import { writeCsv } from '../../records/csv/writeCsv';
import type { ChartThreshold } from '../../stats/charts/thresholdForBudget';
import { falseDiscovery } from '../../stats/sisters/falseDiscovery';
import { byBytes } from './byBytes';
import { mergedSignals } from './mergedSignals';
import type { OutputFiles } from './OutputFiles';
import type { FinishedPart } from './PartTask';
import type { SisterBlock } from './partResult';
import { partSisters, partSummary, type UnitLines } from './partStore';
import { SparesMerge } from './SparesMerge';
import type { FleetFacts } from './surveyParts';
import { writeMargins } from './writeMargins';

type Row = readonly Cell[];

/** The sister groups of the part that was read last. */
interface LoadedSisters {
  readonly part: FinishedPart;
  readonly blocks: readonly SisterBlock[];
}

const headers = {
  fits: fitsTable({ fits: [] }).header,
  margins: marginsTable({ margins: [] }).header,
  sisters: sistersTable([], () => undefined).header,
  problems: problemsTable({ problems: [] }).header,
};

/**
 * Writes the tables of the whole fleet from those of its parts, one part in memory at a time, in the order in which a flat folder
 * gives them. What only the fleet settles is settled here: q-values, the budget of false signals, stock and orders.
 */
export async function mergeParts(
  parts: readonly FinishedPart[],
  facts: FleetFacts,
  thresholds: readonly ChartThreshold[],
  output: OutputFiles,
): Promise<void> {
  const spares = new SparesMerge();
  const candidates: ChartedSeries[] = [];
  const fits: { readonly row: Row; readonly part: FinishedPart }[] = [];
  const problems: Row[] = [];
  const told = new Set<string>();
  const unitLines: { readonly part: FinishedPart; readonly lines: readonly UnitLines[] }[] = [];
  for (const part of parts) {
    const summary = await partSummary(part);
    for (const series of summary.candidates) candidates.push(series);
    spares.add(summary);
    for (const row of summary.fits) fits.push({ row, part });
    // A row of a file that the parts share is told by each of them.
    const own = summary.problems.filter((row) => !told.has(JSON.stringify(row)));
    for (const row of own) problems.push(row);
    for (const row of own) told.add(JSON.stringify(row));
    unitLines.push({ part, lines: summary.unitLines });
  }
  fits.sort(
    (a, b) => byBytes(String(a.row[0]), String(b.row[0])) || byBytes(String(a.row[1]), String(b.row[1])),
  );
  await output.write(
    'fits',
    writeCsv(
      headers.fits,
      fits.map(({ row }) => row),
    ),
  );
  await writeMargins(unitLines, headers.margins, output);
  await writeSisters([...new Set(fits.map(({ part }) => part))], output);
  await output.writeTable(mergedSignals(candidates, thresholds));
  for (const table of spares.tables(facts)) await output.writeTable(table);
  await output.write('problems', writeCsv(headers.problems, sortedProblems(problems)));
}

/** By file, line, action, column and reason, as the import report has them. */
function sortedProblems(rows: readonly Row[]): readonly Row[] {
  const places = [0, 1, 5, 2, 4] as const;
  return rows.toSorted((a, b) => {
    for (const place of places) {
      const [one, other] = [a[place], b[place]];
      const order =
        typeof one === 'number' && typeof other === 'number'
          ? one - other
          : byBytes(String(one), String(other));
      if (order !== 0) return order;
    }
    return 0;
  });
}

/**
 * q-values are those within a series over all groups, so the chances of all parts are read first.
 *
 * @param parts in the order of their first group
 */
async function writeSisters(parts: readonly FinishedPart[], output: OutputFiles): Promise<void> {
  const bySeries = new Map<string, number[]>();
  const blocks: {
    readonly group: string;
    readonly series: string;
    readonly part: FinishedPart;
    readonly from: number;
    readonly index: number;
  }[] = [];
  for (const part of parts) {
    for (const [index, { group, series, tailProbabilities }] of (await partSisters(part)).entries()) {
      const known = bySeries.get(series) ?? [];
      bySeries.set(series, known);
      blocks.push({ group, series, part, from: known.length, index });
      for (const chance of tailProbabilities) known.push(chance);
    }
  }
  const q = new Map([...bySeries].map(([series, chancesOf]) => [series, falseDiscovery(chancesOf)]));
  blocks.sort((a, b) => byBytes(a.group, b.group) || byBytes(a.series, b.series));
  const file = await output.open('sisters', headers.sisters);
  let loaded: LoadedSisters | undefined;
  for (const { part, series, from, index } of blocks) {
    if (loaded?.part !== part) loaded = { part, blocks: await partSisters(part) };
    const lines = loaded.blocks[index]?.lines ?? [];
    await file.text(
      lines.map((line, k) => `${line}${chances(q.get(series)?.[from + k] ?? null) ?? ''}\n`).join(''),
    );
  }
  await file.end();
}
