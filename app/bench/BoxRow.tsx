import { useId } from 'react';
import type { SheetBox, SheetItem, Stage } from '../../lib/analysis/bench/types';
import { NoValue } from '../table/NoValue';
import { expectedWords, lastLeftWords } from '../words/benchSheetWords';
import { boxWords, unitNames } from '../words/benchWords';
import { BoxDoubts } from './BoxDoubts';
import styles from './bench.module.css';
import type { StageTableProps } from './StageTable';
import { toNextBox } from './toNextBox';

interface BoxRowProps extends StageTableProps {
  readonly stage: Stage;
  readonly item: SheetItem;
  readonly box: SheetBox;
}

/** One reading: what was left, what is expected, the box to type in, and under it what is asked. */
export function BoxRow({ stage, item, box, entry, change, checks, characteristics }: BoxRowProps) {
  const doubtsId = useId();
  const name = box[stage];
  const text = entry.texts[name] ?? '';
  const check = checks?.boxes.find((one) => one.box === name) ?? null;
  const isAsked = text !== '' && check !== null && (check.doubts.length > 0 || check.unreadable !== null);
  const words = boxWords({ characteristic: item.characteristic, stage, clock: box.clock }, characteristics);
  const type = (typed: string) => {
    const { [name]: _, ...stands } = entry.stands;
    change({ texts: { ...entry.texts, [name]: typed }, stands });
  };
  const expected = expectedWords(box.expectedFound, entry.uom);
  return (
    <>
      <tr>
        <th scope="row">{box.clock === null ? 'reading' : `${box.clock} o’clock`}</th>
        <td className={styles.number}>{lastLeftWords(box.lastLeft_mm, entry.uom)}</td>
        {stage === 'found' && (
          <td className={styles.number}>
            {expected ?? <NoValue reason={item.reason ?? 'too little is known of the positions'} />}
          </td>
        )}
        <td className={styles.box}>
          <input
            aria-label={`${words}, ${unitNames[entry.uom]}`}
            aria-describedby={isAsked ? doubtsId : undefined}
            inputMode="decimal"
            enterKeyHint="next"
            autoComplete="off"
            autoCorrect="off"
            spellCheck={false}
            className={isAsked && entry.stands[name] !== text ? styles.asked : undefined}
            value={text}
            onChange={(event) => type(event.target.value)}
            onKeyDown={toNextBox}
          />
        </td>
      </tr>
      {isAsked && (
        <tr>
          <td colSpan={4} id={doubtsId} className={styles.doubts}>
            <BoxDoubts
              check={check}
              uom={entry.uom}
              stands={entry.stands[name] === text}
              onTake={type}
              onStands={() => change({ stands: { ...entry.stands, [name]: text } })}
            />
          </td>
        </tr>
      )}
    </>
  );
}
