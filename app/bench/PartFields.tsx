import type { BenchEntry, BenchSheet } from '../../lib/analysis/bench/types';
import { formatPieces } from '../../lib/charts/format';
import { partChanceWords, partName } from '../words/benchSheetWords';
import styles from './bench.module.css';
import type { ChangeEntry } from './useEntry';

interface PartFieldsProps {
  readonly sheet: BenchSheet;
  readonly entry: BenchEntry;
  readonly change: ChangeEntry;
}

/** Parts that the overhaul may take, the likeliest first: ticked where they were fitted. */
export function PartFields({ sheet, entry, change }: PartFieldsProps) {
  const { parts } = sheet;
  if (parts.length === 0) return <p>No part of this frame is in parts.csv or limits.csv.</p>;
  return (
    <fieldset className={styles.parts}>
      <legend>Tick what was fitted</legend>
      {parts.map((part) => (
        <label key={part.part}>
          <input
            type="checkbox"
            checked={entry.fitted.includes(part.part)}
            onChange={(event) =>
              change({
                fitted: event.target.checked
                  ? [...entry.fitted, part.part]
                  : entry.fitted.filter((code) => code !== part.part),
              })
            }
          />
          <span>
            {formatPieces(part.pieces)} × {partName(part)},{' '}
            <span className={styles.muted}>{partChanceWords(part)}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}
