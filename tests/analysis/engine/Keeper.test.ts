import { describe, expect, it } from 'vitest';
import { Keeper } from '../../../lib/analysis/engine/kept/Keeper';
import { OnlyTab, type Tabs, type TabsListener } from '../../../lib/analysis/engine/kept/Tabs';
import { acknowledgement } from '../../../lib/records/decisions/acknowledgements';
import { withDecisions } from '../../../lib/records/decisions/journal';
import { MemoryStore } from '../../support/memoryStore';

const now = () => '2026-03-01T08:00:00.000Z';
const keeperOn = (store: MemoryStore, tabs: Tabs = new OnlyTab()) => new Keeper(store, tabs, now);
const file = (name: string) => ({ name, bytes: new TextEncoder().encode(name) });
const journalOf = (...units: string[]) =>
  units.reduce(
    (journal, unit) =>
      withDecisions(
        journal,
        [acknowledgement({ source: 'own', unit, series: 'runout', upTo: '2020-01-01', remark: 'seen' })],
        { at: now(), by: 'AB' },
      ),
    [] as ReturnType<typeof withDecisions>,
  );

describe('what a person brought in and decided', () => {
  it('is kept in one write an act, and what is the same is not written again', async () => {
    const store = new MemoryStore();
    const keeper = keeperOn(store);
    const files = [file('a.csv')];
    expect(await keeper.keep({ files, journal: journalOf('A'), source: 'own' })).toBe('kept');
    expect(store.writes).toEqual([['files', 'journal', 'source', 'files mark', 'last answer']]);
    expect(await keeper.keep({ files: [...files], source: 'own' })).toBe('kept');
    expect(store.writes.length).toBe(1);
    const next = keeperOn(store);
    expect(await next.get('files')).toEqual(files);
    expect(await next.get('journal')).toEqual(journalOf('A'));
    expect(await next.get('source')).toBe('own');
  });

  it('is said to be saved only once it is', async () => {
    const store = new MemoryStore();
    const keeper = keeperOn(store);
    let finish = () => {};
    store.beforeWrite = () => new Promise((resolve) => (finish = resolve));
    const before = await keeper.state(0);
    let isKept = false;
    const keeping = keeper.keep({ journal: journalOf('A') }).then(() => (isKept = true));
    const during = await keeper.state(before.number);
    expect([during.saving, during.entries, isKept]).toEqual(['saving', 1, false]);
    expect(store.values.size).toBe(0);
    finish();
    await keeping;
    expect((await keeper.state(during.number)).saving).toBe('saved');
  });

  it('is held and said not to be kept where storage is full, and kept with the next act that finds room', async () => {
    const store = new MemoryStore();
    const keeper = keeperOn(store);
    await keeper.get('files');
    store.fault = new DOMException('no room', 'QuotaExceededError');
    expect(await keeper.keep({ files: [file('a.csv')] })).toBe('not kept');
    const { saving, notKept, files } = await keeper.state(0);
    expect([saving, notKept, files]).toEqual(['not saved', { cause: 'full', detail: 'no room' }, 1]);
    expect(await keeper.get('files')).toEqual([file('a.csv')]);
    store.fault = null;
    expect(await keeper.keep({ journal: journalOf('A') })).toBe('kept');
    expect(store.writes).toEqual([['files', 'journal', 'files mark', 'last answer']]);
    expect((await keeper.state(0)).notKept).toBeNull();
  });

  it('is said at once not to be kept in a browser that refuses', async () => {
    const store = new MemoryStore();
    store.fault = new Error('not allowed here');
    const { saving, notKept } = await keeperOn(store).state(0);
    expect([saving, notKept?.cause, notKept?.detail]).toEqual(['not saved', 'refused', 'not allowed here']);
  });
});

describe('a kept value that cannot be read', () => {
  const damaged = new Map<string, unknown>([
    ['journal', [journalOf('A', 'B')[0], { number: 2, what: 'older' }, journalOf('A', 'B')[1]]],
    ['files', 'no list'],
    ['source', 'own'],
  ]);

  it('is said, used as far as it can be read, and lies aside unchanged before anything is written over it', async () => {
    const store = new MemoryStore();
    store.values = new Map(damaged);
    const keeper = keeperOn(store);
    expect((await keeper.get('journal')).map(({ number, decision }) => [number, decision.id])).toEqual(
      journalOf('A', 'B').map(({ decision }, index) => [index + 1, decision.id]),
    );
    expect(await keeper.get('files')).toEqual([]);
    const { aside } = await keeper.state(0);
    expect(aside.map(({ name, parts }) => [name, parts])).toEqual([
      ['journal', 1],
      ['files', null],
    ]);
    expect(store.values).toEqual(damaged);
    await keeper.keep({ journal: journalOf('C') });
    expect(store.values.get(`set aside journal ${now()}`)).toEqual(damaged.get('journal'));
    expect(store.values.get(`set aside files ${now()}`)).toBe('no list');
    expect(store.values.get('journal')).toEqual(journalOf('C'));
  });
});

/** A tab among others of which the test says whether it writes. */
class TestTab implements Tabs {
  takenOver = false;
  listener: TabsListener | null = null;
  others: TestTab[] = [];
  constructor(public writes: boolean) {}
  async join(listener: TabsListener): Promise<void> {
    this.listener = listener;
  }
  async takeOver(): Promise<void> {
    for (const other of this.others) {
      await other.listener?.idle();
      other.writes = false;
      other.takenOver = true;
    }
    this.writes = true;
  }
  written(): void {
    for (const other of this.others) other.listener?.onWritten();
  }
}

function twoTabs() {
  const store = new MemoryStore();
  const [one, other] = [new TestTab(true), new TestTab(false)];
  one.others = [other];
  other.others = [one];
  return { store, writer: keeperOn(store, one), reader: keeperOn(store, other) };
}

describe('of two tabs', () => {
  it('the one that looks on changes nothing, learns of what the other keeps, and opens it', async () => {
    const { store, writer, reader } = twoTabs();
    await writer.keep({ journal: journalOf('A') });
    expect((await reader.get('journal')).length).toBe(1);
    expect(await reader.keep({ journal: [] })).toBe('looks on');
    expect(await reader.get('journal')).toEqual(journalOf('A'));
    const before = await reader.state(0);
    expect([before.writes, before.changedElsewhere]).toEqual([false, false]);
    await writer.keep({ journal: journalOf('A', 'B') });
    const after = await reader.state(before.number);
    expect(after.changedElsewhere).toBe(true);
    expect((await reader.get('journal')).length).toBe(1);
    expect(await reader.refresh()).toBe(true);
    expect(await reader.get('journal')).toEqual(journalOf('A', 'B'));
    expect(await reader.refresh()).toBe(false);
    expect(store.writes.length).toBe(2);
  });

  it('the one that takes over waits for the write under way and goes on from it', async () => {
    const { store, writer, reader } = twoTabs();
    await reader.get('journal');
    let finish = () => {};
    store.beforeWrite = () => new Promise((resolve) => (finish = resolve));
    await writer.get('journal');
    const keeping = writer.keep({ journal: journalOf('A') });
    await new Promise((resolve) => setTimeout(resolve, 10));
    const takingOver = reader.takeOver();
    await new Promise((resolve) => setTimeout(resolve, 10));
    expect((await reader.state(0)).writes).toBe(false);
    finish();
    store.beforeWrite = async () => {};
    expect(await keeping).toBe('kept');
    await takingOver;
    // Until it has taken in what the other one kept last, it may not write over it.
    expect(await reader.keep({ journal: journalOf('C') })).toBe('looks on');
    await reader.refresh();
    expect(await reader.keep({ journal: [...journalOf('A', 'C')] })).toBe('kept');
    expect(await writer.keep({ journal: [] })).toBe('looks on');
    expect((await writer.state(0)).takenOver).toBe(true);
    expect(store.values.get('journal')).toEqual(journalOf('A', 'C'));
  });

  it('both of which take themselves for the one that writes, the later write is refused and said', async () => {
    const store = new MemoryStore();
    const [one, other] = [keeperOn(store), keeperOn(store)];
    await Promise.all([one.get('journal'), other.get('journal')]);
    expect(await one.keep({ journal: journalOf('A') })).toBe('kept');
    expect(await other.keep({ journal: journalOf('B') })).toBe('not kept');
    const { notKept, changedElsewhere } = await other.state(0);
    expect([notKept?.cause, changedElsewhere]).toEqual(['elsewhere', true]);
    expect(store.values.get('journal')).toEqual(journalOf('A'));
  });

  it('what was open last and initials concern no other tab', async () => {
    const { writer, reader } = twoTabs();
    await reader.get('source');
    await writer.keep({ source: 'own', initials: 'AB' });
    expect(await reader.refresh()).toBe(false);
  });
});
