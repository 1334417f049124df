import type { Characteristic } from '../../records/characteristics';
import type { OnPiece } from '../../records/csv/cutCsv';
import type { Decision } from '../../records/decisions/Decision';
import { meaningsOf } from '../../records/decisions/journal';
import { rulingsOf } from '../../records/decisions/rulings';
import type { InputFile } from '../../records/importReport';
import type { QuestionList } from '../../records/intake/Answers';
import { decodeText } from '../../records/intake/decodeText';
import { recogniseLayout } from '../../records/intake/recogniseLayout';
import { recogniseFile } from '../../records/recogniseFile';
import type { Connector } from '../Connector';
import { type LoadedFile, loadFile } from '../loadFile';
import type { PlainFiles } from '../PlainFiles';
import { type TranslatedSheet, translateSheet } from './translateSheet';

/**
 * Reads one file: a canonical table or sheet by its names, any other sheet by what its words and values mean.
 *
 * @param plainFiles takes in a file that may be read with others: to be read when all have come
 */
export async function understandFile(
  connector: Connector,
  file: InputFile,
  characteristics: readonly Characteristic[],
  questions: QuestionList,
  plainFiles: PlainFiles,
  decisions: readonly Decision[] = [],
  onPiece: OnPiece = async () => {},
): Promise<LoadedFile | TranslatedSheet> {
  const decoded = decodeText(file.bytes);
  if ('reason' in decoded) return unread(file.name, decoded.reason);
  const canonical = recogniseFile(decoded.bytes, characteristics);
  if (canonical.kind !== 'none') {
    const isRuled = rulingsOf(decisions).some((ruling) => ruling.file === file.name);
    const text = { name: file.name, bytes: decoded.bytes };
    return loadFile(connector, text, canonical, isRuled, plainFiles, onPiece);
  }
  const layout = recogniseLayout(decoded.bytes);
  if ('reason' in layout) return unread(file.name, layout.reason);
  await plainFiles.read();
  return translateSheet(
    connector,
    { name: file.name, bytes: decoded.bytes, layout, characteristics, decided: meaningsOf(decisions) },
    questions,
    onPiece,
  );
}

function unread(name: string, message: string): LoadedFile {
  return { name, recognised: { kind: 'none', message }, rowsIn: 0, held: [], message };
}
