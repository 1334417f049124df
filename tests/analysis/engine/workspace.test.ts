import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Engine } from '../../../lib/analysis/engine/Engine';
import type { OpenOutcome } from '../../../lib/analysis/engine/EngineApi';
import { guardWrites } from '../../../lib/analysis/engine/kept/guardWrites';
import type { OfferedWorkspace } from '../../../lib/analysis/engine/workspace/WorkspaceOffer';
import { acknowledgement } from '../../../lib/records/decisions/acknowledgements';
import type { Decision } from '../../../lib/records/decisions/Decision';
import { rulingId } from '../../../lib/records/decisions/rulings';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { MemoryStore } from '../../support/memoryStore';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const silent = () => {};
const head = 'unit,date,unit_hours,runout_found_mm\n';
const sheet = (name: string, ...rows: string[]) => ({
  name,
  bytes: new TextEncoder().encode(`${head}${rows.join('\n')}\n`).buffer,
});
const ofR1 = () =>
  sheet('r.csv', 'R-1,2016-02-03,8120,0.031', 'R-1,2018-02-03,16000,O.034', 'R-1,2020-02-03,24000,0.04');
const ofR2 = () =>
  sheet('r.csv', 'R-2,2016-05-03,8000,0.03', 'R-2,2018-05-03,16100,x', 'R-2,2020-05-03,24100,0.038');

interface Seat {
  readonly engine: Engine;
  readonly store: MemoryStore;
  at: string;
}

function seat(store = new MemoryStore()): Seat {
  const seated = { store, at: '2026-03-01T08:00:00.000Z' };
  const engine = new Engine({
    openDatabase: async () => database,
    demoFiles: async () => [
      { name: 'demo.csv', bytes: new TextEncoder().encode(`${head}D-1,2016-02-03,8120,0.03\n`) },
    ],
    now: () => seated.at,
    store,
  });
  return Object.assign(seated, { engine });
}

function edit(file: string, text: string, raw = 'O.034'): Decision {
  const place = { file, line: 3, column: 'runout_found_mm' };
  const said = { ruling: 'edit', text, reason: 'typing fault', by: '' } as const;
  return { kind: 'ruling', id: rulingId(place), ...place, raw, ...said };
}
const noted = (source: 'demo' | 'own', remark: string) =>
  acknowledgement({ source, unit: 'R-1', series: 'runout', upTo: '2020-02-03', remark });

const used = (outcome: OpenOutcome) =>
  outcome.ok
    ? outcome.fleet.files.map(({ file, readingsUsed }) => `${file}: ${readingsUsed}`)
    : outcome.message;

async function offered(to: Seat, bytes: Uint8Array, passphrase = ''): Promise<OfferedWorkspace> {
  const offer = await to.engine.offerWorkspace(bytes.slice().buffer, passphrase);
  if (offer.status !== 'offered') throw new Error(offer.message);
  return offer;
}

/** One engineer's work, done once: a file, a corrected cell, remarks on own data and on the demo fleet. */
let done: Seat;
beforeAll(async () => {
  done = seat();
  await done.engine.signAs('AB');
  await done.engine.addFiles([ofR1()], silent);
  await done.engine.decide([edit('r.csv', '0.034')], silent);
  await done.engine.note([noted('own', 'seen'), noted('demo', 'tried')]);
});

/** The same work in a browser of its own, not opened yet. */
function worked(): Seat {
  const store = new MemoryStore();
  store.values = structuredClone(done.store.values);
  return seat(store);
}

describe('a workspace file, opened', () => {
  it('in an empty browser is what was saved, remarks on the demo fleet with it', async () => {
    const one = done;
    const bytes = await one.engine.saveWorkspace('two words');
    const other = seat();
    await other.engine.openDemo(silent);
    expect((await other.engine.offerWorkspace(bytes.slice().buffer, '')).status).toBe('sealed');
    const offer = await offered(other, bytes, 'two words');
    expect([offer.files, offer.entries, offer.own]).toEqual([1, 3, { files: 0, entries: 0 }]);
    expect(other.store.writes).toEqual([]);
    expect(used(await other.engine.openWorkspace({ how: 'replace' }, silent))).toEqual(['r.csv: 3']);
    expect(await other.engine.journal()).toEqual(await one.engine.journal());
    expect(await other.engine.heldRows()).toBe(await one.engine.heldRows());
    expect(other.store.writes).toEqual([['files', 'journal', 'source', 'files mark', 'last answer']]);
    expect(used(await seat(other.store).engine.open(silent))).toEqual(['r.csv: 3']);
  });

  it('in place of own files takes all of theirs; refused, or without a usable reading, none', async () => {
    const one = worked();
    const before = new Map(one.store.values);
    const empty = seat();
    await empty.engine.addFiles([sheet('none.csv', 'R-9,2016-02-03,1,O')], silent);
    const unusable = await empty.engine.saveWorkspace('');
    await offered(one, unusable);
    const refused = await one.engine.openWorkspace({ how: 'replace' }, silent);
    expect(refused).toMatchObject({ ok: false, files: [], message: expect.stringContaining('as they were') });
    const damaged = unusable.slice(0, unusable.length / 2);
    expect((await one.engine.offerWorkspace(damaged.buffer, '')).status).toBe('refused');
    expect(await one.engine.openWorkspace({ how: 'replace' }, silent)).toMatchObject({ ok: false });
    expect(one.store.values).toEqual(before);
    expect(await one.engine.heldRows()).not.toContain('none.csv');

    const other = seat();
    await other.engine.addFiles([ofR2()], silent);
    await offered(one, await other.engine.saveWorkspace(''));
    expect(used(await one.engine.openWorkspace({ how: 'replace' }, silent))).toEqual(['r.csv: 2']);
    expect(await one.engine.journal()).toEqual([]);
  });

  it('without files and with remarks on the demo fleet opens the demo fleet with them', async () => {
    const one = seat();
    await one.engine.openDemo(silent);
    await one.engine.note([noted('demo', 'tried')]);
    const other = worked();
    await offered(other, await one.engine.saveWorkspace(''));
    const opened = await other.engine.openWorkspace({ how: 'replace' }, silent);
    expect(opened.ok && opened.fleet.source).toBe('demo');
    expect(await other.engine.ownFileNames()).toEqual([]);
    expect((await other.engine.journal()).map(({ decision }) => decision)).toEqual([noted('demo', 'tried')]);
  });
});

describe('a workspace file, merged', () => {
  it('adds their files under names of their own with the decisions about them, and asks where both differ', async () => {
    const one = worked();
    const other = seat();
    other.at = '2026-03-02T08:00:00.000Z';
    await other.engine.signAs('CD');
    await other.engine.addFiles([ofR2()], silent);
    await other.engine.decide([edit('r.csv', '0.033', 'x')], silent);
    await other.engine.note([noted('own', 'all right')]);
    const bytes = await other.engine.saveWorkspace('');

    const offer = await offered(one, bytes);
    expect(offer.merge.added).toEqual(['r (2).csv']);
    expect(offer.merge.renamed).toEqual([{ name: 'r.csv', as: 'r (2).csv' }]);
    expect(offer.merge.conflicts.map(({ ours, theirs, later }) => [ours.by, theirs.by, later])).toEqual([
      ['AB', 'CD', 'theirs'],
    ]);
    const id = noted('own', '').id;
    const merged = await one.engine.openWorkspace({ how: 'merge', choices: [[id, 'ours']] }, silent);
    expect(used(merged)).toEqual(['r.csv: 3', 'r (2).csv: 3']);
    const last = (await one.engine.journal()).filter(({ decision }) => decision.id === id).at(-1);
    expect(last).toMatchObject({ by: 'AB', decision: { remark: 'seen' }, before: { remark: 'all right' } });

    // Merged a second time it brings nothing and asks nothing.
    const again = await offered(one, bytes);
    expect(again.merge).toMatchObject({ added: [], conflicts: [] });
    const journal = await one.engine.journal();
    await one.engine.openWorkspace({ how: 'merge', choices: [] }, silent);
    expect(await one.engine.journal()).toEqual(journal);
  });
});

describe('what a tab dies of', () => {
  it('in the middle of reading leaves the decision that was made, and no file half added', async () => {
    const one = seat();
    await one.engine.addFiles([ofR1()], silent);
    const died = new Promise<MemoryStore>((resolve) => {
      const copy = () => {
        const left = new MemoryStore();
        left.values = new Map(structuredClone(one.store.values));
        resolve(left);
      };
      void one.engine.decide([edit('r.csv', '0.034')], ({ share }) => share > 0.3 && copy());
    });
    const next = seat(await died);
    expect((await next.engine.journal()).length).toBe(1);
    expect(used(await next.engine.open(silent))).toEqual(['r.csv: 3']);

    const adding = new Promise<ReadonlyMap<string, unknown>>((resolve) => {
      void next.engine.addFiles([{ ...ofR2(), name: 'new.csv' }], ({ share }) => {
        if (share > 0.3) resolve(new Map(structuredClone(next.store.values)));
      });
    });
    expect(((await adding).get('files') as { name: string }[]).map(({ name }) => name)).toEqual(['r.csv']);
  });
});

describe('a tab that looks on', () => {
  it('is refused every call that writes, in words, and answers all others', async () => {
    const { engine } = worked();
    const guarded = guardWrites(engine, async () => false);
    const journal = await engine.journal();
    const refused = await guarded.decide([edit('r.csv', '0.035')], silent);
    expect(refused).toMatchObject({ ok: false, message: expect.stringContaining('another tab') });
    await expect(guarded.note([noted('own', 'more')])).rejects.toThrow('another tab of this browser writes');
    expect(await guarded.addFiles([ofR2()], silent)).toMatchObject({ ok: false });
    expect(await engine.journal()).toEqual(journal);
    expect((await guarded.openDemo(silent)).ok).toBe(true);
    expect(used(await guarded.openOwn(silent))).toEqual(['r.csv: 3']);
    expect(await guarded.journal()).toEqual(journal);
  });
});
