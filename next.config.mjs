/** Static export: every page is a file, no server is ever needed. */
export default {
  output: 'export',
  reactStrictMode: true,
  poweredByHeader: false,
  trailingSlash: true,
  images: { unoptimized: true },
};
