import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { csvParse } from 'd3-dsv';
import { afterAll, describe, expect, it } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'corrected-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

function run(command: 'intake' | 'analyse', ...words: string[]): Promise<Ended> {
  return new Promise((resolve) => {
    execFile('node_modules/.bin/tsx', [`lib/batch/${command}.ts`, ...words], (error, stdout, stderr) => {
      resolve({ status: error === null ? 0 : Number(error.code), stdout, stderr });
    });
  });
}

const records = join(folder, 'records');
mkdirSync(records);
const at = (name: string) => join(records, name);
writeFileSync(
  at('overhauls.csv'),
  'overhaul,unit,date,unit_hours\nA,W-1,2014-01-01,0\nB,W-1,2016-01-01,9000\nC,W-2,2014-01-01,0\nD,W-2,2016-01-01,9100\n',
);
writeFileSync(
  at('readings.csv'),
  'overhaul,characteristic,stage,value,uom\nA,runout,left,O.01,mm\nB,runout,found,0.02,mm\nC,runout,left,0.01,mm\nD,runout,found,0.0Z,mm\n',
);
writeFileSync(
  at('held-rows.csv'),
  'file;line;column;raw;reason;corrected;ruling;why\nreadings.csv;2;value;O.01;;0,01;;an O for a 0\nreadings.csv;5;value;0.0Z;;;release;\n',
);
const report =
  'held-rows.csv: 1 of 2 rulings applied; lines without one: 0. Line 3: what holds it is no doubt that could be set aside: edit it or leave it out.\n';

describe('corrected held rows among the files of a batch command', () => {
  it('are applied and reported by intake', async () => {
    const out = join(folder, 'intake');
    const ended = await run(
      'intake',
      ...['overhauls.csv', 'readings.csv', 'held-rows.csv'].map(at),
      '--out',
      out,
    );
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stdout).toContain(report);
    const used = csvParse(readFileSync(join(out, 'readings.csv'), 'utf8'));
    expect(used.map((row) => `${row.overhaul} ${row.value}`)).toEqual(['A 0.01', 'B 0.02', 'C 0.01']);
    const problems = csvParse(readFileSync(join(out, 'problems.csv'), 'utf8'));
    expect(problems.find((row) => row.raw === 'O.01')).toMatchObject({
      action: 'interpreted',
      reason: 'read as ‘0.01’ in place of ‘O.01’: an O for a 0',
    });
    const alone = await run('intake', at('held-rows.csv'), '--out', join(folder, 'alone'));
    expect(alone.status).toBe(2);
    expect(alone.stderr).toContain('only corrected held rows are named');
  });

  it('are applied and reported by analyse', async () => {
    const ended = await run('analyse', '--data', records, '--out', join(folder, 'analyse'));
    expect(ended.status, ended.stderr).toBe(0);
    expect(ended.stdout).toContain('3 readings used, 1 held');
    expect(ended.stdout).toContain(report);
  });
});
