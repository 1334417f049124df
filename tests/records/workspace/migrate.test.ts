import { createHash } from 'node:crypto';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { acknowledgement } from '../../../lib/records/decisions/acknowledgements';
import type { JournalEntry } from '../../../lib/records/decisions/Decision';
import { withDecisions } from '../../../lib/records/decisions/journal';
import { type Migration, migrated } from '../../../lib/records/workspace/migrate';
import { readWorkspace } from '../../../lib/records/workspace/readWorkspace';
import { WorkspaceRefused } from '../../../lib/records/workspace/Workspace';
import { writeWorkspace } from '../../../lib/records/workspace/writeWorkspace';

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const journal = withDecisions(
  [],
  [acknowledgement({ source: 'own', unit: 'L-1', series: 'runout', upTo: '2020-01-01', remark: 'seen' })],
  { at: '2026-01-01T00:00:00.000Z', by: 'AB' },
);
const files = [{ name: 'a.csv', bytes: strToU8('unit\nL-1\n') }];

/** A workspace file as an invented form 0 would have been: journal lines without what they are about and without 'before'. */
async function oldFile(): Promise<Uint8Array> {
  const parts = unzipSync(await writeWorkspace({ files, journal }, '2026-01-01T00:00:00.000Z'));
  const old = journal.map(({ before: _, decision, ...entry }) => ({
    ...entry,
    decision: { ...decision, source: undefined },
  }));
  const listing = strToU8(JSON.stringify(old));
  const manifest = JSON.parse(strFromU8(parts['manifest.json'] as Uint8Array));
  const { saved_at, ...rest } = manifest;
  const content = { ...rest, version: 0, day: saved_at.slice(0, 10) };
  content.journal = { ...manifest.journal, sha256: sha256(listing) };
  const listed = strToU8(JSON.stringify(content));
  return zipSync({
    ...parts,
    'journal.json': listing,
    'manifest.json': listed,
    'manifest.sha256': strToU8(sha256(listed)),
  });
}

const fromForm0: Migration = ({ manifest, journal: lines }) => {
  const { day, ...rest } = manifest;
  return {
    manifest: { ...rest, saved_at: `${day}T00:00:00.000Z` },
    journal: (lines as JournalEntry[]).map((line) => ({
      ...line,
      before: null,
      decision: { ...line.decision, source: 'own' },
    })),
  };
};

it('an older form is read by its step as if the current one had written it', async () => {
  expect(await readWorkspace(await oldFile(), new Map([[0, fromForm0]]))).toEqual({ files, journal });
});

it('a form without a step is refused with what to do', async () => {
  const opened = readWorkspace(await oldFile());
  await expect(opened).rejects.toThrow(WorkspaceRefused);
  await expect(opened).rejects.toThrow('saved in form 0, which this page does not read: it reads form 1');
});

it('steps are taken one after another, each from its own version, and only those needed', () => {
  const note =
    (word: string): Migration =>
    ({ manifest, journal: lines }) => ({
      manifest,
      journal: `${lines}${word}`,
    });
  const steps = new Map([1, 2, 3].map((version) => [version, note(` ${version}`)]));
  const content = { manifest: { form: 'x', version: 2 }, journal: 'from' };
  expect(migrated(content, { from: 2, to: 4, steps })).toEqual({
    manifest: { form: 'x', version: 4 },
    journal: 'from 2 3',
  });
  expect(migrated(content, { from: 4, to: 4, steps })).toBe(content);
});
