import { readFile } from 'node:fs/promises';

import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';

import { readInputs } from '../../../../../src/node/disk/read-inputs.js';
import { startingPolicy } from '../../../../../src/reading/drafts/starting-policy.js';
import { boardfeed, complaints, fixture, marramStreet, printedObject, scratchFiles } from '../command.js';

const scratch = scratchFiles();
const pedals = fixture('tables/festival-pedals.csv');
const shop = fixture('tables/small-shop.csv');
const assume = ['--assume', 'power=DC, polarity=centre-negative,inlet=barrel-2.1,ground=negative'];

test('a table of pedals becomes a board, with a policy to begin with that is said to be one', async () => {
  const ended = await boardfeed(['convert', pedals, '--currency', 'EUR', '--name', 'Festival']);
  expect(ended.code).toBe(0);
  expect(ended.errors).toBe(
    `${pedals} states no policy: the board has starting values. Read them before you rely on a plan.\n`,
  );
  expect(ended.output).toContain('policy:                         # starting values: read them');
  const data = parse(ended.output) as Record<string, unknown>;
  expect(Object.keys(data)).toEqual(['board', 'currency', 'policy', 'pedals']);
  expect(data).toMatchObject({ board: 'Festival', currency: 'EUR', policy: startingPolicy() });
  const read = await readInputs(await scratch('festival.yaml', ended.output), marramStreet);
  expect(read).toMatchObject({ kind: 'read', value: { board: { pedals: { length: 5 } } } });
});

test('the starting policy is that of the first board, without its limits', async () => {
  const first = parse(await readFile(fixture('boards/first-board.yaml'), 'utf8')) as { policy: object };
  const {
    mains: _mains,
    sockets: _sockets,
    budget: _budget,
    bricks: _bricks,
    ...policy
  } = first.policy as Record<string, unknown>;
  expect(startingPolicy()).toEqual(policy);
});

test('what stands above the table is kept, and a policy there needs no starting values', async () => {
  const table = await scratch(
    'own.csv',
    [
      '# board: Tour',
      '# currency: USD',
      '# policy: {headroom: {alone: 1.5, chained: 3, supply: 1.5}, chains: never}',
      '# owned: {supplies: [quay-6]}',
      'name,volts,milliamps',
      'Echo,9/12,300/230',
      '',
    ].join('\n'),
  );
  const ended = await boardfeed(['convert', table, '--currency', 'EUR', ...assume]);
  expect(ended).toMatchObject({ code: 0, errors: '' });
  expect(parse(ended.output)).toEqual({
    board: 'Tour',
    currency: 'EUR',
    assume: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' },
    policy: { headroom: { alone: 1.5, chained: 3, supply: 1.5 }, chains: 'never' },
    pedals: [{ name: 'Echo', volts: [9, 12], milliamps: { 9: 300, 12: 230 } }],
    owned: { supplies: ['quay-6'] },
  });
});

test('a table of supplies becomes a catalogue, a bank a line', async () => {
  const ended = await boardfeed(['convert', shop]);
  expect(ended).toMatchObject({ code: 0, errors: '' });
  expect(ended.output).toMatch(/^ {2}- id: quay-6\n {4}name: Quay 6\n {4}price: 119\n/m);
  expect(ended.output.match(/^ {6}- \{outputs: /gm)).toHaveLength(3);
  const board = fixture('boards/tideway.yaml');
  const fromTable = await readInputs(board, shop);
  const fromYaml = await readInputs(board, await scratch('small-shop.yaml', ended.output));
  expect(fromTable.kind).toBe('read');
  expect(fromYaml).toEqual(fromTable);
});

test('tables can be given wherever a board or a catalogue is', async () => {
  const text = await readFile(pedals, 'utf8');
  const policy =
    '# currency: EUR\n# policy: {headroom: {alone: 1.2, chained: 2, supply: 1.2}, guess: 1.5, chains: allow, noisePrice: 20}\n';
  const table = await scratch('tour.csv', `${policy}${text}`);
  const ended = await boardfeed(['choose', table, shop, '--json']);
  expect(complaints(ended)).toBe('');
  expect(ended.code).toBe(0);
  expect(printedObject(ended)).toMatchObject({ board: 'tour', status: 'proven', unpowered: [] });
});

describe('what is missing is never made up', () => {
  test('neither the currency nor what bears on safety, exit code 3', async () => {
    const table = await scratch('bare.csv', 'name,volts,milliamps\nEcho,9,10\n');
    const ended = await boardfeed(['convert', table]);
    expect(ended).toMatchObject({ code: 3, output: '' });
    for (const key of ['1:1 currency', '2:1 Echo, Power', '2:1 Echo, Inlet', '2:1 Echo, Ground'])
      expect(ended.errors).toContain(`bare.csv:${key}: missing`);
    expect(ended.errors).not.toContain('policy');
  });

  test('not even all of it when some is assumed', async () => {
    const table = await scratch('bare.csv', 'name,volts,milliamps\nEcho,9,10\n');
    const ended = await boardfeed([
      'convert',
      table,
      '--currency',
      'EUR',
      '--assume',
      'power=DC,inlet=barrel-2.1,ground=negative',
    ]);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toMatch(
      /^\S+bare\.csv:2:1 Echo, Polarity: missing; it bears on safety[^\n]*\n {5}2 \| Echo,9,10\n {7}\| \^{4}\n[^\n]*\n1 fault in/,
    );
  });

  test('wrong options are told like what is wrong in a file', async () => {
    const ended = await boardfeed(['convert', pedals, '--currency', 'EURO', '--assume', 'colour=red,power=dc']);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toContain('Did you mean EUR?');
    expect(ended.errors).toContain('assume.colour: unknown key.');
    expect(ended.errors).toContain('Did you mean DC?');
  });

  test.each([
    [['convert'], "missing required argument 'table'"],
    [['convert', pedals, '--assume', 'power'], 'It takes pairs such as power=DC,ground=negative.'],
  ])('%j is wrong use', async (parameters, says) => {
    const ended = await boardfeed(parameters);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toContain(says);
  });

  test('a file that is not there is said so', async () => {
    const ended = await boardfeed(['convert', 'no-such-table.csv']);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toContain('no-such-table.csv:1:1: there is no such file.');
  });
});
