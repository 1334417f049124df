import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { emptyEntry } from '../../../lib/analysis/bench/benchEntry';
import { benchFiles } from '../../../lib/analysis/bench/benchFiles';
import type { BenchEntry, BenchSheet } from '../../../lib/analysis/bench/types';
import { FleetAnswers } from '../../../lib/analysis/engine/FleetAnswers';
import { type Analysis, openAnalysis } from '../../../lib/analysis/openAnalysis';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { textFile } from '../../support/textFile';
import { filesOf } from '../../support/withRecords';

const demo = filesOf('data/demo');
const settings = { asOf: null, groupBy: 'frame' } as const;
let database: Database;
let analysis: Analysis;
let answers: FleetAnswers;

beforeAll(async () => {
  database = await openNodeDatabase();
  analysis = await openAnalysis(await database.connect(), demo, 'own', settings, async () => {});
  answers = new FleetAnswers(analysis, async () => {});
});
afterAll(() => database.close());

async function sheetOf(unit: string, hours = '', date = ''): Promise<BenchSheet> {
  const sheet = await answers.benchSheet(unit, hours, date);
  if (sheet === null) throw new Error(`no sheet of ${unit}`);
  return sheet;
}

/** An overhaul as foretold: every reading as found at its median, as left as it was left last time. */
function foretold(sheet: BenchSheet, changes: Partial<BenchEntry> = {}): BenchEntry {
  const texts = sheet.items.flatMap(({ boxes }) =>
    boxes.flatMap(({ found, left, expectedFound, lastLeft_mm }) => [
      [found, expectedFound === null ? '' : expectedFound.median_mm.toFixed(3)],
      [left, lastLeft_mm === null ? '' : lastLeft_mm.toFixed(3)],
    ]),
  );
  return {
    ...emptyEntry(sheet.unit.unit),
    date: sheet.date ?? '',
    unitHours: String(Math.round(sheet.unitHours ?? 0)),
    fitted: ['TB-H', 'TB-L', 'TB-O'].filter((part) => sheet.parts.some((one) => one.part === part)),
    texts: Object.fromEntries(texts),
    ...changes,
  };
}

describe('the sheet of a unit of the demo fleet', () => {
  it('expects what the margins expect at the planned overhaul, and holds their limits and the assembly ranges', async () => {
    const sheet = await sheetOf('H-2003');
    const thrust = sheet.items.find(({ characteristic }) => characteristic === 'thrust_play');
    const margin = analysis.fleet.margins.find(
      (one) => one.unit === 'H-2003' && one.series === 'thrust_play',
    );
    const { lower_mm, median_mm, upper_mm } = thrust?.boxes[0]?.expectedFound ?? {};
    expect(lower_mm).toBeCloseTo(margin?.expectedFoundLower_mm ?? 0, 6);
    expect(median_mm).toBeCloseTo(margin?.expectedFoundMedian_mm ?? 0, 6);
    expect(upper_mm).toBeCloseTo(margin?.expectedFoundUpper_mm ?? 0, 6);
    expect(thrust?.series[0]?.limits).toEqual([
      { kind: 'upper', limit_mm: 0.45, source: 'Demo table H-1 (invented)' },
    ]);
    expect(thrust?.series[0]?.assembly).toEqual({ lower_mm: 0.18, upper_mm: 0.3 });
    // OH-0344 left 0.29 mm on 2025-10-30, see data/demo/readings.csv.
    expect([thrust?.lastLeftDate, thrust?.boxes[0]?.lastLeft_mm]).toEqual(['2025-10-30', 0.29]);
    expect(sheet.items.map(({ characteristic }) => characteristic)).toEqual([
      'thrust_play',
      'runout',
      'tip_compressor',
      'tip_turbine',
    ]);
    expect(sheet.hoursFrom).toBe('plan');
  });

  it('follows the hours typed: a later overhaul finds more wear', async () => {
    const [early, late] = [await sheetOf('H-2003', '90 000'), await sheetOf('H-2003', '99 000')];
    expect(late.hoursFrom).toBe('typed');
    const median = ({ items }: BenchSheet) => items[0]?.boxes[0]?.expectedFound?.median_mm ?? 0;
    // 0.051 mm per 10,000 h in its present run.
    expect((median(late) - median(early)) / 0.9).toBeCloseTo(0.051, 2);
  });

  it('parts have the chance that the plan gives them: what every overhaul takes, what the rated life asks for', async () => {
    const { parts } = await sheetOf('H-2003');
    expect(parts.find(({ part }) => part === 'GS-H')).toMatchObject({ chance: 1, because: 'every overhaul' });
    // Its rated life of 100,000 h ends before the overhaul after this one.
    expect(parts.find(({ part }) => part === 'RS-H')).toMatchObject({ chance: 1, because: 'rated life' });
    const chances = parts.flatMap(({ chance }) => (chance === null ? [] : [chance]));
    expect(chances.every((chance) => chance >= 0 && chance <= 1)).toBe(true);
    const decisions = await answers.decisions({ acceptedRisk: 0.1, horizonMonths: 24 });
    const called = decisions.find(
      (one) =>
        one.overhaul === 1 &&
        one.parts.some(({ part, because }) => part.startsWith('TB') && because === 'limit'),
    );
    const sheet = await sheetOf(called?.unit ?? '');
    expect(sheet.parts.find(({ part }) => part.startsWith('TB'))?.chance).toBeGreaterThan(0.4);
  });

  it('every unit has one that can be made, without a number that is none', async () => {
    for (const unit of [...analysis.units.keys()].filter((_, index) => index % 6 === 0)) {
      const sheet = await sheetOf(unit);
      const checks = await answers.benchChecks(foretold(sheet));
      expect(JSON.stringify({ sheet, checks }), unit).not.toMatch(/NaN|Infinity/);
      // As found at its median nothing is asked; as left last time may be asked about where a bearing is fitted now.
      expect(checks?.boxes.filter(({ stage, doubts }) => stage === 'found' && doubts.length > 0)).toEqual([]);
    }
    expect(await answers.benchSheet('nobody', '', '')).toBeNull();
  }, 60_000);
});

describe('an overhaul typed on the bench', () => {
  it('is asked about where date or hours cannot be, and what it lacks is said', async () => {
    const sheet = await sheetOf('H-2003');
    const faults = async (changes: Partial<BenchEntry>) =>
      (await answers.benchChecks(foretold(sheet, changes)))?.entryFaults.map(({ field, kind }) => [
        field,
        kind,
      ]);
    expect(await faults({})).toEqual([]);
    expect(await faults({ date: '', unitHours: '', texts: {} })).toEqual([
      ['date', 'needed'],
      ['unitHours', 'needed'],
      ['readings', 'needed'],
    ]);
    expect(await faults({ unitHours: '69494' })).toEqual([['unitHours', 'asked']]);
    expect(await faults({ unitHours: '196949' })).toEqual([['unitHours', 'asked']]);
    expect(await faults({ unitHours: '91949' })).toEqual([['unitHours', 'asked']]);
    expect(await faults({ date: '2025-10-30' })).toContainEqual(['date', 'asked']);
  });

  it('dropped on a page with the same fleet it is taken in without a question, stands in the history, and is forecast from as was said', async () => {
    const sheet = await sheetOf('H-2003');
    const entry = foretold(sheet, { workshop: '=Merrow', remarks: 'new gaskets, "dry"', uom: 'um' });
    const inMicrometres = Object.fromEntries(
      Object.entries(entry.texts).map(([box, text]) => [
        box,
        text === '' ? '' : String(Math.round(Number(text) * 1000)),
      ]),
    );
    const typed: BenchEntry = {
      ...entry,
      texts: { ...inMicrometres, 'runout found': '20-30', 'thrust_play left': '> 200' },
      stands: { 'runout left': inMicrometres['runout left'] ?? '' },
    };
    const files = benchFiles(sheet.unit, sheet.items, typed);
    // A second unit, whose bearing is not changed: what is left is what was found.
    const other = analysis.fleet.margins
      .filter(({ series, cappedByRatedLife }) => series === 'thrust_play' && !cappedByRatedLife)
      .reduce((best, one) => ((one.hoursMedian ?? 0) > (best.hoursMedian ?? 0) ? one : best));
    const otherSheet = await sheetOf(other.unit);
    const plain = foretold(otherSheet, { fitted: [] });
    const kept: BenchEntry = {
      ...plain,
      texts: { ...plain.texts, 'thrust_play left': plain.texts['thrust_play found'] ?? '' },
    };
    const otherFiles = benchFiles(otherSheet.unit, otherSheet.items, kept);
    const again = await openAnalysis(
      await database.connect(),
      [...demo, ...[...files, ...otherFiles].map(({ name, text }) => textFile(name, text))],
      'own',
      settings,
      async () => {},
    );
    expect(again.fleet.questions.map(({ id }) => id)).toEqual(analysis.fleet.questions.map(({ id }) => id));
    const names = files.map(({ name }) => name);
    expect(names).toEqual(['bench-H-2003-2027-06-25-overhauls.csv', 'bench-H-2003-2027-06-25-readings.csv']);
    expect(again.fleet.problems.filter(({ file }) => names.includes(file))).toEqual([]);
    const taken = again.fleet.files.find(({ file }) => file === names[1]);
    // Two single readings and two sets of four at both stages, less the one that only has one end.
    expect([taken?.readingsIn, taken?.readingsUsed]).toEqual([19, 19]);
    const result = await new FleetAnswers(again, async () => {}).unit('H-2003');
    expect(result?.history[0]).toMatchObject({
      overhaul: 'H-2003 2027-06-25',
      date: '2027-06-25',
      engine: 'SKU-2',
      workshop: '=Merrow',
      kind: 'planned',
      fitted: 'TB-H',
    });
    expect(result?.history[0]?.remarks).toBe(
      'new gaskets, "dry"; thrust play as left > 200 um; runout as left measured again, stands',
    );
    const runout = result?.series.find(({ series }) => series === 'runout')?.readings.at(-2);
    expect([runout?.lower_mm, runout?.upper_mm]).toEqual([0.02, 0.03]);
    const told = (await answers.benchChecks(kept))?.effect.series.find(
      ({ series }) => series === 'thrust_play',
    );
    const refitted = again.fleet.margins.find(
      ({ unit, series }) => unit === other.unit && series === 'thrust_play',
    );
    if (told?.medianAfter_h == null || refitted?.hoursMedian == null)
      throw new Error('both must meet the limit');
    const median = (again.units.get(other.unit)?.hoursNow ?? 0) + refitted.hoursMedian;
    expect(Math.abs(told.medianAfter_h - median) / refitted.hoursMedian).toBeLessThan(0.05);
    expect(told.medianBefore_h).not.toBe(told.medianAfter_h);
    expect(told.reassembly_mm).toBe(0);
    expect(told.wear_mm_per_10kh).toBeCloseTo(told.expectedWear_mm_per_10kh ?? 0, 1);
  }, 60_000);
});

describe('a unit of which little is known', () => {
  it('without history gets a sheet that says so; without limits there is no verdict; a tenfold reading is still asked about', async () => {
    const known = demo.filter(({ name }) => name !== 'units.csv' && name !== 'limits.csv');
    const units = `${new TextDecoder().decode(demo.find(({ name }) => name === 'units.csv')?.bytes)}N-1,Heron,2026-01-01,\n`;
    const fresh = await openAnalysis(
      await database.connect(),
      [...known, textFile('units.csv', units)],
      'own',
      settings,
      async () => {},
    );
    const own = new FleetAnswers(fresh, async () => {});
    const sheet = await own.benchSheet('N-1', '', '');
    expect(sheet).toMatchObject({ last: null, unitHours: null, hoursFrom: null });
    expect(sheet?.items.length).toBeGreaterThan(3);
    expect(sheet?.items.every(({ series }) => series.every(({ limits }) => limits.length === 0))).toBe(true);
    expect(sheet?.items.every(({ reason }) => reason !== null)).toBe(true);
    const texts = { 'thrust_play found': '3.1', 'runout left': '0.02', 'tip_turbine found 12': '>0.9' };
    const checks = await own.benchChecks({
      ...emptyEntry('N-1'),
      date: '2027-01-01',
      unitHours: '8000',
      texts,
    });
    expect(checks?.boxes.find(({ box }) => box === 'thrust_play found')?.doubts).toMatchObject([
      { kind: 'scale', suggestion: '0.31' },
    ]);
    expect(checks?.series.every(({ limits, assembly }) => limits.length === 0 && assembly === null)).toBe(
      true,
    );
    expect(checks?.readings).toBe(2);
  }, 60_000);
});
