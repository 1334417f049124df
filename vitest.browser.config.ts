import { defineConfig } from 'vitest/config';

process.env.TZ = 'UTC';
process.env.LC_ALL = 'en_GB.UTF-8';

/** Browser tests drive the built site in Chromium, two files at a time: much of a page's opening is one thread waiting for another. */
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.browser.test.ts'],
    testTimeout: 300_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
  },
});
