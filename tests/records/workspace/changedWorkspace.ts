import { createHash } from 'node:crypto';
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { withDecisions, withTakenBack } from '../../../lib/records/decisions/journal';
import type { Workspace } from '../../../lib/records/workspace/Workspace';
import { writeWorkspace } from '../../../lib/records/workspace/writeWorkspace';

export const savedAt = '2026-11-25T08:00:00.000Z';

const answer = (id: string, text: string) =>
  ({
    kind: 'answer',
    id,
    file: 'karte.csv',
    column: 'Spiel',
    question: 'Which unit?',
    answer: text,
  }) as const;

export const workspace: Workspace = {
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

export type Parts = Record<string, Uint8Array>;

/** The written workspace with parts replaced, added or removed. */
export async function changedParts(change: (parts: Parts) => void): Promise<Uint8Array> {
  const parts = unzipSync(await writeWorkspace(workspace, savedAt));
  change(parts);
  return zipSync(parts as Zippable);
}

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** A manifest that is changed at will. */
export interface AnyManifest {
  form?: unknown;
  version?: unknown;
  saved_at?: unknown;
  files: Record<string, unknown>[];
  journal: Record<string, unknown>;
}

/** Writes a manifest's text with the checksum that belongs to it. */
export function setManifest(parts: Parts, text: string): void {
  parts['manifest.json'] = strToU8(text);
  parts['manifest.sha256'] = strToU8(sha256(strToU8(text)));
}

/** The written workspace with a changed manifest whose own checksum is right. */
export function changedManifest(change: (manifest: AnyManifest, parts: Parts) => void): Promise<Uint8Array> {
  return changedParts((parts) => {
    const manifest = JSON.parse(strFromU8(parts['manifest.json'] as Uint8Array)) as AnyManifest;
    change(manifest, parts);
    setManifest(parts, JSON.stringify(manifest));
  });
}

/** The written workspace with another text as its journal, all checksums right. */
export function changedJournal(text: string, entries = 3): Promise<Uint8Array> {
  return changedManifest((manifest, parts) => {
    parts['journal.json'] = strToU8(text);
    manifest.journal = { ...manifest.journal, entries, sha256: sha256(strToU8(text)) };
  });
}

/** The written workspace with other content as its first file, all checksums right. */
export function changedFile(name: string, bytes: Uint8Array): Promise<Uint8Array> {
  return changedManifest((manifest, parts) => {
    parts['files/00001'] = bytes;
    manifest.files[0] = { ...manifest.files[0], name, bytes: bytes.length, sha256: sha256(bytes) };
  });
}
