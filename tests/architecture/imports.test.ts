import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, sep } from 'node:path';
import { describe, expect, it } from 'vitest';

/** What each part may import of ours, besides itself. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  app: ['lib/analysis', 'lib/charts', 'lib/records'],
  'lib/stats': [],
  'lib/records': [],
  'lib/store': ['lib/records'],
  'lib/analysis': ['lib/store', 'lib/stats', 'lib/records'],
  'lib/charts': ['lib/analysis'],
  // A site is made of pages and carries what they say.
  'lib/batch/site': ['app', 'lib/batch', 'lib/analysis', 'lib/store', 'lib/records'],
  'lib/batch': ['lib/batch/site', 'lib/analysis', 'lib/store', 'lib/stats', 'lib/records'],
};

function partOf(path: string): string | undefined {
  return Object.keys(allowed).find((part) => path === part || path.startsWith(part + sep));
}

function sourcesOf(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx|mjs)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
}

function importsOf(source: string): readonly { readonly path: string; readonly typeOnly: boolean }[] {
  const pattern =
    /(?:import|export)\s+(type\s)?[^'";]*?from\s+'([^']+)'|import\(\s*'([^']+)'\s*\)|import\s+'([^']+)'|new URL\('([^']+)', import\.meta\.url\)/g;
  return [...source.matchAll(pattern)].map((match) => ({
    path: (match[2] ?? match[3] ?? match[4] ?? match[5]) as string,
    typeOnly: match[1] !== undefined,
  }));
}

describe('imports point one way', () => {
  for (const file of Object.keys(allowed).flatMap((part) => sourcesOf(part))) {
    it(file, () => {
      const from = partOf(file) as string;
      for (const imported of importsOf(readFileSync(file, 'utf8'))) {
        if (!imported.path.startsWith('.')) continue;
        const to = partOf(normalize(join(dirname(file), imported.path)));
        if (to === undefined || to === from) continue;
        expect(allowed[from], `${file} imports ${imported.path}`).toContain(to);
        if (from === 'lib/charts')
          expect(imported.typeOnly, `${file} takes more than types from ${imported.path}`).toBe(true);
      }
    });
  }
});
