'use client';

import Link from 'next/link';
import type { FleetResult } from '../../lib/analysis/types';
import { canonicalCsv } from '../../lib/records/csv/canonicalCsv';
import { type EditedTable, editedTables } from '../../lib/records/decisions/editedTables';
import type { TableRow } from '../../lib/records/tables/TableRow';
import { useQuery } from '../address/useQuery';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { WithFleet } from '../engine/WithFleet';
import { Field } from '../frame/Field';
import { saveFile } from '../records/saveFile';

import { siteFleetName } from '../words/siteFleet';
import { tableName, tableSentence, tableTerms } from '../words/tableWords';

import { answerId, OwnTable } from './OwnTable';
import { ReadOnlyTable } from './ReadOnlyTable';
import { type EditedDrafts, useDrafts } from './useDrafts';

/** The Tables page: one table of the open data, chosen in the address; own data's may be edited. */
export function TablesPage() {
  return <WithFleet>{(fleet) => <FleetTables fleet={fleet} />}</WithFleet>;
}

function FleetTables({ fleet }: { readonly fleet: FleetResult }) {
  const [query, change] = useQuery();
  const drafts = useDrafts(fleet);
  const table = editedTables.find((one) => one === query.get('table')) ?? editedTables[0];
  const asked = useAsked(fleet, 'tableRows', table);
  return (
    <>
      <p className="answer" tabIndex={-1} id={answerId}>
        {asked.status === 'answered'
          ? tableSentence(table, asked.answer, fleet.source)
          : 'The table is being read.'}
      </p>
      <div className="controls">
        <Field label="Table" term={tableTerms[table]}>
          {(id) => (
            <select
              id={id}
              value={table}
              onChange={({ target }) =>
                change({ table: target.value === editedTables[0] ? '' : target.value })
              }
            >
              {editedTables.map((one) => (
                <option key={one} value={one}>
                  {tableName(one)}
                </option>
              ))}
            </select>
          )}
        </Field>
      </div>
      {/* Rows of one table are no answer for another while it is asked. */}
      <WithAnswer
        key={table}
        asked={asked.status === 'waiting' ? { status: 'waiting', before: null } : asked}
      >
        {(rows) => <ShownTable table={table} rows={rows} fleet={fleet} drafts={drafts} />}
      </WithAnswer>
    </>
  );
}

interface ShownTableProps {
  readonly table: EditedTable;
  readonly rows: readonly TableRow[];
  readonly fleet: FleetResult;
  readonly drafts: EditedDrafts;
}

function ShownTable({ table, rows, fleet, drafts }: ShownTableProps) {
  const isOwn = fleet.source === 'own';
  return (
    <>
      {isOwn ? (
        <OwnTable table={table} rows={rows} fleet={fleet} drafts={drafts} />
      ) : (
        <>
          <p>
            The tables of the {siteFleetName()} are shown to be read. To have tables of your own, add your
            files on the page <Link href="/records/">Records</Link>: with them, rows can be edited and added
            here. A table saved below is a file to start from.
          </p>
          <ReadOnlyTable
            table={table}
            caption={`${tableName(table)} of the ${siteFleetName()}`}
            rows={rows}
          />
        </>
      )}
      <p className="buttons">
        <button
          type="button"
          disabled={rows.length === 0}
          onClick={() =>
            saveFile(
              `${table}.csv`,
              canonicalCsv(
                table,
                rows.map(({ texts }) => texts),
              ),
              'text/csv;charset=utf-8',
            )
          }
        >
          Save {table}.csv{isOwn && ' as it is applied'}
        </button>
      </p>
    </>
  );
}
