import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unpackRows } from '../../../lib/analysis/engine/packedRows';
import { packRows } from '../../../lib/analysis/engine/packRows';
import type { SecondThread } from '../../../lib/analysis/engine/secondThread';
import { workOnTwo } from '../../../lib/analysis/engine/workOnTwo';
import { fitGroup, marginsOf, workHere } from '../../../lib/analysis/groupWork';
import { openAnalysis } from '../../../lib/analysis/openAnalysis';
import type { MarginRow } from '../../../lib/analysis/types';
import type { WearStatistics } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { filesOf } from '../../support/withRecords';

/** A group of units with one run of two readings each; another seed, other readings. */
function group(seed: number, units: number): WearStatistics {
  const readings = Array.from({ length: units }, (_, unit) =>
    [0, 1].map((x) => ({
      unit: `U-${unit}`,
      run: `U-${unit} run 0`,
      x,
      y: 0.2 + 0.05 * x + 0.01 * Math.sin(seed + 7 * unit + 3 * x),
    })),
  );
  return wearStatistics(readings.flat());
}

const groups = [3, 900, 2, 700, 5, 600].map((units, place) => group(place, units));
const none = async () => {};

const fitsOnTwo = (fitThere: SecondThread['fitGroup']) =>
  workOnTwo({ fitGroup: fitThere, marginsOf: async () => Promise.reject(new Error('not asked')) }).fits;

describe('fits on two threads', () => {
  it('come out as on one and in order, whichever thread is faster', async () => {
    const expected = await workHere.fits(groups, none);
    await fc.assert(
      fc.asyncProperty(fc.array(fc.nat(3), { minLength: 6, maxLength: 6 }), async (pauses_ms) => {
        let helped = 0;
        const helper = async (statistics: WearStatistics) => {
          await pause(pauses_ms[helped] ?? 0);
          helped += 1;
          return structuredClone(fitGroup(structuredClone(statistics)));
        };
        expect(await fitsOnTwo(helper)(groups, () => pause(pauses_ms[5] ?? 0))).toEqual(expected);
        expect(helped).toBeGreaterThan(0);
      }),
      { numRuns: 5 },
    );
  });

  it('go on here where the helper fails', async () => {
    const failing = async () => Promise.reject(new Error('no second thread'));
    expect(await fitsOnTwo(failing)(groups, none)).toEqual(await workHere.fits(groups, none));
  });

  it('of a small fleet stay on one', async () => {
    let helped = 0;
    const counting = async (statistics: WearStatistics) => {
      helped += 1;
      return fitGroup(statistics);
    };
    const small = groups.slice(2, 3);
    expect(await fitsOnTwo(counting)(small, none)).toEqual(await workHere.fits(small, none));
    expect(helped).toBe(0);
  });

  it('are begun no more after a stop', async () => {
    let helped = 0;
    const counting = async (statistics: WearStatistics) => {
      await pause(1);
      helped += 1;
      return fitGroup(statistics);
    };
    const stopped = fitsOnTwo(counting)([...groups, ...groups], async (place) => {
      if (place === 0) throw new Error('stopped');
    });
    await expect(stopped).rejects.toThrow('stopped');
    await pause(50);
    // What it had at once.
    expect(helped).toBeLessThan(4);
  });
});

describe('margins on two threads', () => {
  it('are those of one, in the order of units, whichever thread answers, and where the other fails', async () => {
    const database = await openNodeDatabase();
    const settings = { asOf: '2026-06-30', groupBy: 'frame' } as const;
    const { units, index, fleet } = await openAnalysis(
      await database.connect(),
      filesOf('data/demo'),
      'demo',
      settings,
      none,
    );
    await database.close();
    const questions = [...units.values()].flatMap((unit) => index.questionsOf(unit));
    expect(questions.length).toBeGreaterThan(300);
    expect(fleet.margins).toEqual(marginsOf(questions));
    let lists = 0;
    const second = workOnTwo({
      fitGroup: async () => Promise.reject(new Error('not asked')),
      marginsOf: async (list) => {
        lists += 1;
        const failing = lists % 5 === 4;
        await pause(lists % 3);
        if (failing) throw new Error('stopped');
        return unpackRows<MarginRow>(structuredClone(packRows(marginsOf(structuredClone(list)))));
      },
    });
    const many = Array.from({ length: 10 }, (_, part) => questions.filter((_, place) => place % 10 === part));
    const tasks = Array.from({ length: 8 }, () => many).flat();
    const found = await second.margins(tasks, () => pause(1));
    expect(lists).toBeGreaterThan(8);
    expect(found).toEqual(tasks.map(marginsOf));
  }, 60_000);
});

function pause(time_ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, time_ms));
}
