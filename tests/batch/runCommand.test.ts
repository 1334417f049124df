import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { runCommand } from '../../lib/batch/runCommand.mjs';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'endfloat-run-'));
});

afterEach(() => rmSync(folder, { recursive: true }));

/** Whether a process is alive; one that has ended but was not collected yet counts as ended. */
function isAlive(pid: number): boolean {
  try {
    return !/^State:\s+Z/m.test(readFileSync(`/proc/${pid}/status`, 'utf8'));
  } catch {
    return false;
  }
}

async function gone(pid: number): Promise<boolean> {
  for (let tries = 0; tries < 100 && isAlive(pid); tries++)
    await new Promise((resolve) => setTimeout(resolve, 20));
  return !isAlive(pid);
}

describe('runCommand', () => {
  test('gives the exit code and what was written to standard error', async () => {
    const result = await runCommand('sh', ['-c', 'echo words >&2; exit 3'], { capture: true });
    expect([result.code, result.output, result.timedOut]).toEqual([3, 'words\n', false]);
  });

  test('says that a program could not be started', async () => {
    const result = await runCommand('no-such-program-here', []);
    expect(result.code).toBe(1);
    expect(result.error?.code).toBe('ENOENT');
  });

  test('ends what the command left behind', async () => {
    const file = join(folder, 'pid');
    await runCommand('sh', ['-c', `sleep 300 & echo $! > ${file}`]);
    expect(await gone(Number(readFileSync(file, 'utf8')))).toBe(true);
  });

  test('ends the command and its children when the time is up', async () => {
    const file = join(folder, 'pid');
    const result = await runCommand('sh', ['-c', `sleep 300 & echo $! > ${file}; wait`], {
      timeoutMilliseconds: 500,
    });
    expect(result.timedOut).toBe(true);
    expect(result.code).not.toBe(0);
    expect(await gone(Number(readFileSync(file, 'utf8')))).toBe(true);
  });
});
