import type { EngineApi, EngineOpenings, OpenOutcome } from './EngineApi';
import { packOutcome } from './PackedFleet';
import { packAnswer } from './packedAnswer';

/** Calls that end with an outcome. */
const openings: Readonly<Record<keyof EngineOpenings, true>> = {
  open: true,
  openDemo: true,
  openOwn: true,
  addFiles: true,
  removeFiles: true,
  decide: true,
  takeBack: true,
  undo: true,
  redo: true,
  forgetOwn: true,
  openWorkspace: true,
  takeOver: true,
};

type Call = (...words: readonly unknown[]) => Promise<unknown>;

/** The engine as a page calls it: what an opening came to and long answers are packed, since a large result is long in being copied row by row. */
export function forPage(engine: EngineApi): Readonly<Record<string, Call>> {
  const calls = Object.entries(engine as unknown as Record<string, Call>);
  return Object.fromEntries(
    calls.map(([name, call]): [string, Call] => {
      if (Object.hasOwn(openings, name))
        return [name, async (...words) => packOutcome((await call(...words)) as OpenOutcome)];
      if (name === 'ask')
        return [name, async (question, ...words) => packAnswer(question, await call(question, ...words))];
      return [name, call];
    }),
  );
}
