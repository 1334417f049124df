import { describe, expect, it, vi } from 'vitest';
import { defaultDecisionSettings } from '../../../lib/analysis/decisions/defaultDecisionSettings';
import type { PreparedAnswer } from '../../../lib/analysis/engine/AnswersBefore';
import { Engine } from '../../../lib/analysis/engine/Engine';
import { unpackFleet } from '../../../lib/analysis/engine/PackedFleet';
import { acknowledgement } from '../../../lib/records/decisions/acknowledgements';
import type { Decision } from '../../../lib/records/decisions/Decision';
import { rulingId } from '../../../lib/records/decisions/rulings';
import { countingDatabase } from '../../support/countingDatabase';
import { MemoryStore } from '../../support/memoryStore';
import { plainRows } from '../../support/plainRows';

const counted = countingDatabase();
const silent = () => {};
const head = 'unit,date,unit_hours,runout_found_mm\n';
const sheet = (unit: string) => ({
  name: `${unit}.csv`,
  bytes: new TextEncoder().encode(
    `${head}${unit},2016-02-03,8120,0.031\n${unit},2018-02-03,16000,O.034\n${unit},2020-02-03,24000,0.04\n`,
  ).buffer,
});

/** So that there is a margin to be kept: the page is given those of series with a limit. */
function limitFiles() {
  const texts = {
    units: 'unit,frame\nR-1,Lark\n',
    limits: 'frame,series,limit_kind,limit\nLark,runout,upper,0.06\n',
  };
  return Object.entries(texts).map(([table, text]) => ({
    name: `${table}.csv`,
    bytes: new TextEncoder().encode(text).buffer,
  }));
}

function engineOn(store: MemoryStore, version: string | null = 'one', demoAnswer?: PreparedAnswer): Engine {
  const demo = { name: 'demo.csv', bytes: new TextEncoder().encode(`${head}D-1,2016-02-03,8120,0.03\n`) };
  return new Engine({
    openDatabase: counted.openDatabase,
    demoFiles: async () => [demo],
    now: () => '2026-03-01T08:00:00.000Z',
    store,
    version,
    ...(demoAnswer === undefined ? {} : { demoAnswer }),
  });
}

async function lastFleetOf(engine: Engine) {
  const packed = await engine.lastFleet();
  if (packed === null) return null;
  const fleet = unpackFleet(packed);
  return { ...fleet, margins: plainRows(fleet.margins) };
}

const place = { file: 'R-1.csv', line: 3, column: 'runout_found_mm' };
const edit: Decision = {
  kind: 'ruling',
  id: rulingId(place),
  ...place,
  raw: 'O.034',
  ruling: 'edit',
  text: '0.034',
  reason: 'typing fault',
  by: '',
};
const remark = acknowledgement({
  source: 'own',
  unit: 'R-1',
  series: 'runout',
  upTo: '2020-02-03',
  remark: 'seen',
});

/** A store with one opened sheet, and the fleet that the page was given. */
async function opened() {
  const store = new MemoryStore();
  const engine = engineOn(store);
  const outcome = await engine.addFiles([sheet('R-1'), ...limitFiles()], silent);
  if (!outcome.ok) throw new Error(outcome.message);
  await vi.waitFor(() => expect(store.values.get('last answer')).toBeTruthy());
  return { store, engine, fleet: outcome.fleet };
}

/** Puts an older answer back once the one that was made since is kept, so that nothing comes after it. */
async function putBack(store: MemoryStore, older: unknown): Promise<void> {
  await vi.waitFor(() => {
    const kept = store.values.get('last answer');
    expect(kept !== older && Boolean(kept)).toBe(true);
  });
  store.values.set('last answer', older);
}

describe('the answer of last time', () => {
  it('is given to the last digit before anything is computed', async () => {
    const { store, fleet } = await opened();
    const before = counted.connections;
    expect(await lastFleetOf(engineOn(store))).toEqual(fleet);
    expect(counted.connections).toBe(before);
  });

  it('is at the page before large files are on the disk; what is asked of it waits until they are', async () => {
    const store = new MemoryStore();
    let release = () => {};
    store.beforeWrite = () =>
      new Promise((resolve) => {
        release = resolve;
      });
    const engine = engineOn(store);
    expect(await engine.addFiles([sheet('R-1'), ...limitFiles()], silent)).toMatchObject({ ok: true });
    expect([store.writes, (await engine.keptState(0)).saving]).toEqual([[], 'saving']);
    let isAnswered = false;
    const asked = engine.ask('decisions', [defaultDecisionSettings]).then((answer) => {
      isAnswered = true;
      return answer;
    });
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(isAnswered).toBe(false);
    store.beforeWrite = async () => {};
    release();
    expect(await asked).not.toHaveLength(0);
    expect(store.writes[0]).toContain('files');
    expect((await engine.keptState(0)).saving).toBe('saved');
  });

  it('stands after a remark, and is that of the new decisions after a decision about readings', async () => {
    const { store, engine, fleet } = await opened();
    await engine.note([remark]);
    expect(await lastFleetOf(engineOn(store))).toEqual(fleet);
    const decided = await engine.decide([edit], silent);
    if (!decided.ok) throw new Error(decided.message);
    await vi.waitFor(async () => expect(await lastFleetOf(engineOn(store))).toEqual(decided.fleet));
    expect(decided.fleet.files[0]?.readingsUsed).toBe((fleet.files[0]?.readingsUsed ?? 0) + 1);
  });

  it('is not given once a decision was made that it was not computed with', async () => {
    const { store, engine } = await opened();
    const keep = store.values.get('last answer');
    await engine.decide([edit], silent);
    await putBack(store, keep);
    expect(await lastFleetOf(engineOn(store))).toBeNull();
  });

  it('is not given for other files, nor by another version of the site, nor where there is no version', async () => {
    const { store, engine } = await opened();
    const keep = store.values.get('last answer');
    expect(await engineOn(store, 'two').lastFleet()).toBeNull();
    expect(await engineOn(store, null).lastFleet()).toBeNull();
    await engine.addFiles([sheet('R-2')], silent);
    await putBack(store, keep);
    expect(await lastFleetOf(engineOn(store))).toBeNull();
  });

  it('goes with the files', async () => {
    const { store, engine } = await opened();
    await engine.forgetOwn(silent);
    expect(store.values.get('last answer')).toBeNull();
    expect(await lastFleetOf(engineOn(store))).toBeNull();
  });

  it('where the demo fleet was open last is the one prepared of it, with the answers to first questions', async () => {
    const { store, engine, fleet } = await opened();
    await engine.openDemo(silent);
    const prepared = { ...fleet, source: 'demo' } as const;
    const next = engineOn(store, 'one', {
      fleet: async () => prepared,
      answers: async () => ({ '["sisters","frame"]': 'prepared' }),
    });
    expect(await lastFleetOf(next)).toEqual(prepared);
    expect(await next.ask('sisters', ['frame'])).toBe('prepared');
    expect(await next.ask('sisters', ['frame+site'])).toBeUndefined();
    await next.openDemo(silent);
    expect(await next.ask('sisters', ['frame'])).toMatchObject({ groupBy: 'frame' });
  });

  it('is missing without a word where the store or the site refuses', async () => {
    const { store } = await opened();
    store.fault = new Error('refused');
    expect(await lastFleetOf(engineOn(store))).toBeNull();
    const missing = () => Promise.reject(new Error('404'));
    expect(
      await engineOn(new MemoryStore(), 'one', { fleet: missing, answers: missing }).lastFleet(),
    ).toBeNull();
  });
});
