import { transfer } from 'comlink';
import type { EngineApi, EngineOpenings, OpenOutcome } from './EngineApi';
import { type PackedOutcome, packOutcome } from './PackedFleet';
import { packAnswer } from './packedAnswer';
import { buffersOf } from './packedRows';

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

/** The outcome packed, its memory handed over. */
function handedOver(outcome: OpenOutcome): PackedOutcome {
  const packed = packOutcome(outcome);
  const rows = packed.ok ? [packed.fleet.units, packed.fleet.margins] : [];
  return transfer(packed, rows.flatMap(buffersOf));
}

type Call = (...words: readonly unknown[]) => Promise<unknown>;

/** The engine as a page calls it: what an opening came to and long answers are packed, since a large result is long in being copied row by row. */
export function forPage(engine: EngineApi): Readonly<Record<string, Call>> {
  const calls = Object.entries(engine as unknown as Record<string, Call>);
  return Object.fromEntries(
    calls.map(([name, call]): [string, Call] => {
      if (Object.hasOwn(openings, name))
        return [name, async (...words) => handedOver((await call(...words)) as OpenOutcome)];
      if (name === 'ask')
        return [name, async (question, ...words) => packAnswer(question, await call(question, ...words))];
      return [name, call];
    }),
  );
}
