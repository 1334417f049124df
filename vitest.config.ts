import { defineConfig } from 'vitest/config';

// 'today', time zone and locale are pinned so that no result depends on where or when the tests run.
process.env.TZ = 'UTC';
process.env.LC_ALL = 'en_GB.UTF-8';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    testTimeout: 60_000,
    // A fleet is opened before the tests of a file; a busy machine takes its time.
    hookTimeout: 120_000,
  },
});
