import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ServedSite, serveSite } from '../../lib/batch/serveSite.mjs';

const project = fileURLToPath(new URL('../..', import.meta.url));
const root = mkdtempSync(join(tmpdir(), 'endfloat-start-'));

/** A project of the same shape whose build is quick: the real commands, lock file and packages. */
beforeAll(() => {
  mkdirSync(join(root, 'lib', 'batch'), { recursive: true });
  cpSync(join(project, 'lib', 'batch'), join(root, 'lib', 'batch'), {
    recursive: true,
    filter: (path) => !/\.(ts|mts)$|demo$/.test(path),
  });
  cpSync(join(project, 'package-lock.json'), join(root, 'package-lock.json'));
  symlinkSync(join(project, 'node_modules'), join(root, 'node_modules'));
  writeFileSync(
    join(root, 'build.mjs'),
    "import{mkdirSync as m,writeFileSync as w}from'node:fs';m('out',{recursive:true});w('out/index.html','built')",
  );
  writeFileSync(
    join(root, 'package.json'),
    JSON.stringify({ type: 'module', scripts: { build: 'node build.mjs' } }),
  );
});

const children = new Set<ChildProcess>();

afterAll(() => {
  for (const child of children) child.kill('SIGKILL');
  rmSync(root, { recursive: true });
});

interface Started {
  readonly child: ChildProcess;
  /** What it has printed, once it says the given words or ends. */
  until(words: string): Promise<string>;
  readonly ended: Promise<number | null>;
}

function start(args: readonly string[], env: Readonly<Record<string, string>> = {}): Started {
  const { PORT: _, ...own } = process.env;
  const child = spawn(process.execPath, [join(root, 'lib', 'batch', 'start.mjs'), ...args], {
    cwd: root,
    env: { ...own, ...env },
  });
  children.add(child);
  let printed = '';
  const waiting = new Set<() => void>();
  const changed = () => {
    for (const check of waiting) check();
  };
  for (const stream of [child.stdout, child.stderr]) {
    stream?.on('data', (chunk) => {
      printed += String(chunk);
      changed();
    });
  }
  const ended = new Promise<number | null>((resolve) => {
    child.on('close', (code) => {
      resolve(code);
      changed();
    });
  });
  const until = (words: string) =>
    new Promise<string>((resolve) => {
      const check = () => {
        if (printed.includes(words) || child.exitCode !== null) resolve(printed);
      };
      waiting.add(check);
      check();
    });
  return { child, until, ended };
}

async function freePort(): Promise<number> {
  const site = await serveSite({ root });
  await site.close();
  return site.port;
}

describe('npm start', () => {
  test.each(['SIGINT', 'SIGTERM'] as const)(
    'builds, serves on the named port, and %s ends it cleanly',
    async (signal) => {
      const port = await freePort();
      rmSync(join(root, 'out'), { recursive: true, force: true });
      const started = start(['--port', String(port)]);
      expect(await started.until('served on')).toContain(`http://127.0.0.1:${port}/`);
      expect(await (await fetch(`http://127.0.0.1:${port}/`)).text()).toBe('built');
      started.child.kill(signal);
      expect(await started.ended).toBe(0);
      await expect(fetch(`http://127.0.0.1:${port}/`)).rejects.toThrow();
    },
  );

  describe('with a port that is taken', () => {
    let other: ServedSite;

    test('refuses one that the user named, by option or by PORT, and says what to do', async () => {
      other = await serveSite({ root });
      const byOption = start(['--no-build', '--port', String(other.port)]);
      const byVariable = start(['--no-build'], { PORT: String(other.port) });
      for (const started of [byOption, byVariable]) {
        expect(await started.ended).toBe(1);
        expect(await started.until('taken')).toMatch(
          new RegExp(`Port ${other.port} is taken.*--port ${other.port + 1}`),
        );
      }
      await other.close();
    });

    test('takes the next free one after the usual one, and says so', async () => {
      // Someone on this machine may hold the usual port already: then that is the taken one.
      const usual = await serveSite({ root, port: 4173 }).catch(() => null);
      const started = start(['--no-build']);
      const printed = await started.until('served on');
      expect(printed).toMatch(/Port 4173 is taken by another program: using 41\d\d instead\./);
      started.child.kill('SIGTERM');
      expect(await started.ended).toBe(0);
      await usual?.close();
    });
  });

  test.each([
    [['--port', 'x'], /whole number from 0 to 65535, got 'x'/],
    [['--colour'], /Use: npm start/],
  ])('refuses %j with status 2', async (args, message) => {
    const started = start(args);
    expect(await started.ended).toBe(2);
    expect(await started.until('\0')).toMatch(message);
  });

  test('--no-build without a built site says so', async () => {
    rmSync(join(root, 'out'), { recursive: true, force: true });
    const started = start(['--no-build']);
    expect(await started.ended).toBe(1);
    expect(await started.until('\0')).toMatch(/no built site yet/);
  });

  test('a build that fails is said to have failed', async () => {
    writeFileSync(
      join(root, 'package.json'),
      JSON.stringify({ type: 'module', scripts: { build: 'node -e process.exit(1)' } }),
    );
    const started = start([]);
    expect(await started.ended).toBe(1);
    expect(await started.until('\0')).toMatch(/could not be built/);
  });
});
