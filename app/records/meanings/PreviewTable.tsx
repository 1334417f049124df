import { useId } from 'react';
import type { PreviewLine, SheetPreview } from '../../../lib/analysis/engine/EngineApi';
import { ScrollBox } from '../../table/ScrollBox';
import { counted } from '../../words/counted';
import { lineWords, previewProblemWords, previewReadingWords } from '../../words/previewWords';
import styles from './meanings.module.css';

interface Keyed {
  readonly key: string;
  readonly words: string;
}

/** Texts of a list with keys of their own, since the same text may stand in it twice. */
function keyed(texts: readonly string[]): readonly Keyed[] {
  return texts.map((words, place) => ({ key: `${place} ${words}`, words }));
}

function Outcome({ line, preview }: { readonly line: PreviewLine; readonly preview: SheetPreview }) {
  const job = lineWords(line);
  const readings = keyed(previewReadingWords(line.readings, preview.sheet.characteristics));
  const wordsOf = (action: 'held' | 'interpreted') =>
    keyed(line.problems.filter((problem) => problem.action === action).map(previewProblemWords));
  const [held, interpreted] = [wordsOf('held'), wordsOf('interpreted')];
  if (preview.sheet.reason !== null) return <>not read</>;
  if (job === null && readings.length + line.problems.length === 0) return <>nothing comes of it</>;
  return (
    <>
      {job !== null && <strong>{job}</strong>}
      <ul className={styles.outcome}>
        {readings.map(({ key, words }) => (
          <li key={key}>{words}</li>
        ))}
        {held.map(({ key, words }) => (
          <li key={key} className={styles.problem}>
            {words}
          </li>
        ))}
      </ul>
      {interpreted.length > 0 && (
        <details>
          <summary>{counted(interpreted.length, 'note')} on how it was read</summary>
          <ul className={styles.outcome}>
            {interpreted.map(({ key, words }) => (
              <li key={key}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** The first lines of the file as they are cut, and what comes of each. */
export function PreviewTable({ preview }: { readonly preview: SheetPreview }) {
  const captionId = useId();
  return (
    <ScrollBox labelledBy={captionId}>
      <table className={styles.preview}>
        <caption id={captionId}>The first lines as cut into cells, and what comes of them</caption>
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">In the file</th>
            <th scope="col">Comes to</th>
          </tr>
        </thead>
        <tbody>
          {preview.lines.map((line) => (
            <tr key={line.line}>
              <th scope="row">
                <span className={styles.lineWord}>Line </span>
                {line.line}
              </th>
              <td>
                <span className={styles.cells}>
                  {keyed(line.cells).map(({ key, words }) => (
                    <span key={key}>{words}</span>
                  ))}
                </span>
              </td>
              <td>
                <Outcome line={line} preview={preview} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
