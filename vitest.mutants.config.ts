import { defineConfig } from 'vitest/config';

/** The tests of the part that is mutated; examples are the same in every run, so that a mutant's fate does not change. */
const tests: Readonly<Record<string, string>> = {
  audit: 'test/src/audit',
  domain: 'test/src/domain',
  formulation: 'test/src/formulation',
  solver: 'test/solver',
};

export default defineConfig({
  test: {
    include: [`${tests[process.env['MUTANTS'] ?? 'audit'] ?? 'test'}/**/*.test.ts`],
    // These count what came of minutes of examples, which a mutant does not get.
    exclude: ['**/second-opinion.properties.test.ts', '**/*.large.test.ts'],
    setupFiles: ['test/mutation/same-examples.ts'],
    testTimeout: 120_000,
  },
});
