import { writeCsv } from '../../../lib/records/csv/writeCsv';
import type { JournalEntry } from '../../../lib/records/decisions/Decision';
import { aboutWords, actWords, afterWords, beforeWords } from '../../words/rulingWords';

const header = ['number', 'at', 'by', 'act', 'kind', 'about', 'before', 'after'] as const;
/** Tells a spreadsheet that the text is UTF-8. */
const byteOrderMark = '\uFEFF';

/** The journal as CSV for a spreadsheet, in the order given. */
export function journalCsv(entries: readonly JournalEntry[]): string {
  const rows = entries.map((entry) => [
    entry.number,
    entry.at,
    entry.by,
    actWords(entry),
    entry.decision.kind,
    aboutWords(entry.decision),
    beforeWords(entry),
    afterWords(entry),
  ]);
  return byteOrderMark + writeCsv(header, rows);
}
