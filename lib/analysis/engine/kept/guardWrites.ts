import type { EngineApi } from '../EngineApi';
import { failure } from '../failure';
import { LooksOn } from './LooksOn';

/** Whether a call changes what is kept in this browser; an opening that does so ends with an outcome in words. */
const calls: Readonly<Record<keyof EngineApi, 'looks' | 'opens and writes' | 'writes'>> = {
  lastFleet: 'looks',
  open: 'looks',
  openDemo: 'looks',
  openOwn: 'looks',
  takeOver: 'looks',
  cancel: 'looks',
  addFiles: 'opens and writes',
  removeFiles: 'opens and writes',
  decide: 'opens and writes',
  takeBack: 'opens and writes',
  undo: 'opens and writes',
  redo: 'opens and writes',
  forgetOwn: 'opens and writes',
  openWorkspace: 'opens and writes',
  note: 'writes',
  takeNotesBack: 'writes',
  undoNotes: 'writes',
  redoNotes: 'writes',
  signAs: 'writes',
  preview: 'looks',
  effect: 'looks',
  stopEffect: 'looks',
  journal: 'looks',
  heldRows: 'looks',
  fileLine: 'looks',
  initials: 'looks',
  saveWorkspace: 'looks',
  offerWorkspace: 'looks',
  ownFileNames: 'looks',
  keptState: 'looks',
  ask: 'looks',
};

type Call = (...words: readonly unknown[]) => Promise<unknown>;

/** The engine with every call that writes refused while another tab writes. */
export function guardWrites(engine: EngineApi, mayWrite: () => Promise<boolean>): EngineApi {
  const guarded = Object.entries(calls).map(([name, kind]): [string, Call] => {
    const call: Call = (...words) =>
      (engine as unknown as Record<string, Call>)[name]?.(...words) as Promise<unknown>;
    if (kind === 'looks') return [name, call];
    return [
      name,
      async (...words) => {
        if (await mayWrite()) return call(...words);
        if (kind === 'writes') throw new LooksOn();
        return failure(new LooksOn(), true);
      },
    ];
  });
  return Object.fromEntries(guarded) as unknown as EngineApi;
}
