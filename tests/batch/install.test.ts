import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isInstalled, whyNotInstalled } from '../../lib/batch/install.mjs';

const moduleUrl = new URL('../../lib/batch/install.mjs', import.meta.url).href;
let root: string;

const locked = {
  '': { version: '1.0.0' },
  'node_modules/one': { version: '1.2.3' },
  'node_modules/other-system': { version: '1.0.0', optional: true },
};

function write(wanted: object, installed: object | null) {
  writeFileSync(join(root, 'package-lock.json'), JSON.stringify({ lockfileVersion: 3, packages: wanted }));
  if (installed === null) return;
  mkdirSync(join(root, 'node_modules', 'one'), { recursive: true });
  writeFileSync(join(root, 'node_modules', '.package-lock.json'), JSON.stringify({ packages: installed }));
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'endfloat-install-'));
});

afterEach(() => rmSync(root, { recursive: true }));

describe('isInstalled', () => {
  test('holds if every package but those of other systems is there in its version', () => {
    write(locked, { 'node_modules/one': { version: '1.2.3' } });
    expect(isInstalled(root)).toBe(true);
  });

  test.each([
    ['nothing is installed', null],
    ['another version is installed', { 'node_modules/one': { version: '1.2.2' } }],
    ['a package is missing', {}],
  ])('fails if %s', (_, installed) => {
    write(locked, installed);
    expect(isInstalled(root)).toBe(false);
  });

  test('fails if the folder of a package is gone', () => {
    write(locked, { 'node_modules/one': { version: '1.2.3' } });
    rmSync(join(root, 'node_modules', 'one'), { recursive: true });
    expect(isInstalled(root)).toBe(false);
  });
});

describe('install', () => {
  test('says that the registry did not answer, and what to do', async () => {
    const manifest = { name: 'x', version: '1.0.0', dependencies: { one: '1.2.3' } };
    write({ '': manifest, 'node_modules/one': { version: '1.2.3' } }, null);
    writeFileSync(join(root, 'package.json'), JSON.stringify(manifest));
    // Port 9 of this machine answers nobody; a cache of its own keeps npm from knowing the package already.
    writeFileSync(
      join(root, '.npmrc'),
      `registry=http://127.0.0.1:9/\nfetch-retries=0\ncache=${join(root, 'cache')}\nupdate-notifier=false\n`,
    );
    const script = `import { install } from '${moduleUrl}'; console.log(await install(${JSON.stringify(root)}));`;
    const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', script]);
    expect(stdout).toMatch(/the npm registry did not answer.*run the command again/);
  });

  test.each([
    ['npm error code ENOTFOUND', /did not answer/],
    ['npm error code EUSAGE ... in sync', /do not agree/],
    ['npm error code ENOSPC', /disk is full/],
    ['npm error code EACCES', /belongs to someone else/],
    ['npm error something else', /see the lines of npm above/],
  ])('reads npm’s %s', (output, message) => {
    expect(whyNotInstalled(output)).toMatch(message);
  });

  test('says that npm is missing', () => {
    expect(whyNotInstalled('', { code: 'ENOENT', message: 'spawn npm ENOENT' })).toMatch(/npm was not found/);
  });
});
