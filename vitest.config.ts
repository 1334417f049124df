import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

// 'today', time zone and locale are pinned so that no result depends on where or when the tests run.
process.env.TZ = 'UTC';
process.env.LC_ALL = 'en_GB.UTF-8';

const common = {
  testTimeout: 60_000,
  // A fleet is opened before the tests of a file; a busy machine takes its time.
  hookTimeout: 120_000,
};

export default defineConfig({
  test: {
    // One worker a core: of two cores the usual choice leaves one idle.
    maxWorkers: availableParallelism(),
    projects: [
      {
        test: {
          ...common,
          name: 'app',
          include: ['tests/app/**/*.test.{ts,tsx}'],
        },
      },
      {
        test: {
          ...common,
          name: 'library',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/app/**', 'tests/browser/**', 'node_modules/**'],
          // Nothing is mocked there: modules are loaded once a worker and not once a file.
          isolate: false,
        },
      },
    ],
  },
});
