import { defineConfig } from 'vitest/config';

/** Where to leave the results for a machine to read; the people's report is printed all the same. */
const resultsFile = process.env.TEST_RESULTS_FILE;

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    // Tests that run the built command take it as Node does.
    server: { deps: { external: [/\/dist\//] } },
    setupFiles: ['test/support/no-threads-left.ts'],
    // A forgotten `.only` fails the run: `npm test` runs every test.
    allowOnly: false,
    // No test asserts a time. This only stops one that hangs, on a machine that is slow and busy, too.
    testTimeout: 1_200_000,
    hookTimeout: 1_200_000,
    // Nothing else is tried again: see test/browser/frames.ts.
    retry: { count: 1, condition: /page, context or browser has been closed/ },
    pool: 'forks',
    // Files of one process share what they import: loading it anew for each took a quarter of all the time.
    isolate: false,
    // Left to itself, vitest keeps a core free.
    maxWorkers: '100%',
    ...(resultsFile === undefined ? {} : { reporters: ['default', 'json'], outputFile: { json: resultsFile } }),
  },
});
