'use client';

import { useMemo } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import type { EditedTable } from '../../lib/records/decisions/editedTables';
import { decisionsInForce } from '../../lib/records/decisions/journal';
import { draftDecisions } from '../../lib/records/tables/draftDecisions';
import type { TableRow } from '../../lib/records/tables/TableRow';
import { draftOf, faultsOf, withAddedRows } from '../../lib/records/tables/tableDraft';
import { useEngine } from '../engine/EngineProvider';
import { useInitials } from '../records/held/useInitials';
import { UndoButtons } from '../records/journal/UndoButtons';
import { useJournal } from '../records/journal/useJournal';
import { counted } from '../words/counted';
import { editsSentence, tableName } from '../words/tableWords';
import { useMayDecide } from '../workspace/useKeptState';
import { EditGrid } from './EditGrid';
import { EffectPanel } from './EffectPanel';
import type { EditedDrafts } from './useDrafts';
import { useEffectOf } from './useEffectOf';

/** The sentence that takes the focus when what was pressed is gone. */
export const answerId = 'tables-answer';

interface OwnTableProps {
  readonly table: EditedTable;
  readonly rows: readonly TableRow[];
  readonly fleet: FleetResult;
  readonly drafts: EditedDrafts;
}

/** A table of the own files: edits are collected, their effect is shown, and all are applied at once. */
export function OwnTable({ table, rows, fleet, drafts }: OwnTableProps) {
  const { start } = useEngine();
  const journal = useJournal();
  const [initials, sign] = useInitials();
  const busy = !useMayDecide();
  const asItStands = useMemo(() => draftOf(rows), [rows]);
  const draft = drafts.drafts.get(table) ?? asItStands;
  const edits = useMemo(() => {
    const inForce = decisionsInForce(journal);
    return [...drafts.drafts].flatMap(([one, rowsOfOne]) => draftDecisions(one, rowsOfOne, inForce));
  }, [drafts.drafts, journal]);
  const faults = useMemo(
    () =>
      [...drafts.drafts].reduce(
        (sum, [one, rowsOfOne]) =>
          [...faultsOf(one, rowsOfOne).values()].reduce((cells, { size }) => cells + size, sum),
        0,
      ),
    [drafts.drafts],
  );
  const effect = useEffectOf(fleet, edits);
  const nothingToDo = busy || edits.length === 0 || faults > 0;
  const toSentence = () => document.getElementById(answerId)?.focus();
  return (
    <>
      <UndoButtons source="own" onStart={toSentence} notApplied={drafts} />
      <EditGrid
        key={table}
        table={table}
        caption={`${tableName(table)}: arrows move, Enter or F2 edits, Escape leaves; a block from a spreadsheet is pasted from the cell on`}
        draft={draft}
        journal={journal}
        busy={busy}
        onChange={(next) => drafts.change(table, next)}
      />
      <p className="buttons">
        <button type="button" disabled={busy} onClick={() => drafts.change(table, withAddedRows(draft, 1))}>
          Add a row
        </button>
        <button
          type="button"
          disabled={nothingToDo || effect.state.status === 'computing'}
          onClick={effect.show}
        >
          Show the effect
        </button>
      </p>
      <div className="controls">
        <label>
          Your initials
          <input value={initials} maxLength={20} size={8} onChange={(event) => sign(event.target.value)} />
        </label>
        <button
          type="button"
          disabled={nothingToDo}
          onClick={() => {
            effect.stop();
            start('decide', edits);
            toSentence();
          }}
        >
          Apply {counted(edits.length, 'edited row')}
        </button>
        <button type="button" disabled={busy || drafts.undo === null} onClick={drafts.dropAll}>
          Drop the edits
        </button>
      </div>
      <p role="status">{editsSentence(edits.length, faults)}</p>
      <EffectPanel effect={effect} characteristics={fleet.characteristics} />
    </>
  );
}
