import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { answering, type ImportedSheets, importSheets } from './importSheets';
import { across, type Job, otherStage, sisterFleet, withReadings, writtenJobs } from './sisterFleet';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

const fleet = sisterFleet(5);
/** Cells of a line. */
const cells = 12;

const take = (
  jobs: readonly Job[],
  answers: Readonly<Record<string, string>> = {},
): Promise<ImportedSheets> =>
  importSheets(
    database,
    [{ name: 'shop.csv', bytes: new TextEncoder().encode(writtenJobs(jobs)) }],
    answering(answers),
  );
const replaced = (at: number, job: Job) => fleet.map((one, index) => (index === at ? job : one));
const jobAt = (at: number) => fleet[at] as Job;
const isLeft = (place: string) => place.includes(' left');

/** What a sheet asks about, and how many cells wait: kind, column, line numbers named in the question, cells. */
const asked = ({ asked: questions }: ImportedSheets) =>
  questions.map(
    ({ id, column, question, cellsWaiting }) =>
      `${id.split(' | ')[0]} | ${column} | ${/lines? (\d+)/.exec(question)?.[1] ?? 'all'} | ${cellsWaiting}`,
  );

describe('sisters as they should be', () => {
  it.each(Array.from({ length: 25 }, (_, at) => at + 100))('fleet %i raises no question', async (seed) => {
    const sheets = await take(sisterFleet(seed, 8, 5));
    expect(sheets.questions).toEqual([]);
    expect(sheets.files[0]).toMatchObject({ readingsIn: 480, readingsUsed: 480 });
  });
});

describe('as found and as left exchanged', () => {
  const line = replaced(9, withReadings(jobAt(9), otherStage));

  it('in one line: all of its cells wait, answered exchanged they are as they were, else as written', async () => {
    const waiting = await take(line);
    const [column] = waiting.asked.map(({ column: names }) => names);
    expect(column).toBe('thrust play found (mm), runout found (mm), thrust play left (mm) and 9 more');
    expect(asked(waiting)).toEqual([`stages exchanged | ${column} | 11 | ${cells}`]);
    expect(waiting.held).toHaveLength(cells);
    expect(waiting.held[0]).toContain('waits for an answer: are as found and as left exchanged?');
    expect(waiting.files[0]).toMatchObject({ readingsHeld: cells, readingsUsed: (fleet.length - 1) * cells });
    const exchanged = await take(line, { 'stages exchanged': 'exchanged' });
    expect(exchanged.used).toEqual((await take(fleet)).used);
    expect(exchanged.questions).toEqual([]);
    expect(exchanged.interpreted.filter((note) => /exchanged, as answered$/.test(note))).toHaveLength(cells);
    const written = await take(line, { 'stages exchanged': 'as written' });
    expect([written.used.length, written.held, written.questions]).toEqual([fleet.length * cells, [], []]);
    expect(written.used).not.toEqual(exchanged.used);
  });

  it('of one characteristic in one line: only its cells wait', async () => {
    const tips = withReadings(jobAt(9), (place) => (place.startsWith('turbine') ? otherStage(place) : place));
    expect(asked(await take(replaced(9, tips)))).toEqual([
      "stages exchanged | turbine tip clearance found 12 o'clock (mm), turbine tip clearance found 3 o'clock (mm), turbine tip clearance found 6 o'clock (mm) and 5 more | 11 | 8",
    ]);
  });

  it('in a whole file: one question for all of it', async () => {
    const all = fleet.map((job) => withReadings(job, otherStage));
    expect(asked(await take(all))).toEqual([`stages exchanged |  | all | ${fleet.length * cells}`]);
    const exchanged = await take(all, { 'stages exchanged': 'exchanged' });
    expect(exchanged.used).toEqual((await take(fleet)).used);
  });

  it('in one workshop’s file beside the sisters’: one question for that file', async () => {
    const jobs = fleet.slice(0, 8).map((job) => withReadings(job, otherStage));
    const file = (name: string, of: readonly Job[]) => ({
      name,
      bytes: new TextEncoder().encode(writtenJobs(of)),
    });
    const sheets = await importSheets(database, [file('one.csv', jobs), file('two.csv', fleet.slice(8))]);
    expect(sheets.asked.map(({ file: name, cellsWaiting }) => [name, cellsWaiting])).toEqual([
      ['one.csv', 8 * cells],
    ]);
  });
});

describe('clock positions exchanged', () => {
  const job = withReadings(jobAt(9), across('3', '9'));

  it('left and right in one line: asked; exchanged brings them back', async () => {
    const waiting = await take(replaced(9, job));
    expect(asked(waiting)).toEqual([
      "clock positions exchanged | turbine tip clearance found 3 o'clock (mm), turbine tip clearance found 9 o'clock (mm), turbine tip clearance left 3 o'clock (mm) and 1 more | 11 | 4",
    ]);
    expect(waiting.asked[0]?.question).toContain('left and right (3 and 9 o’clock)');
    const exchanged = await take(replaced(9, job), { 'clock positions': 'exchanged' });
    expect(exchanged.used).toEqual((await take(fleet)).used);
    const written = await take(replaced(9, job), { 'clock positions': 'as written' });
    expect([written.used.length, written.questions]).toEqual([fleet.length * cells, []]);
  });

  it('top and bottom as left only', async () => {
    const turned = withReadings(jobAt(9), (place) => (isLeft(place) ? across('12', '6')(place) : place));
    const waiting = await take(replaced(9, turned));
    expect(waiting.asked.map(({ question, cellsWaiting }) => [question, cellsWaiting])).toEqual([
      [
        'Are top and bottom (12 and 6 o’clock) exchanged in shop.csv line 11 (T-3, tip turbine as left)? The readings fit the unit’s other overhauls far better the other way round.',
        2,
      ],
    ]);
  });
});

describe('copied as left readings', () => {
  const sources: readonly (readonly [string, Job])[] = [
    [
      'the unit’s overhaul before',
      withReadings(jobAt(10), (place) => (isLeft(place) ? place : ''), jobAt(9)),
    ],
    ['another unit', withReadings(jobAt(10), (place) => (isLeft(place) ? place : ''), jobAt(6))],
    [
      'as found at the same overhaul',
      withReadings(jobAt(10), (place) => (isLeft(place) ? otherStage(place) : '')),
    ],
  ];

  it.each(sources)('from %s: asked; copied ones stay held, measured ones are used', async (source, job) => {
    const jobs = replaced(10, job);
    const waiting = await take(jobs);
    expect(waiting.asked.map(({ choices, guess, cellsWaiting }) => [choices, guess, cellsWaiting])).toEqual([
      [['copied', 'measured'], 'copied', cells / 2],
    ]);
    expect(waiting.asked[0]?.question).toContain(`those of ${source}`);
    expect(waiting.held).toHaveLength(cells / 2);
    const copied = await take(jobs, { 'copied readings': 'copied' });
    expect(copied.questions).toEqual([]);
    expect(copied.used).toEqual(waiting.used);
    expect(copied.held[0]).toContain(`copied from ${source}, as answered`);
    const measured = await take(jobs, { 'copied readings': 'measured' });
    expect([measured.used.length, measured.held, measured.questions]).toEqual([fleet.length * cells, [], []]);
  });

  it('a form that fills in as left from as found: one question for the file', async () => {
    const jobs = fleet.map((job) => withReadings(job, (place) => (isLeft(place) ? otherStage(place) : '')));
    const waiting = await take(jobs);
    expect(asked(waiting)).toEqual([`copied readings |  | 2 | ${(fleet.length * cells) / 2}`]);
  });

  it('readings that all are one size, or too few, say nothing', async () => {
    const coarse = fleet.map((job) => ({
      ...job,
      readings: Object.fromEntries(
        Object.keys(job.readings).map((place) => [place, isLeft(place) ? 0.2 : 0.3]),
      ),
    }));
    const few = fleet.map((job) => ({
      ...job,
      readings: {
        'thrust play left': jobAt(1).readings['thrust play left'] ?? 0,
        'runout left': jobAt(1).readings['runout left'] ?? 0,
      },
    }));
    for (const jobs of [coarse, few]) expect((await take(jobs)).questions).toEqual([]);
  });
});
