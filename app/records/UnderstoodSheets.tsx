'use client';

import { useState } from 'react';
import type { UnderstoodSheet } from '../../lib/analysis/types';
import type { MeaningDecision } from '../../lib/records/decisions/Decision';
import { usePrinting } from '../frame/usePrinting';
import { columnWords } from '../words/columnWords';
import { counted } from '../words/counted';
import { ColumnsTable } from './meanings/ColumnsTable';
import { MeaningsDialog } from './meanings/MeaningsDialog';
import styles from './records.module.css';

interface UnderstoodSheetsProps {
  readonly sheets: readonly UnderstoodSheet[];
  readonly busy: boolean;
  readonly onApply: (decisions: readonly MeaningDecision[]) => void;
}

/** A sheet's line in short: how many of its columns are used. */
function columnsUsed({ columns, reason }: UnderstoodSheet): string {
  if (reason !== null) return `not understood, ${counted(columns.length, 'column')}`;
  const used = columns.filter((column) => column.role !== 'unused').length;
  return `${used} of ${counted(columns.length, 'column')} used`;
}

interface SheetProps extends Omit<UnderstoodSheetsProps, 'sheets'> {
  readonly sheet: UnderstoodSheet;
  readonly others: number;
}

function Sheet({ sheet, others, busy, onApply }: SheetProps) {
  const { file, columns, samples, characteristics, reason } = sheet;
  const [isOpen, setOpen] = useState(reason !== null);
  const [isEdited, setEdited] = useState(false);
  const printing = usePrinting();
  return (
    <details
      open={isOpen || printing}
      onToggle={(event) => {
        if (!printing) setOpen(event.currentTarget.open);
      }}
    >
      <summary>
        {file}: {columnsUsed(sheet)}
      </summary>
      {reason !== null && <p>{reason}</p>}
      <p className="buttons">
        <button type="button" disabled={busy} onClick={() => setEdited(true)}>
          Correct the columns
          <span className="visuallyHidden">{` of ${file}`}</span>
        </button>
      </p>
      {isEdited && (
        <MeaningsDialog sheet={sheet} others={others} onApply={onApply} onClose={() => setEdited(false)} />
      )}
      <ColumnsTable
        caption={`Columns of ${file}, in the order of the file`}
        columns={columns}
        samples={samples}
        isChanged={() => false}
        readAs={(column) => <span className={styles.meaning}>{columnWords(column, characteristics)}</span>}
      />
    </details>
  );
}

/** What every column of the workshops' sheets was read as, and the way to correct it; sheets not understood come first. */
export function UnderstoodSheets({ sheets, busy, onApply }: UnderstoodSheetsProps) {
  if (sheets.length === 0) return null;
  const inOrder = [
    ...sheets.filter(({ reason }) => reason !== null),
    ...sheets.filter(({ reason }) => reason === null),
  ];
  return (
    <>
      <h2>How the sheets were understood</h2>
      {inOrder.map((sheet) => (
        <Sheet
          key={sheet.file}
          sheet={sheet}
          others={sheets.filter(({ shape }) => shape === sheet.shape).length - 1}
          busy={busy}
          onApply={onApply}
        />
      ))}
    </>
  );
}
