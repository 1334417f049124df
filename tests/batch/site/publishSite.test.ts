import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { FleetResult } from '../../../lib/analysis/types';
import { finishSite } from '../../../lib/batch/site/finishSite.mjs';
import { inlineScriptHashes, policyOf } from '../../../lib/batch/site/policy.mjs';
import { publishSite } from '../../../lib/batch/site/publishSite';
import { siteFiles } from '../../../lib/batch/site/siteFiles.mjs';
import { filesOf } from '../../support/withRecords';
import { writeSmallFleet } from '../partitions/madeFolders';

const folder = mkdtempSync(join(tmpdir(), 'publish-'));
afterAll(() => rmSync(folder, { recursive: true }));
const [built, site] = [join(folder, 'out'), join(folder, 'site')];
const inSite = (name: string) => readFileSync(join(site, name), 'utf8');

/** The answer that a page carries as data. */
function carried(html: string): Readonly<Record<string, unknown>> {
  const text = /<script type="application\/json" data-first="made">([^<]*)<\/script>/.exec(html)?.[1];
  return JSON.parse(text ?? 'null');
}

beforeAll(async () => {
  mkdirSync(join(built, 'demo'), { recursive: true });
  const page =
    '<!DOCTYPE html><html><head><meta charSet="utf-8"/><title>T</title><link rel="stylesheet" href="/s.css"/><script src="/a.js" async=""></script></head><body><div hidden="" data-first="source"></div><script>one()</script></body></html>';
  writeFileSync(join(built, 'index.html'), page);
  const demoAnswer = {
    sentence: 'DEMO-1 & others <wait>.',
    remarks: ['DEMO-1 has no plan.'],
    wide: '<svg/>',
    narrow: '<svg/>',
  };
  writeFileSync(join(built, 'demo', 'first.json'), JSON.stringify(demoAnswer));
  writeFileSync(join(built, 'demo', 'index.json'), '["units.csv"]');
  writeFileSync(join(built, 'demo', 'units.csv'), 'unit,frame\nDEMO-1,Lark\n');
  finishSite(built);
  const fleet = filesOf(await writeSmallFleet(join(folder, 'data'), false));
  const [first, ...others] = fleet.map(({ name, bytes }) => ({ name: `frame=Frame 0001/${name}`, bytes }));
  if (first === undefined) throw new Error('no files');
  await publishSite(built, [first, ...others], site);
});

it('opens with the answers of now and finds the files at the addresses that it lists', () => {
  const names = JSON.parse(inSite('demo/index.json')) as string[];
  expect(names).toContain('frame=Frame 0001/readings.csv');
  for (const name of names) expect(inSite(join('demo', name)).length).toBeGreaterThan(50);
  expect(siteFiles(site).some((name) => inSite(name).includes('DEMO-1'))).toBe(false);
  const unpacked = (name: string) =>
    JSON.parse(gunzipSync(readFileSync(join(site, 'demo', name))).toString());
  const fleet = unpacked('fleet.json.gz') as FleetResult;
  expect([fleet.units.length, fleet.asOf, fleet.margins.length > 24]).toEqual([24, '2026-06-30', true]);
  expect(Object.keys(unpacked('answers.json.gz')).map((key) => JSON.parse(key)[0])).toEqual([
    'decisions',
    'drift',
    'spares',
    'sisters',
    'report',
  ]);
});

it('carries the answer of now in the page itself, in place of the one that was built, with the scripts behind it', () => {
  const [before, after] = [readFileSync(join(built, 'index.html'), 'utf8'), inSite('index.html')];
  expect(carried(before)).toMatchObject({
    sentence: 'DEMO-1 & others <wait>.',
    remarks: ['DEMO-1 has no plan.'],
  });
  const { sentence, wide, narrow } = carried(after);
  expect(sentence).toMatch(/of 24 units|^None of 24 units/);
  for (const picture of [wide, narrow])
    expect(picture).toMatch(/^<svg [\s\S]*var\(--chance-\d\)[\s\S]*<\/svg>$/);
  expect(wide).not.toBe(narrow);
  for (const html of [before, after]) {
    expect(html).toContain('<link data-run="" href="/a.js"/>');
    expect(html).not.toContain('async=""');
    expect(html.match(/data-first="made"|id="first-view-filled"|rel="expect"/g)).toHaveLength(3);
    for (const hash of inlineScriptHashes(html)) expect(policyOf(html)).toContain(hash);
  }
  expect(siteFiles(site)).not.toContain('demo/first.json');
});

it('says in every page whose fleet it is, under the policy that was built', () => {
  expect(inSite('index.html')).toContain('<meta name="site-fleet" content="fleet of this site"/>');
  expect(policyOf(inSite('index.html'))).toBe(policyOf(readFileSync(join(built, 'index.html'), 'utf8')));
});

it('the service worker keeps exactly these files, by the hashes of their bytes', () => {
  const list = JSON.parse(
    /^const site = (\{[\s\S]*?\n\});/.exec(inSite('serviceWorker.js'))?.[1] ?? 'null',
  ) as {
    readonly version: string;
    readonly files: Readonly<Record<string, string>>;
  };
  expect(inSite('index.html')).toContain(`<meta name="site-version" content="${list.version}"/>`);
  const expected = siteFiles(site)
    .filter((name) => name !== 'serviceWorker.js')
    .map((name) => [
      encodeURI(name.replace(/index\.html$/, '')),
      `sha256-${createHash('sha256')
        .update(readFileSync(join(site, name)))
        .digest('base64')}`,
    ]);
  expect(list.files).toEqual(Object.fromEntries(expected));
});

it('takes the place of an earlier site, and of nothing else', async () => {
  const units = { name: 'units.csv', bytes: new TextEncoder().encode('unit,frame\nA,B\n') };
  const before = siteFiles(site);
  await expect(publishSite(built, [units], site)).rejects.toThrow('No reading in these files can be used');
  expect(siteFiles(site)).toEqual(before);
  const other = join(folder, 'other');
  mkdirSync(other);
  writeFileSync(join(other, 'thesis.txt'), 'x');
  await expect(publishSite(built, [units], other)).rejects.toThrow(/holds something else than a site/);
  await expect(publishSite(folder, [units], site)).rejects.toThrow(/run npm run build first/);
  const odd = { ...units, name: 'a#b.csv' };
  await expect(publishSite(built, [odd], site)).rejects.toThrow(/cannot be part of an address/);
});
