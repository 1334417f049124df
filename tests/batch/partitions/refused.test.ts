import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { analysed, textsIn, writeSmallFleet } from './madeFolders';

const folder = mkdtempSync(join(tmpdir(), 'refused-'));
afterAll(() => rmSync(folder, { recursive: true }));

let [data, out] = ['', ''];
let runs = 0;
beforeEach(async () => {
  data = await writeSmallFleet(join(folder, `data-${runs}`), true);
  out = join(folder, `out-${runs++}`);
});
const inPart = (part: number, file: string) => join(data, `frame=Frame 000${part}`, file);
const results = () => readdirSync(out).filter((name) => name.endsWith('.csv'));

describe('what is split over folders is refused', () => {
  it('a frame in two of them, with both named', async () => {
    const units = inPart(2, 'units.csv');
    writeFileSync(units, readFileSync(units, 'utf8').replace('Frame 0002', 'Frame 0001'));
    await expect(analysed(data, out, 2)).rejects.toThrow(
      /whole sister groups: frame 'Frame 0001' lies in the folders 'frame=Frame 0001', 'frame=Frame 0002'/,
    );
    expect(results()).toEqual([]);
  });

  it('an engine whose meter the hours of both follow from', async () => {
    const overhauls = [1, 2].map((part) => inPart(part, 'overhauls.csv'));
    for (const path of overhauls)
      writeFileSync(
        path,
        readFileSync(path, 'utf8')
          .replace(/E-\d+/g, 'E-1')
          .replace(/,\d+,,Quay/, ',,500,Quay'),
      );
    await expect(analysed(data, out, 2)).rejects.toThrow(
      /engine 'E-1' has units in the folders 'frame=Frame 0001', 'frame=Frame 0002'/,
    );
  });

  it.each([0, 1e9])(
    'a frame that only the import finds in two, since no units.csv states it',
    async (together) => {
      for (const part of [1, 2]) rmSync(inPart(part, 'units.csv'));
      await expect(analysed(data, out, 2, together)).rejects.toThrow(
        /sister group 'frame not given' has units in the folders/,
      );
      expect(results()).toEqual([]);
    },
  );
});

it.each([0, 1e9])(
  'folders of which nothing can be used give their problems and reasons, and no result of the others',
  async (together) => {
    const readings = inPart(2, 'readings.csv');
    writeFileSync(readings, `${readFileSync(readings, 'utf8').split('\n')[0]}\nX,runout,left,,0.02,mm,,,,\n`);
    rmSync(inPart(3, 'readings.csv'));
    writeFileSync(inPart(3, 'readings.parquet'), 'no such thing');
    const outcome = await analysed(data, out, 2, together);
    const unusable = outcome.ok ? [] : outcome.unusable;
    expect(unusable.map(({ part }) => part)).toEqual(['frame=Frame 0002', 'frame=Frame 0003']);
    expect(unusable[1]?.reasons.join()).toMatch(/frame=Frame 0003\/readings\.parquet cannot be read: .+/);
    expect(results()).toEqual(['problems.csv']);
    expect((await textsIn(out))['problems.csv']).toContain(
      'frame=Frame 0002/readings.csv,2,overhaul,X,no overhaul of that name in the files,held',
    );
  },
);
