import { WorkspaceRefused } from './Workspace';

/** What a workspace file of some version says in JSON, before anything in it is checked. */
export interface SavedContent {
  readonly manifest: Readonly<Record<string, unknown>>;
  readonly journal: unknown;
}

/** Makes content of the next version of content of one version. */
export type Migration = (content: SavedContent) => SavedContent;

/** By the version that each starts from. Version 1 is the first that was ever saved. */
export const migrations: ReadonlyMap<number, Migration> = new Map();

/**
 * Content of an older version as the current one would have written it; step by step, so that each version is described once.
 *
 * @throws WorkspaceRefused if a version on the way is not known any more
 */
export function migrated(
  content: SavedContent,
  { from, to, steps = migrations }: { from: number; to: number; steps?: ReadonlyMap<number, Migration> },
): SavedContent {
  let now = content;
  for (let version = from; version < to; version++) {
    const step = steps.get(version);
    if (step === undefined)
      throw new WorkspaceRefused(
        `The workspace was saved in form ${from}, which this page does not read: it reads form ${to}. Open it where it was saved.`,
      );
    const next = step(now);
    now = { ...next, manifest: { ...next.manifest, version: version + 1 } };
  }
  return now;
}
