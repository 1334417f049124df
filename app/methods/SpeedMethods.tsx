'use client';

import { type BenchFigures, benchFigures } from '../../lib/analysis/calibration/benchFigures';
import { formatCount, formatFixed, formatSignificant } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { useWriting } from '../writing/useWriting';

type Fleet = BenchFigures['fleets'][number];
type Waiting = NonNullable<BenchFigures['page']>[number];
type Steps = NonNullable<Fleet['steps']>;

const threeDigits = (value: number) => formatSignificant(value, 3);

function amount<Row>(
  id: string,
  header: string,
  value: (row: Row) => number | null,
  unit?: string,
): DataColumn<Row> {
  const cell = (row: Row) => {
    const found = value(row);
    return found === null ? 'not measured' : threeDigits(found);
  };
  const column = { id, header, numeric: true, value, cell };
  return unit === undefined ? column : { ...column, unit };
}

const unitsColumn: DataColumn<Fleet> = {
  id: 'units',
  header: 'Units',
  numeric: true,
  rowHeader: true,
  value: ({ units }) => units,
  cell: ({ units }) => formatCount(units),
};

/** Processor times where both are known: other work on the machine shows in them least. */
function ratioOf({ batch_s, batchCpu_s, peer }: Fleet): number | null {
  if (peer === null) return null;
  return batchCpu_s === null || peer.wholeCpu_s === null
    ? peer.whole_s / batch_s
    : peer.wholeCpu_s / batchCpu_s;
}

const fleetColumns: readonly DataColumn<Fleet>[] = [
  unitsColumn,
  {
    id: 'readings',
    header: 'Readings',
    numeric: true,
    value: ({ readings }) => readings,
    cell: ({ readings }) => formatCount(readings),
  },
  amount('batch', 'Batch', ({ batch_s }) => batch_s, 's'),
  amount('batch-cpu', 'Batch, processor', ({ batchCpu_s }) => batchCpu_s, 's'),
  amount('memory', 'Memory', ({ peak_MiB }) => peak_MiB, 'MiB'),
  amount('peer-cpu', 'Script in R, processor', ({ peer }) => peer?.wholeCpu_s ?? null, 's'),
  amount('ratio', 'Script / batch', ratioOf),
];

const step = (id: keyof Steps, header: string) =>
  amount<Fleet>(id, header, ({ steps }) => steps?.[id] ?? null, 's');

const stepColumns: readonly DataColumn<Fleet>[] = [
  unitsColumn,
  step('import_s', 'Import'),
  step('fit_s', 'Fits'),
  step('forecasts_s', 'Forecasts'),
  step('sisters_s', 'Sisters'),
  step('signals_s', 'Signals'),
  step('spares_s', 'Spares'),
];

const pageColumns: readonly DataColumn<Waiting>[] = [
  {
    id: 'interaction',
    header: 'Interaction',
    rowHeader: true,
    value: ({ interaction }) => interaction,
    cell: ({ interaction }) => interaction,
  },
  { id: 'fleet', header: 'Fleet', value: ({ fleet }) => fleet, cell: ({ fleet }) => fleet },
  amount('milliseconds', 'Time', ({ milliseconds }) => milliseconds, 'ms'),
];

/** What the batch and the pages take on made fleets; the numbers are written by a script, not by hand. */
export function SpeedMethods({ figures = benchFigures }: { readonly figures?: BenchFigures }) {
  useWriting();
  const { machine, unitsPerGroup, fleets, growth, page = [] } = figures;
  const compared = fleets.flatMap((fleet) => fleet.compared ?? []);
  const most = (of: (one: (typeof compared)[number]) => number) => threeDigits(Math.max(...compared.map(of)));
  return (
    <>
      <h2 id="speed">Speed and size</h2>
      <p>
        A script (<code>npm run -s bench</code>) makes fleets of known truth, ten overhauls a unit, in sister
        groups of {formatCount(unitsPerGroup)}, and times the whole batch command on them, and a script in R
        (data.table, lme4 and plug-in forecasts, without intervals, checks or charts) on the same files and
        the same {formatCount(machine.cores)} cores.
        {growth === null
          ? ''
          : ` The batch’s processor time grows with the number of units to the power ${formatFixed(growth, 2)}.`}
      </p>
      <DataTable
        caption="Whole batch, from files to tables"
        columns={fleetColumns}
        rows={fleets}
        rowKey={({ units }) => String(units)}
        empty="No fleet was timed."
      />
      <DataTable
        caption="Processor time of each step in one process"
        columns={stepColumns}
        rows={fleets.filter(({ steps }) => steps !== null)}
        rowKey={({ units }) => String(units)}
        empty="No step was timed."
      />
      {compared.length === 0 ? null : (
        <p>
          Fits of both agree: the REML criterion within {most(({ reml }) => reml)} of itself, slopes within{' '}
          {most(({ slopes }) => slopes)} and standard deviations within {most(({ sds }) => sds)} of themselves
          or of the noise, whichever is larger.
        </p>
      )}
      {page.length === 0 ? null : (
        <DataTable
          caption="What a person waits for in the pages"
          columns={pageColumns}
          rows={page}
          rowKey={({ interaction, fleet }) => `${interaction} ${fleet}`}
          empty="Nothing was timed in a browser."
        />
      )}
    </>
  );
}
