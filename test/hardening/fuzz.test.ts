import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';

import { share, trying } from '../support/runs.js';
import { boardfeed, fixture, tideway } from '../src/node/cli/command.js';
import { Host } from './host.js';
import { expectUpright } from './laws.js';
import { mutations } from './mutations.js';

/** How many inputs all of them are; `npm run fuzz` tries ten times as many. */
const runs = 2_000;

const host = new Host();
const folders = mkdtemp(join(tmpdir(), 'boardfeed-fuzz-'));
afterAll(async () => {
  host.close();
  await rm(await folders, { recursive: true });
});

const [tidewayBoard, quayside] = tideway;

/** A result and its proof, which no fixture holds. */
async function made(): Promise<{ readonly plan: string; readonly proof: string }> {
  const [plan, proof] = [join(await folders, 'plan'), join(await folders, 'proof')];
  const { output } = await boardfeed(['choose', ...tideway, '--json', '--proof', proof]);
  await writeFile(plan, output);
  return { plan, proof };
}
const results = made();

/** What is run, on which files; those that are not changed help the others to be read to their end. */
const subjects = [
  { parameters: ['choose', 'a', 'b', '--time', '1', '--json'], files: [tidewayBoard, quayside] },
  { parameters: ['choose', 'a', 'b', '--time', '1', '--aim', 'quiet'], files: [tidewayBoard, quayside] },
  { parameters: ['check', 'a'], files: [fixture('boards/hurried.yaml')] },
  { parameters: ['check', 'a', '--json'], files: [fixture('boards/new-pedal.yaml')] },
  { parameters: ['rewire', 'a', '--time', '1'], files: [fixture('boards/new-pedal.yaml')] },
  { parameters: ['verify', 'a', 'b', 'c', '--proof', 'd'], files: [tidewayBoard, quayside, 'plan', 'proof'] },
  { parameters: ['explain', 'a', 'b', '--time', '1'], files: [tidewayBoard, quayside] },
  { parameters: ['spare', 'a', '--time', '1', '--json'], files: [fixture('boards/new-pedal.yaml')] },
  { parameters: ['compare', 'a', 'b', '--best', '2', '--time', '1'], files: [tidewayBoard, quayside] },
  { parameters: ['convert', 'a'], files: [fixture('tables/festival-pedals.csv')] },
  { parameters: ['convert', 'a'], files: [fixture('tables/small-shop.csv')] },
] as const;

const input = fc.record({
  subject: fc.constantFrom(...subjects),
  changed: fc.nat(3),
  changes: mutations,
});

test('each broken file is read or refused, and nothing else happens', { timeout: 7_200_000 }, async () => {
  const endings = new Map<number, number>();
  let count = 0;
  await fc.assert(
    fc.asyncProperty(input, async ({ subject, changed, changes }) => {
      const folder = join(await folders, String((count += 1)));
      await mkdir(folder);
      const { plan, proof } = await results;
      const names = subject.files.map((_, index) => 'abcd'.charAt(index));
      for (const [index, file] of subject.files.entries()) {
        const valid = await readFile(file === 'plan' ? plan : file === 'proof' ? proof : file);
        const isChanged = index === changed % subject.files.length;
        const bytes = isChanged ? changes.reduce<Buffer>((current, change) => change(current), valid) : valid;
        await writeFile(join(folder, names[index] ?? ''), bytes);
      }
      const ran = await host.run(subject.parameters, folder);
      try {
        expectUpright(ran);
        expect(await readdir(folder)).toEqual(names);
      } catch (error) {
        const name = names[changed % names.length] ?? '';
        const text = await readFile(join(folder, name), 'utf8');
        throw new Error(`${subject.parameters.join(' ')}, with ${name}: ${JSON.stringify(text)}`, { cause: error });
      }
      endings.set(ran.code, (endings.get(ran.code) ?? 0) + 1);
      await rm(folder, { recursive: true });
    }),
    trying(runs),
  );
  // Most are refused, but not all: then nothing behind the reading would have been tried.
  expect(endings.get(3) ?? 0).toBeGreaterThan(share(runs / 3));
  expect(endings.get(0) ?? 0).toBeGreaterThan(share(runs / 100));
});
