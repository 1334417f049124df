import { beforeAll, describe, expect, it } from 'vitest';
import { Engine } from '../../../lib/analysis/engine/Engine';
import { seal } from '../../../lib/records/workspace/seal';
import { writeWorkspace } from '../../../lib/records/workspace/writeWorkspace';
import { savedAt, workspace } from '../../records/workspace/changedWorkspace';
import { hostileWorkspaces } from '../../records/workspace/hostileWorkspaces';
import { MemoryStore } from '../../support/memoryStore';

const silent = () => {};
const own = { ...workspace, files: [{ name: 'own.csv', bytes: new Uint8Array([1, 2, 3]) }] };

/** An engine with own files and a journal that nothing may touch; no data are read. */
function keptEngine() {
  const store = new MemoryStore();
  store.values = new Map<string, unknown>([...Object.entries(own), ['source', 'own']]);
  const engine = new Engine({
    openDatabase: () => Promise.reject(new Error('nothing is opened here')),
    demoFiles: async () => [],
    now: () => savedAt,
    store,
  });
  return { store, engine };
}

describe('a damaged or hostile workspace file is refused with its reason or opens as mere data, and leaves all as it was', () => {
  let kept: ReturnType<typeof keptEngine>;
  let before: ReadonlyMap<string, unknown>;
  const made = new Set<string>();
  beforeAll(() => {
    kept = keptEngine();
    before = structuredClone(kept.store.values);
  });

  it.each(hostileWorkspaces)('%s', async (_, make, comesTo) => {
    const { engine, store } = kept;
    const bytes = new Uint8Array(await make());
    made.add(Buffer.from(bytes).toString('latin1'));
    const offer = await engine.offerWorkspace(bytes.buffer, '');
    if (comesTo === 'opens') expect(offer).toMatchObject({ status: 'offered', files: 3 });
    else {
      expect(['refused', 'sealed']).toContain(offer.status);
      expect('message' in offer && offer.message).toMatch(comesTo);
      const opened = await engine.openWorkspace({ how: 'replace' }, silent);
      expect(opened).toMatchObject({
        ok: false,
        message: expect.stringContaining('choose the workspace file'),
      });
    }
    expect(store.values).toEqual(before);
    expect(store.writes).toEqual([]);
    expect(await engine.journal()).toEqual(own.journal);
    expect(await engine.ownFileNames()).toEqual(['own.csv']);
  });

  it('a sealed one with a wrong passphrase, a changed byte, or cut off', async () => {
    const { engine, store } = kept;
    const bytes = await seal(await writeWorkspace(workspace, savedAt), 'right');
    const changed = bytes.slice();
    changed[200] = (changed[200] as number) ^ 1;
    for (const one of [changed, bytes.slice(0, bytes.length - 5), bytes.slice(0, 40)]) {
      const offer = await engine.offerWorkspace(one.slice().buffer, 'right');
      expect(offer.status).not.toBe('offered');
    }
    expect((await engine.offerWorkspace(bytes.slice().buffer, 'wrong')).status).toBe('sealed');
    expect((await engine.offerWorkspace(bytes.slice().buffer, 'right')).status).toBe('offered');
    expect(store.values).toEqual(before);
  });

  it('there are at least 50 of them, no two the same bytes', () => {
    expect(hostileWorkspaces.length).toBeGreaterThanOrEqual(50);
    expect(made.size).toBe(hostileWorkspaces.length);
  });
});
