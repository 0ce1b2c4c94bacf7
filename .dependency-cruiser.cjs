/**
 * Who may import whom. Imports run one way only:
 * node, web → report → planning → formulation → loadout → domain; audit, proof, reading → domain; planning, formulation → solver.
 */

const builtins = require('node:module').builtinModules;

/** What each folder may import from the project, besides itself. Nothing else of src and solver is open to it. */
const open = {
  'src/node/cli': [
    'src/node/disk',
    'src/node/threads',
    'src/web/file',
    'src/report',
    'src/planning',
    'src/audit',
    'src/proof',
    'src/reading',
    'src/domain',
  ],
  'src/node/threads': ['src/report', 'src/planning', 'src/reading', 'src/domain', 'solver'],
  'src/node/disk': ['src/reading', 'src/domain'],
  'src/web': ['src/report', 'src/planning', 'src/reading', 'src/domain', 'solver'],
  'src/report': ['src/planning', 'src/reading', 'src/domain'],
  'src/planning': ['src/formulation', 'src/loadout', 'src/audit', 'src/proof', 'src/domain', 'solver'],
  'src/formulation': ['src/loadout', 'src/domain', 'solver'],
  'src/loadout': ['src/domain', 'solver'],
  'src/audit': ['src/domain'],
  'src/proof': ['src/domain'],
  'src/reading': ['src/domain'],
  'src/domain': [],
  solver: [],
  'bench/rival': ['src/planning', 'src/formulation', 'src/loadout', 'src/audit', 'src/domain', 'solver'],
};

const oneWay = Object.entries(open).map(([folder, targets]) => ({
  name: `${folder.replace('src/', '').replace('/', '-')}-imports`,
  comment: `${folder} may import ${targets.length === 0 ? 'nothing else of the project' : targets.join(', ')}.`,
  severity: 'error',
  from: { path: `^${folder}/` },
  to: { path: '^(src|solver|test|bench)/', pathNot: [folder, ...targets].map((target) => `^${target}(/|$)`) },
}));

const rule = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to });

/** Modules that are run or loaded by their address, and so imported by nobody; the worker loads its engine that way. */
const entries =
  '^(src/index|src/core|src/node/cli/main|src/node/threads/folder-worker|src/web/main|src/web/file/page-style|solver/engines/threads/engine-worker|solver/engines/[^/]+)\\.tsx?$';

module.exports = {
  forbidden: [
    ...oneWay,
    rule('no-cycles', 'No module reaches itself.', {}, { circular: true }),
    rule(
      'no-orphans',
      'A module that imports nothing and is imported by nobody is dead.',
      { path: '^(src|solver)/', pathNot: entries, orphan: true },
      {},
    ),
    rule(
      'no-dead-modules',
      'Every module of the product is reached from the command, the library or a worker.',
      { path: entries },
      { path: '^(src|solver)/', pathNot: entries, reachable: false },
    ),
    rule(
      'index-stands-beside-cli',
      'The library entry may offer everything but the command.',
      { path: '^src/(index|core)\\.ts$' },
      { path: '^(src/node/cli|test|bench)/' },
    ),
    rule(
      'core-runs-anywhere',
      'What does not stand in src/node, nor in the threads of engines, reaches nothing of Node, not even through another module.',
      { path: '^(src|solver)/', pathNot: '^(src/node/|src/index\\.ts$|solver/engines/threads/)' },
      { path: `^(${builtins.join('|')})$|^(node:|src/node/|solver/engines/threads/)`, reachable: true },
    ),
    rule(
      'words-come-before-their-places',
      'What is said is put into words before it is laid out: words know no screen, page or table.',
      { path: '^src/report/words/' },
      { path: '^src/report/', pathNot: '^src/report/words/' },
    ),
    rule(
      'places-know-words-only',
      'No place to show words borrows from the terminal.',
      { path: '^src/report/(json|tables|drawing|page|labels)/' },
      { path: '^src/report/screen/' },
    ),
    rule(
      'report-takes-types-only',
      'A report describes a finished answer: of planning it needs the types, never the work.',
      { path: '^src/report/' },
      { path: '^src/planning/', dependencyTypesNot: ['type-only'] },
    ),
    rule(
      'audit-stands-alone',
      'The audit shares nothing with what it checks but the domain types: no package, no Node module.',
      { path: '^src/audit/' },
      { pathNot: '^src/(audit|domain)/' },
    ),
    rule(
      'proofs-are-checked-for-one-question',
      'Of planning, only what verifies a result reaches what checks proofs.',
      { path: '^src/planning/', pathNot: '^src/planning/verify/' },
      { path: '^src/proof/' },
    ),
    rule(
      'proofs-are-checked-alone',
      'What checks a proof shares nothing with what writes one but the domain types, and takes no package but for schemas.',
      { path: '^src/proof/' },
      { pathNot: '^(src/(proof|domain)|node_modules/zod)/' },
    ),
    rule(
      'engines-know-the-model-only',
      'An engine imports the model and the interface that it serves, not another engine or the search.',
      { path: '^(solver/engines/javascript-lp-solver|bench/rival/engines/highs)\\.ts$' },
      { path: '^(solver|bench)/', pathNot: '^(solver/(program|engines/engine)|bench/rival/engines/engines)\\.ts$' },
    ),
    rule(
      'rivals-stay-outside',
      'The product knows nothing of the second opinion that it is measured against.',
      { path: '^(src|solver)/' },
      { path: '^(bench|test)/' },
    ),
    rule(
      'checks-are-no-engines',
      'What checks an answer or a proof never reaches an engine, not even through another module.',
      { path: '^(solver/check|bench/rival/solver/bound)\\.ts$' },
      { path: '/engines/(highs|javascript)|^node_modules/(highs|javascript-lp-solver)/', reachable: true },
    ),
    rule(
      'engine-packages-in-engines-only',
      'A package that solves programs is imported by its own engine only.',
      { path: '^(src|solver|bench)/', pathNot: '/engines/(highs|javascript-lp-solver)\\.ts$' },
      { path: '^node_modules/(highs|javascript-lp-solver)/' },
    ),
    rule(
      'product-stands-on-dependencies',
      'What is published imports packages that are installed with it; the page is published with those that it needs inside.',
      { path: '^(src|solver)/', pathNot: '^src/web/' },
      { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown', 'npm-optional', 'npm-peer'] },
    ),
    rule('no-unresolvable', 'Every import leads somewhere.', {}, { couldNotResolve: true }),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'node', 'default'] },
  },
};
