import { builtinModules } from 'node:module';

import prettier from 'eslint-config-prettier';
import { defineConfig, globalIgnores } from 'eslint/config';
import typescript from 'typescript-eslint';

/** A comment that silences a rule says why after two dashes, as eslint itself writes it. */
const suppressionReason = {
  meta: { type: 'suggestion', schema: [], messages: { reason: 'Say after " -- " why the rule is silenced here.' } },
  create: (context) => ({
    Program() {
      for (const comment of context.sourceCode.getAllComments()) {
        if (/^\s*eslint-disable(?!.*\s--\s+\S)/s.test(comment.value)) {
          context.report({ loc: comment.loc, messageId: 'reason' });
        }
      }
    },
  }),
};

const outside = 'Only src/node and the threads of engines touch the world outside, and Node: pass it in.';
const timers = ['setTimeout', 'setInterval', 'queueMicrotask', 'MessageChannel'];
const timersOfNode = ['setImmediate', 'clearImmediate'];
const nodeOnly = ['process', 'Buffer', 'global', 'require', '__dirname', '__filename', ...timersOfNode];
const storage = ['localStorage', 'sessionStorage', 'indexedDB', 'caches'];
const browserOnly = ['document', 'window', 'navigator', 'location', 'history', 'Worker', 'postMessage', ...storage];
/** What a browser has under names that are easily meant for something else. */
const mistakable = [
  'name',
  'event',
  'status',
  'parent',
  'top',
  'self',
  'origin',
  'length',
  'open',
  'close',
  'stop',
  'print',
];
const surroundings = ['performance', 'fetch', ...timers, ...nodeOnly, ...browserOnly, ...mistakable];
const bareBuiltins = builtinModules.filter((name) => !name.startsWith('_'));

/** Nothing of the world outside: no Node module, no clock, no chance. */
const noSurroundings = (globals) => ({
  'no-console': 'error',
  'no-restricted-globals': ['error', ...globals.map((name) => ({ name, message: outside }))],
  'no-restricted-imports': [
    'error',
    {
      paths: bareBuiltins.map((name) => ({ name, message: outside })),
      patterns: [{ regex: '^node:', message: outside }],
    },
  ],
  'no-restricted-properties': [
    'error',
    { object: 'Date', property: 'now', message: outside },
    { object: 'AbortSignal', property: 'timeout', message: outside },
    { object: 'Math', property: 'random', message: 'Pass a seed in, so that every run can be repeated.' },
    { object: 'globalThis', property: 'process', message: outside },
    { object: 'globalThis', property: 'console', message: outside },
  ],
  'no-restricted-syntax': [
    'error',
    ...houseSyntax,
    { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: outside },
  ],
});

const houseSyntax = [
  { selector: 'ExportDefaultDeclaration', message: 'Named exports only.' },
  { selector: 'TSEnumDeclaration', message: 'Use a union of strings.' },
  { selector: 'TSParameterProperty', message: 'Declare the field and set it in the constructor.' },
];

const house = {
  'boardfeed/suppression-reason': 'error',
  'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
  'max-depth': ['error', 4],
  'max-params': ['error', 6],
  complexity: ['error', 15],
  eqeqeq: 'error',
  'no-cond-assign': 'error',
  'no-constant-condition': ['error', { checkLoops: false }],
  'no-empty': 'error',
  'no-empty-character-class': 'error',
  'no-irregular-whitespace': 'error',
  'no-loss-of-precision': 'error',
  'no-misleading-character-class': 'error',
  'no-self-assign': 'error',
  'no-self-compare': 'error',
  'no-sparse-arrays': 'error',
  'no-unmodified-loop-condition': 'error',
  'no-unsafe-finally': 'error',
  'no-useless-escape': 'error',
  'no-param-reassign': 'error',
  'object-shorthand': 'error',
  'prefer-template': 'error',
  'no-restricted-syntax': ['error', ...houseSyntax],
};

const houseTypes = {
  '@typescript-eslint/consistent-type-definitions': ['error', 'type'],
  '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
  '@typescript-eslint/consistent-type-exports': ['error', { fixMixedExportsWithInlineTypeSpecifier: true }],
  '@typescript-eslint/switch-exhaustiveness-check': 'error',
  // The short form of it is the `!` that another rule forbids.
  '@typescript-eslint/non-nullable-type-assertion-style': 'off',
  // Brackets say that the key may be absent: `environment['TERM']`.
  '@typescript-eslint/dot-notation': ['error', { allowIndexSignaturePropertyAccess: true }],
  // Numbers in a message are what a message is for; everything else that is no string is a slip.
  '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
  // A brand's constructor names its type once, in what it returns.
  '@typescript-eslint/no-unnecessary-type-parameters': 'off',
  // A short arrow may pass on what it calls.
  '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
  '@typescript-eslint/no-unnecessary-condition': ['error', { allowConstantLoopConditions: 'only-allowed-literals' }],
  // There is no enum here (see above), and to look for misuse of one takes a seventh of the time of all rules.
  '@typescript-eslint/no-unsafe-enum-assignment': 'off',
  '@typescript-eslint/no-unsafe-enum-comparison': 'off',
  '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
};

export default defineConfig(
  globalIgnores(['dist/', 'coverage/', 'fixtures/']),
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  {
    files: ['**/*.{ts,tsx}'],
    extends: [typescript.configs.strictTypeChecked, typescript.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    plugins: { boardfeed: { rules: { 'suppression-reason': suppressionReason } } },
    rules: { ...house, ...houseTypes },
  },
  {
    files: ['src/**/*.{ts,tsx}', 'solver/**/*.ts'],
    rules: { 'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }] },
  },
  {
    files: ['src/**/*.ts', 'solver/**/*.ts'],
    ignores: ['src/node/**', 'src/web/**', 'solver/engines/threads/**'],
    rules: noSurroundings(surroundings),
  },
  {
    // The page has a browser, but no Node, and asks for nothing.
    files: ['src/web/**/*.{ts,tsx}'],
    rules: {
      'no-console': 'error',
      'no-restricted-globals': [
        'error',
        ...['fetch', ...nodeOnly, ...mistakable].map((name) => ({ name, message: 'The page has no such thing.' })),
      ],
    },
  },
  {
    // What is handed in where nothing else is: by the standards of the web, which Node keeps, too.
    files: ['solver/timing.ts'],
    rules: noSurroundings(surroundings.filter((name) => name !== 'performance' && !timers.includes(name))),
  },
  {
    // An engine keeps its own time limit, and the states of a foreign solver are more than it tells apart.
    files: ['solver/engines/*.ts', 'bench/rival/engines/highs.ts'],
    rules: {
      ...noSurroundings(surroundings.filter((name) => name !== 'performance')),
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
    },
  },
  { files: ['src/node/disk/**/*.ts', 'test/**/*.ts'], rules: { 'no-console': 'error' } },
  {
    // Tests take functions out of objects that they have made themselves.
    files: ['test/**/*.ts'],
    rules: { '@typescript-eslint/unbound-method': 'off' },
  },
  {
    // The tools that read these files ask for a default export.
    files: ['*.config.ts'],
    rules: { 'no-restricted-syntax': 'off' },
  },
  {
    files: ['**/*.{js,mjs,cjs}'],
    languageOptions: { globals: { console: 'readonly', process: 'readonly', URL: 'readonly', module: 'writable' } },
    rules: { 'no-undef': 'error', 'no-unused-vars': 'error', eqeqeq: 'error' },
  },
  prettier,
);
