import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { defaultDecisionSettings } from '../../analysis/decisions/decisionsOf';
import { defaultSparesSettings } from '../../analysis/demand/sparesOf';
import { usualDriftSettings } from '../../analysis/drift/driftResult';
import { answerKey } from '../../analysis/engine/answerKey';
import { FleetAnswers } from '../../analysis/engine/FleetAnswers';
import type { FleetQuestion, QuestionWords } from '../../analysis/engine/FleetQuestions';
import { settingsOfOpening } from '../../analysis/engine/OpenFleet';
import { openAnalysis } from '../../analysis/openAnalysis';
import { wholeFleet } from '../../analysis/scope';
import { openNodeDatabase } from '../../store/nodeDatabase';

/** Writes a value as JSON, packed: the page unpacks it itself. */
function write(path: string, value: unknown): void {
  writeFileSync(path, gzipSync(JSON.stringify(value), { level: 9 }));
}

/**
 * Computes the answer of the demo fleet, and what its pages ask first, by the analysis that the page runs, and writes them
 * beside its files: a first visit sees them at once.
 */
async function prepareDemo(folder: string): Promise<void> {
  const names = readdirSync(folder).filter((name) => name.endsWith('.csv'));
  const files = names.map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(folder, name))) }));
  const database = await openNodeDatabase();
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
    write(join(folder, 'fleet.json.gz'), analysis.fleet);
    write(join(folder, 'answers.json.gz'), answers);
  } finally {
    await database.close();
  }
}

prepareDemo(join('public', 'demo')).catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.stack : error}\n`);
  process.exitCode = 1;
});
