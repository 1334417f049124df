import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ServedSite, serveSite } from '../../lib/batch/serveSite.mjs';
import { policyOf, withPolicy, workerPolicy } from '../../lib/batch/site/policy.mjs';

const folder = mkdtempSync(join(tmpdir(), 'endfloat-serve-'));
const root = join(folder, 'out');
const statedPage = withPolicy('<head><meta charset="utf-8"/><script>one()</script></head>');
let site: ServedSite;

beforeAll(async () => {
  mkdirSync(join(root, 'unit'), { recursive: true });
  mkdirSync(join(root, '.hidden'));
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  writeFileSync(join(root, '.hidden', 'x.txt'), 'secret');
  writeFileSync(join(root, 'index.html'), 'home');
  writeFileSync(join(root, 'unit', 'index.html'), 'unit');
  writeFileSync(join(root, '404.html'), 'no such page');
  writeFileSync(join(root, 'stated.html'), statedPage);
  for (const name of ['a.wasm', 'a.wasm.gz', 'a.js', 'a.css', 'a.json', 'a.csv', 'a.svg', 'a.webmanifest']) {
    writeFileSync(join(root, name), name);
  }
  site = await serveSite({ root });
});

afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true });
});

/** Status line and body of a request whose path no client tidies up. */
function raw(path: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let answer = '';
    const socket = connect(site.port, '127.0.0.1', () =>
      socket.write(`GET ${path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n`),
    );
    socket.on('data', (chunk) => {
      answer += String(chunk);
    });
    socket.on('close', () => resolve(answer));
    socket.on('error', reject);
  });
}

describe('serveSite', () => {
  test.each([
    ['a.wasm', 'application/wasm'],
    ['a.wasm.gz', 'application/octet-stream'],
    ['a.js', 'text/javascript; charset=utf-8'],
    ['a.css', 'text/css; charset=utf-8'],
    ['a.json', 'application/json; charset=utf-8'],
    ['a.csv', 'text/csv; charset=utf-8'],
    ['a.svg', 'image/svg+xml'],
    ['a.webmanifest', 'application/manifest+json; charset=utf-8'],
  ])('%s is sent as %s, whole and not marked as packed', async (name, type) => {
    const answer = await fetch(`${site.url}${name}`);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe(type);
    expect(answer.headers.get('content-encoding')).toBeNull();
    expect(await answer.text()).toBe(name);
  });

  test('a folder is answered by its index.html, with and without the slash', async () => {
    expect(await (await fetch(site.url)).text()).toBe('home');
    expect(await (await fetch(`${site.url}unit/`)).text()).toBe('unit');
    const bare = await fetch(`${site.url}unit`);
    expect([new URL(bare.url).pathname, await bare.text()]).toEqual(['/unit/', 'unit']);
  });

  test('a page comes with the policy that it states, a script with that of a worker', async () => {
    const policy = async (name: string) =>
      (await fetch(`${site.url}${name}`)).headers.get('content-security-policy');
    expect(await policy('stated.html')).toBe(policyOf(statedPage));
    expect(await policy('a.js')).toBe(workerPolicy);
    expect(workerPolicy).toContain("connect-src 'self'");
    expect(await policy('')).toBeNull();
  });

  test('what is not there is answered by 404.html with status 404', async () => {
    const answer = await fetch(`${site.url}nowhere/`);
    expect([answer.status, await answer.text()]).toEqual([404, 'no such page']);
  });

  test.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/unit/../../secret.txt',
    '/.hidden/x.txt',
    '/%00',
  ])('nothing outside the site is sent: %s', async (path) => {
    const answer = await raw(path);
    expect(answer.split(' ')[1]).toBe('404');
    expect(answer).not.toContain('secret\n');
    expect(answer.endsWith('secret')).toBe(false);
  });

  test('HEAD sends no body; other methods are refused', async () => {
    const head = await fetch(site.url, { method: 'HEAD' });
    expect([head.status, head.headers.get('content-length'), await head.text()]).toEqual([200, '4', '']);
    const posted = await fetch(site.url, { method: 'POST' });
    expect([posted.status, posted.headers.get('allow')]).toEqual([405, 'GET, HEAD']);
  });

  test('a taken port is refused', async () => {
    await expect(serveSite({ root, port: site.port })).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });
});
