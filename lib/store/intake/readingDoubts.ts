import type { OnPiece } from '../../records/csv/cutCsv';
import type { QuestionList } from '../../records/intake/Answers';
import type { Connector } from '../Connector';
import { askAboutCopiedReadings } from './copiedReadings';
import { askAboutExchangedClocks } from './exchangedClocks';
import { askAboutExchangedStages } from './exchangedStages';
import { sizedReadingsSql } from './sizedReadings';

/** Asks what only the other readings of the unit and of its sisters bring into doubt, for the readings of the given files. */
export async function askAboutReadings(
  connector: Connector,
  files: Iterable<string>,
  questions: QuestionList,
  onPiece: OnPiece,
): Promise<void> {
  const foreign = new Set(files);
  if (foreign.size === 0) return;
  let isChanged = true;
  const doubts = [askAboutExchangedStages, askAboutExchangedClocks, askAboutCopiedReadings];
  for (const [place, ask] of doubts.entries()) {
    await onPiece(place / doubts.length);
    if (isChanged) await connector.run(sizedReadingsSql);
    isChanged = await ask(connector, foreign, questions);
  }
  await connector.run('DROP TABLE sized_readings; DROP TABLE frame_numbers');
}
