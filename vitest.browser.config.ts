import { defineConfig } from 'vitest/config';

process.env.TZ = 'UTC';
process.env.LC_ALL = 'en_GB.UTF-8';

// A browser that starts beside others on two cores has taken more than a minute.
const common = { testTimeout: 300_000, hookTimeout: 180_000 };

/**
 * Browser tests drive the built site in Chromium, two files at a time: much of a page's opening is one thread waiting for
 * another. Those in `long` take minutes and run by themselves, before a release.
 */
export default defineConfig({
  test: {
    maxWorkers: 2,
    projects: [
      { test: { ...common, name: 'browser', include: ['tests/browser/*.browser.test.ts'] } },
      { test: { ...common, name: 'long', include: ['tests/browser/long/*.browser.test.ts'] } },
    ],
  },
});
