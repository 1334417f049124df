import { acknowledgement } from '../../../lib/records/decisions/acknowledgements';
import type { Decision } from '../../../lib/records/decisions/Decision';
import { rulingId } from '../../../lib/records/decisions/rulings';
import { readWorkspace } from '../../../lib/records/workspace/readWorkspace';
import { lineOf } from './keptInPage';

export interface Entry {
  readonly act: 'decided' | 'taken back';
  readonly decision: Decision;
}

/** What should be kept after acts that were acknowledged. */
export interface Expected {
  readonly files: ReadonlyMap<string, string>;
  readonly journal: readonly Entry[];
}

export const nothingYet: Expected = { files: new Map(), journal: [] };

/** Something a person does, as the calls the page makes for it. */
export interface Act {
  readonly name: 'note' | 'takeNotesBack' | 'decide' | 'addFiles' | 'openWorkspace' | 'saveWorkspace';
  /** A call that has to come before it and keeps nothing. */
  readonly first?: { readonly name: 'offerWorkspace'; readonly words: readonly unknown[] };
  readonly words: readonly unknown[];
  readonly opens: boolean;
  /** Every state in which it may leave what is kept when it is done as a whole. */
  readonly after: (before: Expected) => readonly Expected[];
}

/** Whole numbers from 0 to below a bound. */
export type Draw = (below: number) => number;

const withEntry =
  (...added: readonly Entry[]) =>
  (before: Expected): readonly Expected[] => [{ ...before, journal: [...before.journal, ...added] }];

/** The acts between which a person chooses at random; each one that decides says something that was never said before. */
export function nextAct(draw: Draw, count: number, before: Expected, saved: readonly Uint8Array[]): Act {
  const kind = draw(10);
  if (kind < 4) return noteAct(draw, count);
  if (kind < 5) return takeBackAct(draw, before) ?? noteAct(draw, count);
  if (kind < 7) return decideAct(draw, count);
  if (kind < 8) return { name: 'saveWorkspace', words: [''], opens: false, after: (state) => [state] };
  const workspace = kind === 8 ? saved[draw(Math.max(1, saved.length))] : undefined;
  return workspace === undefined ? addAct(draw, count) : openAct(workspace);
}

function noteAct(draw: Draw, count: number): Act {
  const about = { source: 'own', unit: `U-${draw(4)}`, series: 'runout', upTo: '2020-01-01' } as const;
  const decision = acknowledgement({ ...about, remark: `remark ${count}` });
  return { name: 'note', words: [[decision]], opens: false, after: withEntry({ act: 'decided', decision }) };
}

function takeBackAct(draw: Draw, { journal }: Expected): Act | null {
  const latest = new Map(journal.map((entry) => [entry.decision.id, entry]));
  const inForce = [...latest.values()].filter(({ act }) => act === 'decided');
  const taken = inForce[draw(Math.max(1, inForce.length))];
  if (taken === undefined) return null;
  const { decision } = taken;
  return {
    name: 'takeNotesBack',
    words: [[decision.id]],
    opens: false,
    after: withEntry({ act: 'taken back', decision }),
  };
}

function decideAct(draw: Draw, count: number): Act {
  const place = { file: `f${draw(4)}.csv`, line: 2, column: 'runout_found_mm' };
  const said = { raw: '0.031', ruling: 'edit', text: `0.0${30 + (count % 60)}`, by: '' } as const;
  const decision: Decision = {
    kind: 'ruling',
    id: rulingId(place),
    ...place,
    ...said,
    reason: `reason ${count}`,
  };
  return { name: 'decide', words: [[decision]], opens: true, after: withEntry({ act: 'decided', decision }) };
}

function addAct(draw: Draw, count: number): Act {
  const name = `f${draw(4)}.csv`;
  const text = `unit,date,unit_hours,runout_found_mm\nU-${count},2016-02-03,8000,0.031\nU-${count},2018-02-03,16000,0.034\n`;
  return {
    name: 'addFiles',
    words: [[{ name, bytes: { asBuffer: [...new TextEncoder().encode(text)] } }]],
    opens: true,
    // Where the demo fleet, or nothing yet, is open, adding starts afresh.
    after: ({ files, journal }) => [
      { files: new Map([...files].filter(([one]) => one !== name)).set(name, text), journal },
      { files: new Map([[name, text]]), journal },
    ],
  };
}

function openAct(workspace: Uint8Array): Act {
  const bytes = { asBuffer: [...workspace] };
  return {
    name: 'openWorkspace',
    first: { name: 'offerWorkspace', words: [bytes, ''] },
    words: [{ how: 'replace' }],
    opens: true,
    after: () => [contents.get(workspace) as Expected],
  };
}

const contents = new WeakMap<Uint8Array, Expected>();

/** Notes what a saved workspace holds, so that it can be opened again; throws if it cannot be read. */
export async function noteSaved(bytes: Uint8Array): Promise<Expected> {
  const { files, journal } = await readWorkspace(bytes);
  const content = {
    files: new Map(files.map((file) => [file.name, new TextDecoder().decode(file.bytes)])),
    journal: journal.map(({ act, decision }) => ({ act, decision })),
  };
  contents.set(bytes, content);
  return content;
}

/** An expected state as text that compares. */
export function textOf({ files, journal }: Expected): string {
  return stateText(
    files,
    journal.map(({ act, decision }) => lineOf(act, decision)),
  );
}

/** What is kept as text that compares. */
export function stateText(files: ReadonlyMap<string, string>, journal: readonly string[]): string {
  return JSON.stringify([[...files].sort(([a], [b]) => (a < b ? -1 : 1)), journal]);
}
