'use client';

import type { BenchChecks, BenchEntry, BenchSheet, Stage } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import { MarkedName } from '../frame/MarkedName';
import { itemNotes } from '../words/benchSheetWords';
import { conformitySentences, stageNames, unitNames } from '../words/benchWords';
import { seriesName } from '../words/seriesName';
import { BoxRow } from './BoxRow';
import styles from './bench.module.css';
import type { ChangeEntry } from './useEntry';

export interface StageTableProps {
  readonly sheet: BenchSheet;
  readonly entry: BenchEntry;
  readonly change: ChangeEntry;
  /** Null until the first check is made. */
  readonly checks: BenchChecks | null;
  readonly characteristics: FleetResult['characteristics'];
}

/** The boxes of one stage, characteristic by characteristic, with what is expected and what is asked. */
export function StageTable({ stage, ...given }: StageTableProps & { readonly stage: Stage }) {
  const { sheet, entry, checks, characteristics } = given;
  const unit = unitNames[entry.uom];
  if (sheet.items.length === 0) return <p>Nothing is read at this frame as far as the data say.</p>;
  return (
    <table className={styles.boxes}>
      <caption className="visuallyHidden">Readings {stageNames[stage]}</caption>
      <thead>
        <tr>
          <th scope="col" aria-label="Position">
            <MarkedName name="Position" term="clockPosition" />
          </th>
          <th scope="col">Left last, {unit}</th>
          {stage === 'found' && <th scope="col">Expected 10 / 50 / 90&nbsp;%, {unit}</th>}
          <th scope="col">
            Read {stageNames[stage]}, {unit}
          </th>
        </tr>
      </thead>
      {sheet.items.map((item) => {
        const name = seriesName(item.characteristic, characteristics);
        const told = (checks?.series ?? [])
          .filter((one) => one.stage === stage && item.series.some(({ series }) => series === one.series))
          .flatMap((one) => conformitySentences(one, characteristics, entry.uom));
        return (
          <tbody key={item.characteristic}>
            <tr>
              <th scope="rowgroup" colSpan={4} className={styles.item}>
                {name}
                <span className={styles.notes}>
                  {itemNotes(item, stage, characteristics, entry.uom).join(' ')}
                </span>
              </th>
            </tr>
            {item.boxes.map((box) => (
              <BoxRow key={box.clock ?? ''} stage={stage} item={item} box={box} {...given} />
            ))}
            {told.length > 0 && (
              <tr>
                <td colSpan={4} className={styles.told}>
                  {told.map((sentence) => (
                    <p key={sentence}>{sentence}</p>
                  ))}
                </td>
              </tr>
            )}
          </tbody>
        );
      })}
    </table>
  );
}
