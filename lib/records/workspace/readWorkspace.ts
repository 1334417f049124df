import { type UnzipFileInfo, unzipSync } from 'fflate';
import { z } from 'zod';
import { journalEntrySchema } from '../decisions/Decision';
import {
  checksumPath,
  journalPath,
  type Manifest,
  manifestContent,
  manifestPath,
  parsedJson,
  placeOf,
  readManifest,
  workspaceVersion,
} from './manifest';
import { type Migration, migrated, migrations } from './migrate';
import { sha256 } from './sha256';
import { type Workspace, WorkspaceRefused } from './Workspace';

/** More than this is no workspace that this page can open. */
export const mostUnpacked_bytes = 2_000_000_000;
const mostEntries = 20_000;
/** Text packs to a twentieth at the most; what unpacks to far more than it takes is made to fill the memory. */
const mostRatio = 200;
const smallEnough_bytes = 10_000_000;

/**
 * Reads a workspace file that is not sealed.
 *
 * Nothing is taken in part: sizes are looked at before anything is unpacked, checksums before anything is used.
 *
 * @param steps from older versions of the form
 * @throws WorkspaceRefused with the reason if the file is no workspace, damaged, hostile or of a newer version
 */
export async function readWorkspace(
  bytes: Uint8Array,
  steps: ReadonlyMap<number, Migration> = migrations,
): Promise<Workspace> {
  const parts = unpacked(bytes);
  const listed = partOf(parts, manifestPath);
  const { content, version } = manifestContent(listed);
  const checksum = new TextDecoder().decode(partOf(parts, checksumPath)).trim();
  if ((await sha256(listed)) !== checksum) throw changed('the manifest');
  const listing = partOf(parts, journalPath);
  const current =
    version === workspaceVersion
      ? null
      : migrated(
          { manifest: content, journal: parsedJson(listing, journalPath) },
          { from: version, to: workspaceVersion, steps },
        );
  const manifest = readManifest(current?.manifest ?? content);
  const known = new Set([manifestPath, checksumPath, journalPath, ...manifest.files.map(({ path }) => path)]);
  const foreign = [...parts.keys()].find((path) => !known.has(path));
  if (foreign !== undefined)
    throw new WorkspaceRefused(
      `The workspace file holds '${foreign.slice(0, 80)}', which its manifest does not name: it was changed. Nothing was taken from it.`,
    );
  const files = await Promise.all(
    manifest.files.map(async (file) => {
      const content = partOf(parts, file.path);
      if (content.length !== file.bytes || (await sha256(content)) !== file.sha256)
        throw changed(`'${file.name}'`);
      return { name: file.name, bytes: content };
    }),
  );
  if ((await sha256(listing)) !== manifest.journal.sha256) throw changed('the journal');
  return { files, journal: journalOf(current?.journal ?? parsedJson(listing, journalPath), manifest) };
}

function journalOf(content: unknown, { journal }: Manifest): Workspace['journal'] {
  const read = z.array(journalEntrySchema).safeParse(content);
  if (!read.success)
    throw new WorkspaceRefused(`The workspace file is damaged: journal ${placeOf(read.error)}.`);
  if (read.data.length !== journal.entries) throw changed('the journal');
  if (read.data.some(({ number }, index) => number !== index + 1))
    throw new WorkspaceRefused('The workspace file is damaged: the lines of its journal are not in order.');
  return read.data;
}

function changed(what: string): WorkspaceRefused {
  return new WorkspaceRefused(
    `The workspace file is damaged: ${what} in it does not agree with its checksum. Nothing was taken from it; use another copy.`,
  );
}

function partOf(parts: ReadonlyMap<string, Uint8Array>, path: string): Uint8Array {
  const part = parts.get(path);
  if (part === undefined)
    throw new WorkspaceRefused(
      path === manifestPath
        ? `This is not a workspace file: it is a zip without ${manifestPath}.`
        : `The workspace file is damaged: ${path}, which it names, is missing in it.`,
    );
  return part;
}

function unpacked(bytes: Uint8Array): ReadonlyMap<string, Uint8Array> {
  let entries = 0;
  let total_bytes = 0;
  const seen = new Set<string>();
  const refuse = (reason: string): never => {
    throw new WorkspaceRefused(`The workspace file was not opened: ${reason}. Nothing was taken from it.`);
  };
  const filter = ({ name, size, originalSize }: UnzipFileInfo) => {
    total_bytes += originalSize;
    if (++entries > mostEntries) refuse(`it holds over ${mostEntries} entries`);
    if (seen.has(name)) refuse(`it holds two entries named '${name.slice(0, 80)}'`);
    if (total_bytes > mostUnpacked_bytes) refuse('unpacked it would take over 2 GB');
    if (originalSize > smallEnough_bytes && originalSize > mostRatio * Math.max(1, size))
      refuse(`an entry of ${size} bytes would unpack to ${originalSize}, as no export does`);
    seen.add(name);
    return true;
  };
  try {
    const parts = new Map(Object.entries(unzipSync(bytes, { filter })));
    // The unpacker holds parts by name in an object, where a few names are taken.
    if (parts.size < entries) refuse('an entry of it cannot be named as it is');
    return parts;
  } catch (error) {
    throw error instanceof WorkspaceRefused
      ? error
      : notReadable(error instanceof Error ? error.message : '');
  }
}

function notReadable(reason: string): WorkspaceRefused {
  return new WorkspaceRefused(
    `This is not a whole workspace file: it cannot be unpacked (${reason || 'unknown form'}). It may be cut off: copy it again.`,
  );
}
