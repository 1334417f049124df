import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitOnTwo } from '../../../lib/analysis/engine/fitOnTwo';
import { fitGroup, fitHere } from '../../../lib/analysis/fitGroups';
import type { WearStatistics } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';

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

describe('fits on two threads', () => {
  it('come out as on one and in order, whichever thread is faster', async () => {
    const expected = await fitHere(groups, none);
    await fc.assert(
      fc.asyncProperty(fc.array(fc.nat(3), { minLength: 6, maxLength: 6 }), async (pauses_ms) => {
        let helped = 0;
        const helper = async (statistics: WearStatistics) => {
          await pause(pauses_ms[helped] ?? 0);
          helped += 1;
          return structuredClone(fitGroup(structuredClone(statistics)));
        };
        expect(await fitOnTwo(helper)(groups, () => pause(pauses_ms[5] ?? 0))).toEqual(expected);
        expect(helped).toBeGreaterThan(0);
      }),
      { numRuns: 5 },
    );
  });

  it('go on here where the helper fails', async () => {
    const failing = async () => Promise.reject(new Error('no second thread'));
    expect(await fitOnTwo(failing)(groups, none)).toEqual(await fitHere(groups, none));
  });

  it('of a small fleet stay on one', async () => {
    let helped = 0;
    const counting = async (statistics: WearStatistics) => {
      helped += 1;
      return fitGroup(statistics);
    };
    const small = groups.slice(2, 3);
    expect(await fitOnTwo(counting)(small, none)).toEqual(await fitHere(small, none));
    expect(helped).toBe(0);
  });

  it('are begun no more after a stop', async () => {
    let helped = 0;
    const counting = async (statistics: WearStatistics) => {
      await pause(1);
      helped += 1;
      return fitGroup(statistics);
    };
    const stopped = fitOnTwo(counting)([...groups, ...groups], async (place) => {
      if (place === 1) throw new Error('stopped');
    });
    await expect(stopped).rejects.toThrow('stopped');
    await pause(50);
    // What it had at once.
    expect(helped).toBeLessThan(4);
  });
});

function pause(time_ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, time_ms));
}
