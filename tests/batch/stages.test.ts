import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findChromium } from '../chromium.mjs';
import { countReport } from '../vitestCounts.mjs';

const report = (
  passed: number,
  failed: number,
  files: readonly (readonly [string, readonly string[]])[] = [],
) => ({
  numPassedTests: passed,
  numFailedTests: failed,
  numPendingTests: 0,
  numTodoTests: 0,
  testResults: files.map(([status, tests], index) => ({
    name: `file${index}`,
    status,
    assertionResults: tests.map((testStatus) => ({ status: testStatus })),
  })),
});

describe('countReport', () => {
  test('counts what passed and failed', () => {
    expect(countReport(report(7, 2, [['failed', ['passed', 'failed']]]), 1)).toMatchObject({
      passed: 7,
      failed: 2,
    });
    expect(countReport(report(7, 0), 0)).toMatchObject({ passed: 7, failed: 0 });
  });

  test.each([
    ['no report', null, 1, /without a report/],
    ['no tests', report(0, 0), 0, /no tests/],
    ['a status that no test explains', report(5, 0), 1, /status 1/],
    ['a file that did not load', report(5, 0, [['failed', []]]), 1, /did not load: file0/],
  ])('%s is a failure', (_, found, code, message) => {
    const counted = countReport(found, code);
    expect(counted.failed).toBe(1);
    expect(counted.message).toMatch(message);
  });

  test('running out of time is a failure beside the others', () => {
    expect(countReport(report(5, 2), 143, true)).toMatchObject({ passed: 5, failed: 3 });
  });
});

describe('findChromium', () => {
  test('takes CHROMIUM_PATH if it names a program, and nothing else then', () => {
    const folder = mkdtempSync(join(tmpdir(), 'endfloat-chromium-'));
    const program = join(folder, 'browser');
    writeFileSync(program, '');
    expect(findChromium({ CHROMIUM_PATH: program, PATH: folder })).toBeNull();
    chmodSync(program, 0o755);
    expect(findChromium({ CHROMIUM_PATH: program, PATH: '' })).toBe(program);
    rmSync(folder, { recursive: true });
  });
});
