import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { expect, it } from 'vitest';

/** What only the worker needs: with it a page is five times as heavy. */
const computing = /^lib\/(store|stats\/wear)\//;

const routes = readdirSync('app', { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && ['page.tsx', 'layout.tsx'].includes(entry.name))
  .map((entry) => join(entry.parentPath, entry.name));

/** Files of ours whose code comes with a file; what is imported as types only comes with nothing. */
function broughtBy(path: string): readonly string[] {
  const statements = readFileSync(path, 'utf8').matchAll(
    /^(?:import|export)\s+(?!type\b)(?:([^'";]*?)\s+from\s+)?'(\.[^']+)'/gm,
  );
  return [...statements]
    .filter(([, names]) => names === undefined || !/^\{(\s*type [^,}]+,?)+\s*\}$/.test(names))
    .flatMap(([, , from = '']) => {
      const file = normalize(join(dirname(path), from));
      return [file, `${file}.ts`, `${file}.tsx`].filter(
        (one) => /\.(tsx?|mjs)$/.test(one) && existsSync(one),
      );
    });
}

it.each(routes)('%s comes without what only the worker needs', (route) => {
  const chains = new Map<string, readonly string[]>([[route, [route]]]);
  for (const [path, chain] of chains) {
    for (const next of broughtBy(path)) if (!chains.has(next)) chains.set(next, [...chain, next]);
  }
  expect(chains.size).toBeGreaterThan(3);
  expect([...chains].filter(([path]) => computing.test(path)).map(([, chain]) => chain)).toEqual([]);
});
