import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { dateCases } from './cases/dates';
import { formCases } from './cases/forms';
import { intervalCases } from './cases/intervals';
import { languageCases } from './cases/languages';
import { lineCases } from './cases/lines';
import { numberCases } from './cases/numbers';
import { overhaulCases } from './cases/overhauls';
import type { Outcome, SheetCase } from './cases/SheetCase';
import { answering, importSheets } from './importSheets';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

async function check({ text }: SheetCase, expected: Outcome, answers: Readonly<Record<string, string>> = {}) {
  const file = { name: 'sheet.csv', bytes: new TextEncoder().encode(text) };
  const sheets = await importSheets(database, [file], answering(answers));
  expect(sheets.used).toEqual([...expected.used].sort());
  expect([...sheets.held].sort()).toEqual([...(expected.held ?? [])].sort());
  expect(sheets.questions).toEqual(expected.asked ?? []);
  for (const note of expected.noted ?? []) expect(sheets.interpreted).toContain(note);
  const [counts] = sheets.files;
  expect([counts?.readingsIn, counts?.readingsUsed, counts?.readingsNone]).toEqual(expected.cells);
  expect(expected.used).toHaveLength(expected.cells[1]);
}

describe.each([
  ['languages', languageCases],
  ['numbers', numberCases],
  ['dates', dateCases],
  ['lines', lineCases],
  ['overhauls', overhaulCases],
  ['forms', formCases],
  ['intervals', intervalCases],
])('%s', (_, cases) => {
  it.each(cases.map((one) => [one.title, one] as const))('%s', async (_title, one) => {
    await check(one, one);
    for (const { answers, ...outcome } of one.answered ?? []) await check(one, outcome, answers);
  });
});
