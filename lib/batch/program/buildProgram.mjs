import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, stat, utimes } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';

/** Builds lie here, below the root of the project: git leaves it out, and installing packages anew takes it away. */
const cache = join('node_modules', '.cache', 'endfloat');
/** Builds that were not used for so long are removed: one that still runs may load a further piece. */
const unused_ms = 7 * 24 * 3600 * 1000;

/**
 * Builds TypeScript files into plain JavaScript, once for the same sources: loading it takes a twentieth of the time of loading the
 * sources themselves. A build is named by a hash of the bytes of all sources, so a change is never missed.
 *
 * Builds at the same time do not meet: each is written aside and takes its place as a whole, the first one's stays.
 *
 * @param root folder of the project
 * @param entries files to be built, from the root, by the name of the built file
 * @param hash of the sources
 * @returns folder of the built files, `<name>.mjs` each
 * @throws Error if the builder is not installed, the sources cannot be built, or the folder cannot be written
 */
export async function buildProgram(root, entries, hash) {
  const builds = join(root, cache);
  const folder = join(builds, hash);
  if (existsSync(folder)) {
    // In use, see removeUnused; where the time cannot be set nothing can be removed either.
    await utimes(folder, new Date(), new Date()).catch(() => {});
    return folder;
  }
  const making = join(builds, `${randomUUID()}.part`);
  await mkdir(making, { recursive: true });
  try {
    await write(root, entries, making);
    await rename(making, folder).catch((error) => {
      if (!existsSync(folder)) throw error;
    });
  } finally {
    await rm(making, { recursive: true, force: true });
  }
  await removeUnused(builds);
  return folder;
}

async function write(root, entries, folder) {
  const { build } = await import('esbuild');
  await build({
    absWorkingDir: root,
    entryPoints: entries,
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    logLevel: 'silent',
    // Native code cannot be put into a file of JavaScript.
    external: ['@duckdb/node-bindings', 'pg-native'],
    // Packages of the older kind ask for Node's own modules by a function that a module does not have.
    banner: {
      js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
    },
    plugins: [sourceAddresses(root, folder)],
  });
}

/** Has a source say where it lies itself and not where it was built, so that it finds what lies beside it. */
function sourceAddresses(root, folder) {
  const folders = /[\\/](lib|app)[\\/].*\.(ts|tsx|mjs)$/;
  return {
    name: 'source-addresses',
    setup(building) {
      building.onLoad({ filter: folders }, async ({ path }) => {
        if (!path.startsWith(join(root, sep)) || path.includes('node_modules')) return undefined;
        const address = relative(folder, path).split(sep).join('/');
        const text = await readFile(path, 'utf8');
        return {
          contents: text.replaceAll(
            'import.meta.url',
            `new URL(${JSON.stringify(address)}, import.meta.url).href`,
          ),
          loader: path.endsWith('.tsx') ? 'tsx' : path.endsWith('.ts') ? 'ts' : 'js',
        };
      });
    },
  };
}

async function removeUnused(builds) {
  for (const name of await readdir(builds)) {
    const path = join(builds, name);
    const found = await stat(path).catch(() => null);
    if (found !== null && Date.now() - found.mtimeMs > unused_ms)
      await rm(path, { recursive: true, force: true });
  }
}
