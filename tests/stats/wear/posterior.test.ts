import { describe, expect, it } from 'vitest';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import { wearWorkspace } from '../../../lib/stats/wear/absorb';
import type { AngleRange } from '../../../lib/stats/wear/angleRange';
import { crossings } from '../../../lib/stats/wear/crossing';
import { chancePast, levelAt, readingQuantile } from '../../../lib/stats/wear/forecast';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { NODE, type NodeGrid, nodeGrid } from '../../../lib/stats/wear/nodeGrid';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { readFleet, readReference } from './readFleet';

/** Source: independent dense-grid integration, 17 nodes a ratio; see tests/reference/README.md. */
interface UnitReference {
  readonly run: string;
  readonly last_x: number;
  readonly level: number;
  readonly level_sd: number;
  readonly chance: Readonly<Record<string, number>>;
  readonly x_quantiles: readonly (number | null)[];
  readonly reading_at_last_x_plus_1: readonly number[];
}
type Reference = Record<string, { readonly posterior?: { readonly units: Record<string, UnitReference> } }>;

const references = readReference<Reference>('wear/reference.json');
const fleets = Object.keys(references).filter((name) => references[name]?.posterior);
const CHANCES = [0.1, 0.5, 0.9];

describe.each(['tangent', 'adaptive'] as const)('posterior with %s nodes', (placement) => {
  it.each(fleets)('%s agrees with the dense grid', (name) => {
    const statistics = wearStatistics(readFleet(`wear/${name}.csv`));
    const posterior = integrateWear(statistics, { placement });
    expect(fleets).toHaveLength(3);
    for (const [unit, reference] of Object.entries(references[name]?.posterior?.units ?? {})) {
      const run = statistics.runNames.indexOf(reference.run);
      const line = runLevel(posterior, statistics, statistics.unitNames.indexOf(unit), run);
      const level = levelAt(line, reference.last_x);
      expect(Math.abs(level.mean - reference.level)).toBeLessThan(5e-5);
      expect(Math.abs(level.sd / reference.level_sd - 1)).toBeLessThan(0.003);
      for (const [x, chance] of Object.entries(reference.chance)) {
        expect(Math.abs(chancePast(line, 0.45, 'upper', Number(x)) - chance)).toBeLessThan(0.001);
      }
      const reached = crossings(line, 0.45, 'upper', CHANCES, 0, 20);
      reference.x_quantiles.forEach((x, k) => {
        if (x === null) expect(reached[k]).toBeNull();
        else expect(Math.abs((reached[k] ?? 0) / x - 1)).toBeLessThan(0.002);
      });
      reference.reading_at_last_x_plus_1.forEach((reading, k) => {
        const quantile = readingQuantile(line, reference.last_x + 1, CHANCES[k] as number);
        expect(Math.abs(quantile - reading)).toBeLessThan(1e-4);
      });
    }
  });
});

describe('placement of nodes', () => {
  const moments = ({ nodes, weights }: Pick<NodeGrid, 'nodes' | 'weights'>) => {
    const mean = (of: (node: number) => number) =>
      weights.reduce((sum, weight, k) => sum + weight * of(NODE * k), 0);
    const value = (field: number) => (p: number) => nodes[p + field] as number;
    const scaled = (field: number) => (p: number) => (nodes[p + field] as number) * (nodes[p + 6] as number);
    return [mean(value(1)), mean(value(2)), Math.sqrt(mean(scaled(3))), Math.sqrt(mean(scaled(5)))];
  };
  const truth = { noise: 0.012, startRun: 0.015, slopeRun: 0.015, startUnit: 0.01, slopeUnit: 0.02 };

  it('gives the same by ratios as by totals and shares, which are other coordinates', () => {
    const { readings } = simulateFleet(11, 8, truth, false);
    const workspace = wearWorkspace(wearStatistics(readings));
    const whole: Omit<AngleRange, 'kind' | 'count'> = { scale: 1, low: 0, high: Math.PI / 2 };
    const ratio: AngleRange = { ...whole, kind: 'ratio', count: 21 };
    const total: AngleRange = { ...whole, kind: 'total', count: 21 };
    const share: AngleRange = { ...whole, kind: 'share', count: 21 };
    const byRatios = moments(nodeGrid(workspace, [ratio, ratio, ratio, ratio]));
    const byTotals = moments(nodeGrid(workspace, [total, total, share, share]));
    for (const [k, value] of byRatios.entries()) expect((byTotals[k] as number) / value).toBeCloseTo(1, 3);
  });

  it.each([
    ['hardly any noise', { ...truth, noise: 0.003 }],
    ['no spread at all', { ...truth, startRun: 0, slopeRun: 0, startUnit: 0, slopeUnit: 0 }],
    ['much noise', { ...truth, noise: 0.05 }],
  ])('finds the weight whatever the ratios: %s', (_, unlike) => {
    const { readings } = simulateFleet(5, 12, unlike, false);
    const statistics = wearStatistics(readings);
    const posterior = integrateWear(statistics);
    const fine: AngleRange = { kind: 'ratio', scale: 3, low: 0, high: Math.PI / 2, count: 27 };
    const grid = nodeGrid(wearWorkspace(statistics), [fine, fine, fine, fine]);
    const [start, slope, startSd, slopeSd] = moments(grid) as [number, number, number, number];
    const nu = posterior.degreesOfFreedom;
    const line = { ...runLevel(posterior, statistics, null, null) };
    const mean = (of: (k: number) => number) =>
      posterior.weight.reduce((sum, weight, k) => sum + weight * of(k), 0);
    expect((mean((k) => line.start[k] as number) - statistics.yCentre - start) / startSd).toBeCloseTo(0, 1);
    expect((mean((k) => line.slope[k] as number) - slope) / slopeSd).toBeCloseTo(0, 1);
    const sdOf = (inverse: Float64Array) =>
      Math.sqrt(nu * mean((k) => (inverse[k] as number) * (posterior.s2[k] as number)));
    expect(sdOf(posterior.inverse00) / startSd).toBeCloseTo(1, 2);
    expect(sdOf(posterior.inverse11) / slopeSd).toBeCloseTo(1, 2);
    expect(posterior.edgeShare).toBeLessThan(1e-3);
  });

  it('needs few nodes where ratios are known well, and one where nothing depends on their spread', () => {
    const nodesOf = (units: number) =>
      integrateWear(wearStatistics(simulateFleet(2, units, truth, false).readings)).weight.length;
    expect(nodesOf(20)).toBeLessThan(1000);
    expect(nodesOf(300)).toBeLessThan(100);
    expect(nodesOf(10_000)).toBe(1);
  });

  it('keeps weights that sum to 1, and refuses what it cannot integrate', () => {
    const { readings } = simulateFleet(4, 3, truth);
    const statistics = wearStatistics(readings);
    const sum = integrateWear(statistics).weight.reduce((total, weight) => total + weight, 0);
    expect(sum).toBeCloseTo(1, 12);
    expect(() => integrateWear(wearStatistics(readings.slice(0, 6)))).toThrow('at least 7 readings, got 6');
    const flat = wearStatistics(readings.map((reading) => ({ ...reading, y: 0.3 })));
    expect(() => integrateWear(flat)).toThrow('scatter about lines');
    const still = wearStatistics(readings.map((reading) => ({ ...reading, x: 1 })));
    expect(() => integrateWear(still)).toThrow('2 distinct run hours');
  });
});
