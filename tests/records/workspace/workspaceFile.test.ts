import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { Decision } from '../../../lib/records/decisions/Decision';
import { withDecisions, withTakenBack } from '../../../lib/records/decisions/journal';
import { readWorkspace } from '../../../lib/records/workspace/readWorkspace';
import { type Workspace, WorkspaceRefused } from '../../../lib/records/workspace/Workspace';
import { writeWorkspace } from '../../../lib/records/workspace/writeWorkspace';

const savedAt = '2026-11-25T08:00:00.000Z';

const answer = (id: string, text: string): Decision => ({
  kind: 'answer',
  id,
  file: 'karte.csv',
  column: 'Spiel',
  question: 'Which unit?',
  answer: text,
});

const workspace: Workspace = {
  files: [
    { name: 'karte.csv', bytes: strToU8('Seriennummer;Spiel\nL-1;0,31\n') },
    { name: '../../etc/pässe <img onerror=x>.csv', bytes: new Uint8Array([0, 255, 254, 10]) },
    { name: 'empty.csv', bytes: new Uint8Array(0) },
  ],
  journal: withTakenBack(
    withDecisions([], [answer('a', 'mm'), answer('b', 'yes')], { at: savedAt, by: 'KL' }),
    ['b'],
    { at: savedAt, by: '' },
  ),
};

describe('a workspace file', () => {
  it('gives files and journal back to the last byte, whatever the names and bytes', async () => {
    const file = fc.record({
      name: fc.string({ minLength: 1, unit: 'binary' }),
      bytes: fc.uint8Array({ maxLength: 300 }),
    });
    const files = fc.uniqueArray(file, { selector: ({ name }) => name.toWellFormed(), maxLength: 6 });
    await fc.assert(
      fc.asyncProperty(files, async (given) => {
        const named = given.map((one) => ({ ...one, name: one.name.toWellFormed() }));
        const whole = { files: named, journal: workspace.journal };
        expect(await readWorkspace(await writeWorkspace(whole, savedAt))).toEqual(whole);
      }),
      { numRuns: 200 },
    );
  });

  it('is the same bytes for the same workspace, and carries SHA-256 checksums in a readable manifest', async () => {
    const bytes = await writeWorkspace(workspace, savedAt);
    expect(await writeWorkspace(workspace, savedAt)).toEqual(bytes);
    const manifest = JSON.parse(strFromU8(unzipSync(bytes)['manifest.json'] as Uint8Array));
    expect(manifest.files[0].sha256).toBe(
      createHash('sha256').update('Seriennummer;Spiel\nL-1;0,31\n').digest('hex'),
    );
  });

  it('cut off anywhere or with any byte changed, is refused with a reason or is what was written', async () => {
    const bytes = await writeWorkspace(workspace, savedAt);
    const damage = fc.oneof(
      fc.record({ cut: fc.nat(bytes.length - 1) }),
      fc.record({ at: fc.nat(bytes.length - 1), flip: fc.integer({ min: 1, max: 255 }) }),
    );
    let refused = 0;
    await fc.assert(
      fc.asyncProperty(damage, async (one) => {
        const damaged = 'cut' in one ? bytes.slice(0, one.cut) : bytes.slice();
        if ('at' in one) damaged[one.at] = (damaged[one.at] as number) ^ one.flip;
        try {
          // A byte of the zip that nothing depends on, such as an entry's day, may change.
          expect(await readWorkspace(damaged)).toEqual(workspace);
        } catch (error) {
          expect(error).toBeInstanceOf(WorkspaceRefused);
          expect((error as Error).message).toMatch(/workspace file/);
          refused++;
        }
      }),
      { numRuns: 600 },
    );
    expect(refused).toBeGreaterThan(400);
  });
});

/** The written workspace with one part replaced, added or removed. */
async function changedParts(change: (parts: Record<string, Uint8Array>) => void): Promise<Uint8Array> {
  const parts = unzipSync(await writeWorkspace(workspace, savedAt));
  change(parts);
  return zipSync(parts);
}

interface ChangedManifest {
  files: readonly { readonly name: string; readonly path: string }[];
}

function changedManifest(change: (manifest: ChangedManifest) => void): Promise<Uint8Array> {
  return changedParts((parts) => {
    const manifest = JSON.parse(strFromU8(parts['manifest.json'] as Uint8Array));
    change(manifest);
    const text = JSON.stringify(manifest);
    parts['manifest.json'] = strToU8(text);
    parts['manifest.sha256'] = strToU8(createHash('sha256').update(text).digest('hex'));
  });
}

describe('is refused with its reason', () => {
  const cases: readonly [string, () => Promise<Uint8Array> | Uint8Array, RegExp][] = [
    ['no bytes', () => new Uint8Array(0), /cannot be unpacked/],
    ['a CSV file', () => strToU8('unit,frame\nL-1,Lark\n'), /cannot be unpacked/],
    ['another zip', () => zipSync({ 'letter.txt': strToU8('hello') }), /without manifest\.json/],
    ['a newer version', () => changedManifest((m) => Object.assign(m, { version: 2 })), /newer version/],
    ['another form', () => changedManifest((m) => Object.assign(m, { form: 'x' })), /does not say "form"/],
    [
      'a manifest that is no JSON',
      () =>
        changedParts((p) => {
          p['manifest.json'] = strToU8('{');
        }),
      /not JSON/,
    ],
    [
      'a missing file',
      () =>
        changedParts((p) => {
          delete p['files/00001'];
        }),
      /files\/00001, which it names, is missing/,
    ],
    [
      'a changed file',
      () =>
        changedParts((p) => {
          p['files/00001'] = strToU8('Seriennummer;Spiel\nL-1;0,13\n');
        }),
      /'karte\.csv' in it does not agree/,
    ],
    [
      'a changed name in the manifest',
      () =>
        changedParts((p) => {
          const text = strFromU8(p['manifest.json'] as Uint8Array);
          p['manifest.json'] = strToU8(text.replace('karte.csv', 'warte.csv'));
        }),
      /the manifest in it does not agree/,
    ],
    [
      'a changed journal',
      () =>
        changedParts((p) => {
          p['journal.json'] = strToU8('[]');
        }),
      /the journal in it does not agree/,
    ],
    [
      'a part of its own',
      () =>
        changedParts((p) => {
          p['../../evil.sh'] = strToU8('x');
        }),
      /'\.\.\/\.\.\/evil\.sh', which its manifest does not name/,
    ],
    [
      'a path that climbs',
      () =>
        changedManifest((manifest) => {
          manifest.files = manifest.files.map((file) => ({ ...file, path: `../${file.path}` }));
        }),
      /paths that this page never writes/,
    ],
    [
      'two files of one name',
      () =>
        changedManifest((manifest) => {
          manifest.files = manifest.files.map((file) => ({ ...file, name: 'one.csv' }));
        }),
      /two of its files have one name/,
    ],
    [
      'a bomb',
      () =>
        changedParts((p) => {
          p['files/00001'] = new Uint8Array(60_000_000);
        }),
      /as no export does/,
    ],
  ];
  it.each(cases)('%s', async (_, make, reason) => {
    const opened = readWorkspace(await make());
    await expect(opened).rejects.toThrow(WorkspaceRefused);
    await expect(opened).rejects.toThrow(reason);
  });

  it('a zip whose entry says that it unpacks to little and does not', async () => {
    const bytes = zipSync({ 'manifest.json': new Uint8Array(60_000_000) });
    // The unpacked size stands in the central directory, 24 bytes after its signature.
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    for (let at = 0; at < bytes.length - 4; at++)
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 100, true);
    await expect(readWorkspace(bytes)).rejects.toThrow(WorkspaceRefused);
  });
});
