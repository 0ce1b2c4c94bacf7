/**
 * Mutation testing of one part of the house at a time: MUTANTS names it. Tests of that part alone have to notice: what only
 * a run of the whole product would notice counts as survived.
 */
const parts = {
  audit: 'src/audit',
  domain: 'src/domain',
  formulation: 'src/formulation',
  solver: 'solver',
};

const part = process.env.MUTANTS ?? 'audit';
const folder = parts[part];
if (folder === undefined) throw new Error(`MUTANTS is one of ${Object.keys(parts).join(', ')}`);

export default {
  testRunner: 'vitest',
  vitest: { configFile: 'vitest.mutants.config.ts' },
  mutate: [`${folder}/**/*.ts`],
  ignorePatterns: ['.scratch', 'bench', 'fixtures', 'schemas'],
  // What is only said in words is tested where it is shown; a changed word is no changed rule.
  mutator: { excludedMutations: ['StringLiteral'] },
  coverageAnalysis: 'perTest',
  concurrency: 2,
  timeoutMS: 20_000,
  reporters: ['clear-text', 'progress-append-only', 'json'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: `reports/mutation-${part}.json` },
  thresholds: { high: 90, low: 80, break: null },
};
