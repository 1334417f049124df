import { useId } from 'react';
import type { BenchEntry, BenchSheet, EntryFault } from '../../lib/analysis/bench/types';
import { formatHours } from '../../lib/charts/format';
import { type LengthUnit, lengthUnits } from '../../lib/records/lengthUnits';
import { entryFaultWords } from '../words/benchEntryWords';
import { unitNames } from '../words/benchWords';
import styles from './bench.module.css';
import { toNextBox } from './toNextBox';
import type { ChangeEntry } from './useEntry';

interface OverhaulFieldsProps {
  readonly sheet: BenchSheet;
  readonly entry: BenchEntry;
  readonly change: ChangeEntry;
  readonly faults: readonly EntryFault[];
}

/** Day, hours, workshop and unit of measure; what is asked about them stands beside them. */
export function OverhaulFields({ sheet, entry, change, faults }: OverhaulFieldsProps) {
  const workshops = useId();
  const asked = faults.filter(
    ({ kind, field }) => kind === 'asked' || (field === 'unitHours' && entry.unitHours !== ''),
  );
  return (
    <>
      <div className={styles.fields}>
        <label>
          Date
          <input
            type="date"
            value={entry.date}
            onChange={(event) => change({ date: event.target.value })}
            onKeyDown={toNextBox}
          />
        </label>
        <label>
          Hours on the unit, h
          <input
            inputMode="decimal"
            autoComplete="off"
            enterKeyHint="next"
            value={entry.unitHours}
            placeholder={sheet.unitHours === null ? '' : `about ${formatHours(sheet.unitHours)}`}
            onChange={(event) => change({ unitHours: event.target.value })}
            onKeyDown={toNextBox}
          />
        </label>
        <label>
          Workshop
          <input
            list={workshops}
            autoComplete="off"
            enterKeyHint="next"
            value={entry.workshop}
            onChange={(event) => change({ workshop: event.target.value })}
            onKeyDown={toNextBox}
          />
        </label>
        <datalist id={workshops}>
          {sheet.workshops.map((name) => (
            <option key={name} value={name} />
          ))}
        </datalist>
        <label>
          Opened
          <select
            value={entry.kind}
            onChange={(event) =>
              change({ kind: event.target.value === 'unplanned' ? 'unplanned' : 'planned' })
            }
          >
            <option value="planned">as planned</option>
            <option value="unplanned">unplanned</option>
          </select>
        </label>
        <label>
          Readings in
          <select value={entry.uom} onChange={(event) => change({ uom: event.target.value as LengthUnit })}>
            {lengthUnits.map((uom) => (
              <option key={uom} value={uom}>
                {unitNames[uom]}
              </option>
            ))}
          </select>
        </label>
      </div>
      <div aria-live="polite">
        {asked.map((fault) => (
          <p key={fault.what} className={styles.doubt}>
            {entryFaultWords(fault)}
          </p>
        ))}
      </div>
    </>
  );
}
