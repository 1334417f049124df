/**
 * Static export: every page is a file, no server is ever needed. SITE_PATH, such as /fleet, is the path under which the site
 * is to lie; without it, the root.
 */
export default {
  output: 'export',
  basePath: process.env.SITE_PATH ?? '',
  reactStrictMode: true,
  poweredByHeader: false,
  trailingSlash: true,
  images: { unoptimized: true },
  turbopack: { resolveAlias: { zod: './lib/records/zodWithoutEval.ts' } },
};
