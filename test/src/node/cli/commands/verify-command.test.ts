import { readdir, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

import { beforeAll, describe, expect, test } from 'vitest';

import {
  boardfeed,
  complaints,
  fixture,
  gigBoard,
  marramStreet,
  printedObject,
  scratchFiles,
  spawned,
} from '../command.js';

const scratch = scratchFiles();
const firstBoard = fixture('boards/first-board.yaml');
const impossibleBoard = fixture('boards/impossible.yaml');

/** A board with the result and the proof that `choose` has written for it. */
type Proven = { readonly board: string; readonly plan: string; readonly proof: string };
const made = new Map<string, Proven>();

async function chosen(board: string, ...more: readonly string[]): Promise<Proven> {
  const plan = await scratch(`plan-${made.size}.json`, '');
  const proof = join(dirname(plan), `proof-${made.size}.json`);
  const ended = await boardfeed(['choose', board, marramStreet, '--json', '--proof', proof, ...more]);
  expect(complaints(ended)).toBe(`Proof written to ${proof}.\n`);
  const of = { board, plan: await scratch(`plan-${made.size}.json`, ended.output), proof };
  made.set([board, ...more].join(' '), of);
  return of;
}

const known = (key: string): Proven => {
  const found = made.get(key);
  if (found === undefined) throw new Error(`nothing was chosen for ${key}`);
  return found;
};

beforeAll(async () => {
  await chosen(gigBoard);
  await chosen(firstBoard);
  await chosen(firstBoard, '--aim', 'bricks');
  await chosen(impossibleBoard);
});

const verified = ({ board, plan, proof }: Proven, ...more: readonly string[]) =>
  boardfeed(['verify', board, marramStreet, plan, '--proof', proof, ...more]);

/** A clock that has gone on by two seconds whenever it is looked at. */
const slowly =
  'const now = performance.now.bind(performance); let more = 0; performance.now = () => now() + (more += 2000);';

test('a check that lasts says on standard error how far it has come', async () => {
  const { board, plan, proof } = known(firstBoard);
  const ended = await spawned(['verify', board, marramStreet, plan, '--proof', proof], { before: slowly });
  expect(ended.code).toBe(0);
  expect(ended.errors).toMatch(/^(Checking the proof, \d+ s: case \d+ of \d+ at the most\.\n)+$/);
});

/** The same with one text in a file replaced by another. */
async function changed(of: Proven, file: 'plan' | 'proof', from: string | RegExp, to: string): Promise<Proven> {
  const text = await readFile(of[file], 'utf8');
  const other = text.replace(from, to);
  expect(other).not.toBe(text);
  return { ...of, [file]: await scratch(`changed-${file}.json`, other) };
}

describe('what choose has written holds, exit code 0', () => {
  test.each([gigBoard, firstBoard, `${firstBoard} --aim bricks`])('%s', async (key) => {
    const ended = await verified(known(key));
    expect([ended.code, complaints(ended)]).toEqual([0, '']);
    expect(ended.output).toMatch(/: proven\nEvery hard rule holds/);
    expect(ended.output).toContain('No plan is better');
  });

  test('as JSON', async () => {
    const ended = await verified(known(firstBoard), '--json');
    expect([ended.code, complaints(ended)]).toEqual([0, '']);
    expect(printedObject(ended)).toMatchObject({ format: 'boardfeed/verdict/1', verdict: 'proven', aim: 'cost' });
  });

  test('where no plan exists', async () => {
    const ended = await verified(known(impossibleBoard));
    expect([ended.code, complaints(ended)]).toEqual([0, '']);
    expect(ended.output).toMatch(/: no plan exists, proven\nEvery plan leaves at least 1 pedal without power\./);
  });
});

describe('what does not hold is refused with the reason, exit code 4', () => {
  const refused = async (of: Proven, what: string, reason: RegExp): Promise<void> => {
    const ended = await verified(of);
    expect([ended.code, complaints(ended)]).toEqual([4, '']);
    expect(ended.output).toContain(`The ${what} does not hold.`);
    expect(ended.output.replace(/\s+/g, ' ')).toMatch(reason);
  };

  test('a plan that says it costs less', async () => {
    const of = await changed(known(gigBoard), 'plan', '"money": "36.50"', '"money": "35.50"');
    await refused(of, 'plan', /The plan says that score\.money is 3550; its feeds make it 3650\./);
  });

  test('a plan that breaks a rule', async () => {
    const of = await changed(known(gigBoard), 'plan', /"polarity": "centre-negative"/, '"polarity": "centre-positive"');
    await refused(of, 'plan', /Do not plug it in\. Why/);
  });

  test('a proof that shows too little', async () => {
    const of = await changed(known(gigBoard), 'proof', /"pedals":\{[^}]*\}/, '"pedals":{}');
    await refused(of, 'proof', /A case is left open/);
  });

  test('the proof of another board', async () => {
    const { proof } = known(firstBoard);
    await refused({ ...known(gigBoard), proof }, 'proof', /It is about the board "First board", not "/);
  });
});

describe('a file that cannot be read, exit code 3', () => {
  const faulty = async (of: Proven, says: RegExp): Promise<void> => {
    const ended = await verified(of);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toMatch(says);
  };

  test('there is none', async () => {
    await faulty(
      { ...known(gigBoard), proof: 'no-such-proof.json' },
      /^no-such-proof\.json:1:1: there is no such file\./,
    );
  });

  test('the plan for the proof', async () => {
    const { plan } = known(gigBoard);
    await faulty({ ...known(gigBoard), proof: plan }, /plan-0\.json:2:13 format: /);
  });

  test('the proof for the plan', async () => {
    const { proof } = known(gigBoard);
    await faulty({ ...known(gigBoard), plan: proof }, /proof-0\.json:1:\d+ format: /);
  });

  test('a proof of an earlier version', async () => {
    const of = await changed(known(gigBoard), 'proof', 'boardfeed/proof/2', 'boardfeed/proof/1');
    await faulty(
      of,
      /^\S+changed-proof\.json:1:\d+ format: the proof has the format boardfeed\/proof\/1 [^\n]*\n {2}Write the proof again [^\n]*\n1 fault in \S+\n$/,
    );
  });

  test('half a proof', async () => {
    const of = await changed(known(gigBoard), 'proof', /"value":[^]*/, '');
    await faulty(of, /changed-proof\.json:\d+:\d+: not valid JSON/);
  });
});

describe('choose --proof', () => {
  const toPlace = (proof: string, ...more: readonly string[]) =>
    boardfeed(['choose', firstBoard, marramStreet, '--proof', proof, ...more]);

  test('leaves nothing beside the proof', async () => {
    const names = await readdir(dirname(known(gigBoard).proof));
    expect(names.filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  test('does not replace a file, unless with --force', async () => {
    const path = await scratch('there.json', 'mine');
    const refused = await toPlace(path);
    expect(refused).toMatchObject({ code: 3, output: '' });
    expect(refused.errors).toMatch(/there\.json: there is a file of that name already\. .*--force/);
    expect(await readFile(path, 'utf8')).toBe('mine');
    const forced = await toPlace(path, '--force');
    expect(forced.code).toBe(0);
    expect(await readFile(path, 'utf8')).toContain('"boardfeed/proof/2"');
  });

  test('says before the search that it cannot write there', async () => {
    const folder = dirname(known(gigBoard).proof);
    expect(await toPlace(folder)).toMatchObject({
      code: 3,
      output: '',
      errors: `${folder}: this is a folder, not a file. Name a file in it.\n`,
    });
    const missing = join(folder, 'none', 'proof.json');
    expect(await toPlace(missing)).toMatchObject({ code: 3, output: '' });
  });

  test('says that there is none when the search was stopped', async () => {
    const path = join(dirname(known(gigBoard).proof), 'stopped.json');
    const ended = await boardfeed(['choose', gigBoard, marramStreet, '--time', '0.001', '--proof', path]);
    expect(ended.code).toBe(5);
    expect(complaints(ended)).toBe('No proof written: the search stopped before there was one.\n');
  });

  test('goes with --force only', async () => {
    const ended = await boardfeed(['choose', firstBoard, marramStreet, '--force']);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toContain('error: --force goes with --proof or --report only');
  });
});
