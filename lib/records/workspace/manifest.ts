import { z } from 'zod';
import { WorkspaceRefused } from './Workspace';

export const workspaceForm = 'workspace of overhaul records';
export const workspaceVersion = 1;

/** Where things lie in the zip; a file's own name stands in the manifest only, never as a path. */
export const manifestPath = 'manifest.json';
/** SHA-256 of the manifest, which itself holds those of all other parts. */
export const checksumPath = 'manifest.sha256';
export const journalPath = 'journal.json';
export function filePath(index: number): string {
  return `files/${String(index + 1).padStart(5, '0')}`;
}

const checksum = z.string().regex(/^[0-9a-f]{64}$/, 'not 64 hexadecimal digits');

const manifestSchema = z.object({
  form: z.literal(workspaceForm),
  version: z.literal(workspaceVersion),
  /** ISO date and time, UTC. */
  saved_at: z.string(),
  files: z.array(
    z.object({
      name: z.string().min(1).max(1024),
      path: z.string(),
      bytes: z.int().nonnegative(),
      sha256: checksum,
    }),
  ),
  journal: z.object({ path: z.literal(journalPath), entries: z.int().nonnegative(), sha256: checksum }),
});

export type Manifest = z.output<typeof manifestSchema>;

/**
 * The manifest of a workspace file as it stands there, and the version of the form it is in.
 *
 * @throws WorkspaceRefused if it is foreign, not JSON or of a newer version
 */
export function manifestContent(bytes: Uint8Array): {
  readonly content: Readonly<Record<string, unknown>>;
  readonly version: number;
} {
  const content = (parsedJson(bytes, manifestPath) ?? {}) as Readonly<Record<string, unknown>>;
  const { form, version } = content;
  if (form !== workspaceForm)
    throw new WorkspaceRefused(
      `This is not a workspace file: its ${manifestPath} does not say "form": "${workspaceForm}".`,
    );
  if (typeof version !== 'number' || !Number.isSafeInteger(version) || version < 0)
    throw new WorkspaceRefused('The workspace file is damaged: its manifest names no version.');
  if (version > workspaceVersion)
    throw new WorkspaceRefused(
      `The workspace was saved by a newer version of this page (form ${version}; this page reads ${workspaceVersion}): reload the page, or open it where it was saved.`,
    );
  return { content, version };
}

/**
 * Checks the content of a manifest of the current version.
 *
 * @throws WorkspaceRefused with the place and the reason if it departs from the form
 */
export function readManifest(content: unknown): Manifest {
  const read = manifestSchema.safeParse(content);
  if (!read.success) throw new WorkspaceRefused(`The workspace file is damaged: ${placeOf(read.error)}.`);
  const paths = read.data.files.map(({ path }) => path);
  if (paths.some((path, index) => path !== filePath(index)))
    throw new WorkspaceRefused(
      'The workspace file is damaged: its manifest names paths that this page never writes.',
    );
  if (new Set(read.data.files.map(({ name }) => name)).size < paths.length)
    throw new WorkspaceRefused('The workspace file is damaged: two of its files have one name.');
  return read.data;
}

/** The content of a JSON part of a workspace file. */
export function parsedJson(bytes: Uint8Array, path: string): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    throw new WorkspaceRefused(`The workspace file is damaged: ${path} in it is not JSON.`);
  }
}

/** Where a part of a workspace file departs from its form. */
export function placeOf(error: z.ZodError): string {
  const issue = error.issues[0];
  return `${issue?.path.join('.') || 'its content'}: ${issue?.message ?? 'not as written by this page'}`;
}
