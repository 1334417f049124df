import type { FleetResult, UnderstoodSheet } from '../../lib/analysis/types';
import { ScrollBox } from '../table/ScrollBox';
import { Written } from '../table/Written';
import { columnWords, surenessWords } from '../words/columnWords';
import { counted } from '../words/counted';
import styles from './records.module.css';

interface UnderstoodSheetsProps {
  readonly sheets: readonly UnderstoodSheet[];
  readonly characteristics: FleetResult['characteristics'];
}

/** A sheet's line in short: how many of its columns are used. */
function columnsUsed({ columns }: UnderstoodSheet): string {
  const used = columns.filter((column) => column.role !== 'unused').length;
  return `${used} of ${counted(columns.length, 'column')} used`;
}

/** What every column of the workshops' sheets was read as, by which evidence, and how sure that is. */
export function UnderstoodSheets({ sheets, characteristics }: UnderstoodSheetsProps) {
  if (sheets.length === 0) return null;
  return (
    <>
      <h2>How the sheets were understood</h2>
      {sheets.map((sheet, index) => {
        const captionId = `sheet-${index}`;
        return (
          <details key={sheet.file}>
            <summary>
              {sheet.file}: {columnsUsed(sheet)}
            </summary>
            <ScrollBox labelledBy={captionId}>
              <table>
                <caption id={captionId}>Columns of {sheet.file}, in the order of the file</caption>
                <thead>
                  <tr>
                    <th scope="col">Name in the file</th>
                    <th scope="col">Read as</th>
                    <th scope="col">How sure</th>
                    <th scope="col">Evidence</th>
                  </tr>
                </thead>
                <tbody>
                  {[...sheet.columns]
                    .sort((a, b) => a.index - b.index)
                    .map((column) => (
                      <tr key={column.index}>
                        <th scope="row">
                          <span className={styles.name}>
                            <Written text={column.name} reason="the column has no name" />
                          </span>
                        </th>
                        <td>
                          <span className={styles.meaning}>{columnWords(column, characteristics)}</span>
                        </td>
                        <td>{surenessWords(column.sureness)}</td>
                        <td className="text">
                          <Written text={column.evidence} reason="nothing speaks for a use" />
                        </td>
                      </tr>
                    ))}
                </tbody>
              </table>
            </ScrollBox>
          </details>
        );
      })}
    </>
  );
}
