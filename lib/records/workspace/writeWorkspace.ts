import { type Zippable, zipSync } from 'fflate';
import {
  checksumPath,
  filePath,
  journalPath,
  type Manifest,
  manifestPath,
  workspaceForm,
  workspaceVersion,
} from './manifest';
import { sha256 } from './sha256';
import type { Workspace } from './Workspace';

/** Day written on every entry of the zip: the same workspace gives the same bytes. */
const noDay = new Date(1980, 0, 1);

/**
 * One file that holds a whole workspace: a zip with the files as they were dropped, the journal, and a readable manifest with
 * version and SHA-256 checksums.
 *
 * @param savedAt ISO date and time, UTC
 */
export async function writeWorkspace({ files, journal }: Workspace, savedAt: string): Promise<Uint8Array> {
  const written = json(journal);
  const manifest: Manifest = {
    form: workspaceForm,
    version: workspaceVersion,
    saved_at: savedAt,
    files: await Promise.all(
      files.map(async ({ name, bytes }, index) => ({
        name,
        path: filePath(index),
        bytes: bytes.length,
        sha256: await sha256(bytes),
      })),
    ),
    journal: { path: journalPath, entries: journal.length, sha256: await sha256(written) },
  };
  const listed = json(manifest);
  const content: Zippable = {
    [manifestPath]: listed,
    [checksumPath]: new TextEncoder().encode(`${await sha256(listed)}\n`),
    [journalPath]: written,
    ...Object.fromEntries(files.map(({ bytes }, index) => [filePath(index), bytes])),
  };
  return zipSync(content, { mtime: noDay, level: 6 });
}

function json(content: unknown): Uint8Array {
  return new TextEncoder().encode(`${JSON.stringify(content, null, 2)}\n`);
}
