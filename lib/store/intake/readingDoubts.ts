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
): Promise<void> {
  const foreign = new Set(files);
  if (foreign.size === 0) return;
  await connector.run(sizedReadingsSql);
  await askAboutExchangedStages(connector, foreign, questions);
  await askAboutExchangedClocks(connector, foreign, questions);
  await askAboutCopiedReadings(connector, foreign, questions);
}
