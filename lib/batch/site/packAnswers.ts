import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { firstPaint } from '../../../app/fleet/firstPaint';
import { defaultDecisionSettings } from '../../analysis/decisions/defaultDecisionSettings';
import { defaultSparesSettings } from '../../analysis/demand/defaultSparesSettings';
import { usualDriftSettings } from '../../analysis/drift/driftResult';
import { answerKey } from '../../analysis/engine/answerKey';
import { FleetAnswers } from '../../analysis/engine/FleetAnswers';
import type { FleetQuestion, QuestionWords } from '../../analysis/engine/FleetQuestions';
import { settingsOfOpening } from '../../analysis/engine/OpenFleet';
import { openAnalysis } from '../../analysis/openAnalysis';
import { wholeFleet } from '../../analysis/scope';
import type { InputFile } from '../../records/importReport';
import { openNodeDatabase } from '../../store/nodeDatabase';
import { firstPaintName } from './paintFirst.mjs';

/**
 * Computes the answer of the fleet that comes with a site, and what its pages ask first, by the analysis that the page runs, and
 * writes them packed into the folder of its files: a first visit sees them at once. What the page itself is to carry lies beside them.
 *
 * @throws NoUsableReadings if no reading of the files can be used
 */
export async function packAnswers(files: readonly InputFile[], folder: string): Promise<void> {
  // With several threads the last bits of sums, and so of results, differ from run to run.
  const database = await openNodeDatabase({ threads: 1 });
  try {
    const connector = await database.connect();
    const analysis = await openAnalysis(connector, files, 'demo', settingsOfOpening([]), async () => {});
    const fleet = new FleetAnswers(analysis, async () => {});
    const answers: Record<string, unknown> = {};
    const answer = async <Name extends FleetQuestion>(question: Name, ...words: QuestionWords<Name>) => {
      const ask = fleet[question] as (...given: QuestionWords<Name>) => Promise<unknown>;
      answers[answerKey(question, words)] = await ask.apply(fleet, words);
    };
    await answer('decisions', defaultDecisionSettings);
    await answer('drift', usualDriftSettings);
    await answer('spares', defaultSparesSettings);
    await answer('sisters', 'frame');
    await answer('report', {
      scope: wholeFleet,
      asOf: analysis.fleet.asOf,
      since: null,
      spares: defaultSparesSettings,
      drift: usualDriftSettings,
    });
    await writeFile(join(folder, firstPaintName), JSON.stringify(await firstPaint(analysis.fleet)));
    await write(join(folder, 'fleet.json.gz'), analysis.fleet);
    await write(join(folder, 'answers.json.gz'), answers);
  } finally {
    await database.close();
  }
}

/** Writes a value as JSON, packed: the page unpacks it itself. */
function write(path: string, value: unknown): Promise<void> {
  return writeFile(path, gzipSync(JSON.stringify(value), { level: 9 }));
}
