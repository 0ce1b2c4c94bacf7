import { readFile, writeFile } from 'node:fs/promises';

import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';

import { boardfeed, complaints, fixture, gigBoard, marramStreet, printedObject, scratchFiles } from '../command.js';

const scratch = scratchFiles();

/** A copy of a board that may be written to. */
let copies = 0;
const copyOf = async (path: string): Promise<string> =>
  scratch(`board-${(copies += 1)}.yaml`, await readFile(path, 'utf8'));

type BoardFile = { readonly wiring: readonly Readonly<Record<string, unknown>>[]; readonly owned: object };
const boardIn = async (path: string) => parse(await readFile(path, 'utf8')) as BoardFile;

const leadsIn = ({ wiring }: BoardFile): Readonly<Record<string, unknown>> =>
  Object.fromEntries(wiring.map(({ pedal, lead }) => [String(pedal), lead]));

const pedalTable = `# board: Table
# currency: EUR
# policy: {headroom: {alone: 1, chained: 1, supply: 1}, chains: never}
name,volts,milliamps,power,polarity,inlet,ground
Echo,9,100,DC,centre-negative,barrel-2.1,negative
`;

describe('choose --record', () => {
  test('writes the plan into the board file, from which every next question starts', async () => {
    const board = await copyOf(gigBoard);
    const chosen = await boardfeed(['choose', board, marramStreet, '--record', '--json']);
    expect(chosen.code).toBe(0);
    expect(complaints(chosen)).toBe(
      `Recorded in ${board}: the next question starts from this plan, with what it buys as your own.\n`,
    );
    const printed = printedObject(chosen) as { readonly feeds: readonly Readonly<Record<string, unknown>>[] };
    const { wiring, owned } = await boardIn(board);
    const placed = (feeds: readonly Readonly<Record<string, unknown>>[]) =>
      feeds.map(({ pedal, supply, unit, volts, lead }) => ({ pedal, supply, unit, volts, lead }));
    expect(placed(wiring)).toEqual(placed(printed.feeds));
    expect(owned).toEqual({
      supplies: ['staithe-5', 'shingle-9', 'shingle-9', 'shingle-9-plus'],
      parts: { 'fan-5': 1, flip: 1 },
    });
    const checked = await boardfeed(['check', board, marramStreet, '--json']);
    expect([checked.code, printedObject(checked)['status']]).toEqual([0, 'safe']);
    const again = await boardfeed(['rewire', board, marramStreet, '--json']);
    expect(printedObject(again)).toMatchObject({ status: 'proven', moves: [], steps: [], score: { money: '0.00' } });
    expect(placed((printedObject(again) as typeof printed).feeds)).toEqual(placed(printed.feeds));
  });

  test('leaves comments and order as they are', async () => {
    const board = await copyOf(gigBoard);
    await boardfeed(['choose', board, marramStreet, '--record']);
    const comments = (text: string) => text.match(/#.*$/gm);
    const [before, after] = [await readFile(gigBoard, 'utf8'), await readFile(board, 'utf8')];
    expect(comments(after)).toEqual(comments(before));
    expect(after.split('owned:')[0]).toBe(before.split('owned:')[0]);
  });

  test('is refused before the search for a table, and for what is no file', async () => {
    const table = await scratch('pedals.csv', pedalTable);
    const ended = await boardfeed(['choose', table, marramStreet, '--record']);
    expect([ended.code, ended.output]).toEqual([3, '']);
    expect(complaints(ended)).toBe(
      `${table}: --record needs a board file in YAML or JSON: a table has no room for a wiring. Make one of it with ` +
        'boardfeed convert.\n',
    );
  });

  test('writes nothing where there is no plan', async () => {
    const board = await copyOf(fixture('boards/impossible.yaml'));
    const ended = await boardfeed(['choose', board, marramStreet, '--record']);
    expect([ended.code, complaints(ended)]).toEqual([4, 'Nothing recorded: there is no plan.\n']);
    expect(await readFile(board, 'utf8')).toBe(await readFile(fixture('boards/impossible.yaml'), 'utf8'));
  });
});

describe('rewire --record', () => {
  test('keeps the number of every lead for life, on labels and in tables too', async () => {
    const board = await copyOf(fixture('boards/new-pedal.yaml'));
    const asked = 'Write into the board file';
    expect((await boardfeed(['rewire', board])).output).toContain(asked);
    const recorded = await boardfeed(['rewire', board, '--record']);
    expect(recorded.code).toBe(0);
    expect(recorded.output).not.toContain(asked);
    const first = leadsIn(await boardIn(board));
    expect(Object.values(first).sort()).toEqual([1, 2, 3, 4, 5, 6]);

    // One pedal goes, another one comes.
    const text = (await readFile(board, 'utf8'))
      .replace(/ {2}- \{name: Skerry delay.*\n/, '  - {name: Newt boost, volts: 9, milliamps: 20}\n')
      .replace(/ {2}- \{pedal: skerry-delay.*\n/, '');
    await writeFile(board, text);
    const [table, labels] = [`${board}.csv`, `${board}.labels.html`];
    const ended = await boardfeed(['rewire', board, '--record', '--report', table, '--report', labels, '--json']);
    expect(ended.code).toBe(0);
    const { 'skerry-delay': gone, ...staying } = first;
    const second = leadsIn(await boardIn(board));
    expect(second).toEqual({ ...staying, 'newt-boost': 7 });
    expect(Object.values(second)).not.toContain(gone);
    const { feeds } = printedObject(ended) as { readonly feeds: readonly { pedal: string; lead: number }[] };
    expect(Object.fromEntries(feeds.map(({ pedal, lead }) => [pedal, lead]))).toEqual(second);
    expect(await readFile(table, 'utf8')).toMatch(/^7,Newt boost,newt-boost,/m);
    expect(await readFile(labels, 'utf8')).toMatch(/Lead <\/span>7<\/p>[^]*Newt boost/);
  });
});
