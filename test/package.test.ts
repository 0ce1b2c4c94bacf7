import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';

import { checkout, filesBelow, installPacked, run, runWell, type Customer, type Finished } from './support/pack.js';

const boardFile = 'fixtures/boards/gig-board.yaml';
const catalogueFile = 'fixtures/shops/marram-street.yaml';

/** A customer's program. It prints what the library answers to the files and to their texts. */
const consumer = `
import { readFile } from 'node:fs/promises';
import { answerJson, choose, faultText, readInputs, type Answer, type Inputs, type ReadResult } from 'boardfeed';
import { answerText, inputsFromText } from 'boardfeed/core';

const board = 'node_modules/boardfeed/${boardFile}';
const catalogue = 'node_modules/boardfeed/${catalogueFile}';
const named = async (file: string) => ({ file, text: await readFile(file, 'utf8') });

async function answered(read: ReadResult<Inputs>): Promise<{ json: string; text: string }> {
  if (read.kind === 'faulty') throw new Error(read.faults.map(faultText).join(', '));
  const kit = read.value;
  const answer: Answer = await choose(kit, { aim: 'cost' });
  return { json: answerJson(kit, answer), text: answerText(kit, answer, { width: 80, colour: false }) };
}

const fromFiles = await answered(await readInputs(board, catalogue));
const fromTexts = await answered(inputsFromText(await named(board), await named(catalogue)));
console.log(JSON.stringify({ fromFiles, fromTexts }));
`;

type Printed = Readonly<Record<'fromFiles' | 'fromTexts', { readonly json: string; readonly text: string }>>;

const consumerSettings = {
  compilerOptions: {
    target: 'ES2023',
    lib: ['ES2023'],
    module: 'nodenext',
    strict: true,
    exactOptionalPropertyTypes: true,
    skipLibCheck: false,
    skipDefaultLibCheck: true,
    noEmitOnError: true,
    types: ['node'],
    typeRoots: [join(checkout, 'node_modules', '@types')],
  },
  files: ['consumer.ts'],
};

describe('the package, packed and installed in an empty folder', () => {
  let customer: Customer;

  /** What the command makes of its own example, as JSON. */
  let example: Finished;

  beforeAll(async () => {
    customer = await installPacked();
    example = await run(customer.command, choosing('--json'), customer.folder);
  });

  afterAll(() => customer.remove());

  const choosing = (...options: readonly string[]): readonly string[] => [
    'choose',
    join(customer.packageFolder, boardFile),
    join(customer.packageFolder, catalogueFile),
    ...options,
  ];

  test('holds what a customer needs', async () => {
    expect(await filesBelow(customer.packageFolder)).toEqual(
      expect.arrayContaining([
        'CHANGELOG.md',
        'DEVELOPERS.md',
        'README.md',
        'dist/solver/engines/threads/engine-worker.js',
        'dist/command/boardfeed.js',
        'dist/command/folder-worker.js',
        'dist/src/core.d.ts',
        'dist/src/core.js',
        'dist/src/index.d.ts',
        'dist/src/index.js',
        'docs/choosing.md',
        'docs/developing/checklists.md',
        boardFile,
        catalogueFile,
        'package.json',
        'schemas/board.schema.json',
        'schemas/catalogue.schema.json',
        'schemas/plan.schema.json',
      ]),
    );
  });

  test('holds nothing else: no tests, no sources, no memory of the compiler', async () => {
    const expected =
      /^(README\.md|CHANGELOG\.md|DEVELOPERS\.md|package\.json|docs\/.+\.md|docs\/page\.png|fixtures\/.+|schemas\/[a-z-]+\.schema\.json|dist\/(src|solver)\/.+\.(js|d\.ts)|dist\/command\/[\w-]+\.js|dist\/page\/boardfeed\.html)$/;
    const files = await filesBelow(customer.packageFolder);
    expect(files.filter((file) => !expected.test(file))).toEqual([]);
  });

  test('holds exactly one module and its types for each source, and the page', async () => {
    const sources = await Promise.all(
      ['src', 'solver'].map(async (folder) => {
        const files = await filesBelow(join(checkout, folder));
        return files.flatMap((file) => {
          const stem = `dist/${folder}/${file.replace(/\.tsx?$/, '')}`;
          return /\.(d\.ts|css)$/.test(file) ? [] : [`${stem}.d.ts`, `${stem}.js`];
        });
      }),
    );
    const files = await filesBelow(customer.packageFolder);
    expect(files.filter((file) => /^dist\/(?!command\/)/.test(file))).toEqual(
      ['dist/page/boardfeed.html', ...sources.flat()].sort(),
    );
  });

  test('names its version and its commands', async () => {
    const { version } = JSON.parse(await readFile(join(checkout, 'package.json'), 'utf8')) as { version: string };
    expect(await runWell(customer.command, ['--version'], customer.folder)).toBe(`${version}\n`);
    expect(await runWell(customer.command, ['--help'], customer.folder)).toMatch(/^\s+choose\b/m);
  });

  test('powers every pedal of its own example', async () => {
    const board = parse(await readFile(join(checkout, boardFile), 'utf8')) as { pedals: readonly unknown[] };
    const plan = JSON.parse(example.output) as { format: string; status: string; feeds: readonly unknown[] };
    expect(example.exitCode).toBe(0);
    expect(plan).toMatchObject({ format: 'boardfeed/plan/1', status: 'proven', unpowered: [] });
    expect(plan.feeds).toHaveLength(board.pedals.length);
  });

  test('compiles and runs in a strict TypeScript program, and says there what the command says', async () => {
    await writeFile(join(customer.folder, 'consumer.ts'), consumer);
    await writeFile(join(customer.folder, 'tsconfig.json'), JSON.stringify(consumerSettings));
    const compiler = join(checkout, 'node_modules', 'typescript', 'bin', 'tsc');
    await runWell(process.execPath, [compiler, '-p', '.'], customer.folder);
    const printed = await runWell(process.execPath, ['consumer.js'], customer.folder);
    const { fromFiles, fromTexts } = JSON.parse(printed) as Printed;
    const commandText = await runWell(customer.command, choosing(), customer.folder);
    expect(fromFiles.json.trim()).toBe(example.output.trim());
    expect(fromFiles.text.trim()).toBe(commandText.trim());
    expect(fromTexts).toEqual(fromFiles);
  });
});
