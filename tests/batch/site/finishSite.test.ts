import { webcrypto } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { finishSite, stateVersion } from '../../../lib/batch/site/finishSite.mjs';
import { inlineScriptHashes, policyOf, withPolicy, withPolicyAnew } from '../../../lib/batch/site/policy.mjs';
import { fileHashes } from '../../../lib/batch/site/siteFiles.mjs';
import { sourceHash } from '../../../lib/batch/site/sourceHash.mjs';

const page = (script: string) =>
  `<!DOCTYPE html><html><head><meta charSet="utf-8"/><script src="/a.js" async=""></script><title>T</title></head><body><script id="x">${script}</script></body></html>`;

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'endfloat-site-'));
  mkdirSync(join(root, 'unit'));
  writeFileSync(join(root, 'index.html'), page('one()'));
  writeFileSync(join(root, '404.html'), page('none()'));
  writeFileSync(join(root, 'unit', 'index.html'), page('two()'));
  writeFileSync(join(root, 'a b.js'), 'a');
});

afterEach(() => rmSync(root, { recursive: true }));

const read = (name: string) => readFileSync(join(root, name), 'utf8');
const versionIn = (name: string) => /<meta name="site-version" content="([^"]*)"\/>/.exec(read(name))?.[1];

describe('the policy of a page', () => {
  test('names the inline scripts by the hash that the standard gives as its example', () => {
    // W3C, Content Security Policy Level 3, section 8.4: the hash of alert('Hello, world.');
    expect(inlineScriptHashes(page("alert('Hello, world.');"))).toEqual([
      "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='",
    ]);
  });

  test('stands before every script and allows no inline script, style or eval beside those named', () => {
    const html = withPolicy(page('one()'));
    const policy = policyOf(html) ?? '';
    expect(html.indexOf('Content-Security-Policy')).toBeLessThan(html.indexOf('<script'));
    expect(policy).toMatch(/^default-src 'none'; script-src 'self' 'sha256-[^']+';/);
    const images = "img-src 'self' blob:;";
    expect(policy).toContain(images);
    expect(policy.replace(images, '')).not.toMatch(/unsafe|\*|https?:|data:|blob:/);
  });

  test('is stated anew where a script comes in other words, as another program writes it', () => {
    const other = withPolicyAnew(withPolicy(page('one()')).replace('one()', 'one( )'));
    expect(other).toBe(withPolicy(page('one( )')));
  });

  test('is asked for only once, and not of a page without a character set', () => {
    expect(() => withPolicy(withPolicy(page('x')))).toThrow(/requires a page without a policy/);
    expect(() => withPolicy('<html></html>')).toThrow(/requires <meta charset/);
  });
});

describe('finishSite', () => {
  test('states in every page its own policy and the one version, and lists every file with its hash', async () => {
    finishSite(root);
    const version = versionIn('index.html');
    expect(version).toMatch(/^[0-9a-f]{16}$/);
    expect(['404.html', 'unit/index.html'].map(versionIn)).toEqual([version, version]);
    expect(policyOf(read('index.html'))).not.toBe(policyOf(read('unit/index.html')));
    const worker = read('serviceWorker.js');
    const site = JSON.parse(worker.slice(worker.indexOf('{'), worker.indexOf('};') + 1));
    expect(site.version).toBe(version);
    expect(Object.keys(site.files)).toEqual(['a%20b.js', '', 'unit/']);
    const digest = await webcrypto.subtle.digest('SHA-256', readFileSync(join(root, 'unit/index.html')));
    expect(site.files['unit/']).toBe(`sha256-${Buffer.from(digest).toString('base64')}`);
    expect(fileHashes(root)).toEqual(site.files);
  });

  test('a version stands for the content: the same files give the same one, another byte another one', () => {
    finishSite(root);
    const version = versionIn('index.html');
    stateVersion(root);
    expect(versionIn('index.html')).toBe(version);
    expect(read('index.html').split('site-version')).toHaveLength(2);
    writeFileSync(join(root, 'a b.js'), 'b');
    stateVersion(root);
    expect(versionIn('index.html')).not.toBe(version);
  });
});

test('a build is named by its sources: the same ones give the same name wherever they lie, another byte another one', () => {
  const made = (place: string, text: string) => {
    const folder = join(root, place);
    for (const name of ['app', 'lib/stats']) mkdirSync(join(folder, name), { recursive: true });
    for (const name of ['next.config.mjs', 'package-lock.json', 'app/page.tsx'])
      writeFileSync(join(folder, name), name);
    writeFileSync(join(folder, 'lib/stats/mean.ts'), text);
    return sourceHash(folder);
  };
  expect(made('one', 'a')).toBe(made('two', 'a'));
  expect(made('one', 'b')).not.toBe(made('two', 'a'));
});
