import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runCommand } from '../lib/batch/runCommand.mjs';

/** Runs vitest and counts: { passed, failed, skipped, message }. Whatever is no clean result counts as a failure. */
export async function runVitest(root, args, env, timeoutMilliseconds) {
  const folder = mkdtempSync(join(tmpdir(), 'endfloat-'));
  const report = join(folder, 'report.json');
  try {
    const vitest = join(root, 'node_modules', 'vitest', 'vitest.mjs');
    const reporters = ['--reporter=dot', '--reporter=json', `--outputFile.json=${report}`];
    const run = await runCommand(process.execPath, [vitest, 'run', ...reporters, ...args], {
      cwd: root,
      env,
      timeoutMilliseconds,
    });
    return countReport(readReport(report), run.code, run.timedOut);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Counts of vitest's JSON report; a file that did not load, an exit that no failed test explains and an empty run are failures. */
export function countReport(report, code, timedOut = false) {
  if (timedOut)
    return { ...counts(report), failed: (report?.numFailedTests ?? 0) + 1, message: 'it ran out of time' };
  if (report === null) return { passed: 0, failed: 1, skipped: 0, message: 'it ended without a report' };
  const unloaded = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  );
  const failed = report.numFailedTests + unloaded.length;
  const found = counts(report);
  if (failed === 0 && found.passed === 0) return { ...found, failed: 1, message: 'it found no tests' };
  if (failed === 0 && code !== 0)
    return { ...found, failed: 1, message: `it ended with status ${code} though no test failed` };
  const message =
    unloaded.length === 0 ? undefined : `did not load: ${unloaded.map((file) => file.name).join(', ')}`;
  return { ...found, failed, message };
}

function counts(report) {
  return {
    passed: report?.numPassedTests ?? 0,
    failed: report?.numFailedTests ?? 0,
    skipped: (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0),
  };
}

function readReport(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}
