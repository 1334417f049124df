import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compressMixture } from '../../../lib/stats/wear/compressMixture';
import { chancePast, levelAt, readingQuantile } from '../../../lib/stats/wear/forecast';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';

function statisticsOf(fleet: string) {
  const lines = readFileSync(`tests/reference/wear/${fleet}.csv`, 'utf8').trim().split('\n').slice(1);
  return wearStatistics(
    lines.map((line) => {
      const [unit = '', run = '', x, y] = line.split(',');
      return { unit, run, x: Number(x), y: Number(y) };
    }),
  );
}

describe.each(['fleet-12', 'fleet-6-noisy', 'fleet-10-no-unit-spread'])('compressMixture of %s', (fleet) => {
  const statistics = statisticsOf(fleet);
  const posterior = integrateWear(statistics, { placement: 'tangent' });
  const lines = statistics.unitNames.map((_, unit) => {
    const run = (statistics.firstRun[unit + 1] as number) - 1;
    const x = statistics.maxX[run] as number;
    const whole = runLevel(posterior, statistics, unit, run);
    return { x, whole, few: compressMixture(whole, x, x + 2) };
  });

  it('keeps chances within 5e-4 of the whole mixture, and reading quantiles within 0.00005 mm', () => {
    for (const { x, whole, few } of lines) {
      for (const ahead of [0, 0.5, 1, 2, 4]) {
        for (const limit of [0.3, 0.4, 0.45, 0.5]) {
          const difference =
            chancePast(few, limit, 'upper', x + ahead) - chancePast(whole, limit, 'upper', x + ahead);
          expect(Math.abs(difference)).toBeLessThan(5e-4);
        }
      }
      for (const p of [0.1, 0.5, 0.9]) {
        expect(Math.abs(readingQuantile(few, x + 1, p) - readingQuantile(whole, x + 1, p))).toBeLessThan(
          5e-5,
        );
      }
    }
  });

  it('keeps mean and variance of the level exactly, with less than a tenth of the components', () => {
    for (const { x, whole, few } of lines) {
      for (const at of [0, x, x + 3]) {
        const [exact, kept] = [levelAt(whole, at), levelAt(few, at)];
        expect(kept.mean).toBeCloseTo(exact.mean, 10);
        expect(kept.sd / exact.sd).toBeCloseTo(1, 8);
      }
      expect(few.weight.length).toBeLessThan(whole.weight.length / 10);
    }
  });
});
