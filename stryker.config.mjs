import { readdirSync, readFileSync } from 'node:fs';

/**
 * Mutation testing of one part of the house at a time: MUTANTS names it. Tests of that part alone have to notice: what only
 * a run of the whole product would notice counts as survived. SHARE=5 takes every fifth stretch of lines, for a sample.
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

const share = Number(process.env.SHARE ?? 1);
const stretch = 40;

/** Every so many-th stretch of the part's lines, counted on from file to file. */
function sample() {
  let stretches = 0;
  const files = readdirSync(folder, { recursive: true }).filter((name) => name.endsWith('.ts'));
  return files.sort().flatMap((name) => {
    const file = `${folder}/${name}`;
    const lines = readFileSync(file, 'utf8').split('\n').length;
    return Array.from({ length: Math.ceil(lines / stretch) }, (_, at) => at * stretch)
      .filter(() => stretches++ % share === 0)
      .map((before) => `${file}:${before + 1}-${before + stretch}`);
  });
}

export default {
  testRunner: 'vitest',
  vitest: { configFile: 'vitest.mutants.config.ts' },
  mutate: share > 1 ? sample() : [`${folder}/**/*.ts`],
  ignorePatterns: ['.scratch', 'fixtures', 'schemas'],
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
