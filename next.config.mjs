import { sourceHash } from './lib/batch/site/sourceHash.mjs';

const sources = sourceHash(import.meta.dirname);

/**
 * Static export: every page is a file, no server is ever needed. SITE_PATH, such as /fleet, is the path under which the site
 * is to lie; without it, the root.
 */
export default {
  output: 'export',
  basePath: process.env.SITE_PATH ?? '',
  generateBuildId: () => sources,
  env: { SITE_SOURCES: sources },
  reactStrictMode: true,
  poweredByHeader: false,
  trailingSlash: true,
  images: { unoptimized: true },
  turbopack: {
    resolveAlias: {
      // The site's policy forbids eval, and these try it when they are loaded: zod is told not to, and whether the language
      // has generators is answered as whether it has symbols, which came with them and is found out without eval.
      zod: './lib/records/zodWithoutEval.ts',
      '@stdlib/assert-has-generator-support': '@stdlib/assert-has-symbol-support',
    },
  },
};
