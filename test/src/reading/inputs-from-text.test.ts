import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { inputsBeside, inputsFromText } from '../../../src/reading/inputs-from-text.js';
import { marramCatalogue, tidewayBoard } from '../../support/documented.js';
import { boardText, boardWithPedals, catalogueText, expectFault, faultsOf, readOf } from './texts.js';
import { expectedBoard, expectedCatalogue } from './tideway.js';

describe('a board and a catalogue that are right', () => {
  it('are read to exact domain values', () => {
    const { board, catalogue } = readOf(tidewayBoard, marramCatalogue);
    expect(board).toEqual(expectedBoard);
    expect(catalogue).toEqual(expectedCatalogue);
  });

  it('are the same with Windows line ends, a byte order mark, or as JSON', () => {
    const windows = (text: string) => `\uFEFF${text.replaceAll('\n', '\r\n')}`;
    const json = (text: string) => JSON.stringify(parse(text), null, '\t');
    for (const spelled of [windows, json]) {
      const { board, catalogue } = readOf(spelled(tidewayBoard), spelled(marramCatalogue));
      expect(board).toEqual(expectedBoard);
      expect(catalogue).toEqual(expectedCatalogue);
    }
  });

  it('need no catalogue when nothing of it is named', () => {
    expect(readOf(boardText())).toMatchObject({ board: { name: 'Small board' }, catalogue: null });
  });

  it('may hold control characters in names, which stay as they are', () => {
    expect(readOf(boardWithPedals('{name: "a\\eb", volts: 9, milliamps: 1}')).board.pedals[0]).toMatchObject({
      name: 'a\u001bb',
      id: 'a-b',
    });
  });
});

describe('positions', () => {
  it('count a byte order mark and carriage returns for nothing', () => {
    const [first] = faultsOf(`\uFEFF${boardText({ board: 'board: 808' })}`);
    expect(first).toMatchObject({ line: 1, column: 8 });
    const [second] = faultsOf(boardText({ assume: 'assume: []' }).replaceAll('\n', '\r\n'));
    expect(second).toMatchObject({ line: 3, column: 9 });
  });
});

describe('files that hold no input', () => {
  it.each([
    ['nothing', ''],
    ['blank lines', '\n \n'],
    ['comments', '# a board\n'],
    ['a document mark', '---\n'],
    ['null', 'null\n'],
  ])('%s is an empty file', (_what, text) => {
    expectFault({ board: `‸${text}` }, '', ['the file is empty', 'a board'], 'board, currency, policy and pedals');
    expectFault(
      { catalogue: `‸${text}` },
      '',
      ['the file is empty', 'a catalogue'],
      'catalogue, currency and supplies',
    );
  });

  it('a NUL makes it a binary file', () => {
    expectFault({ board: 'board: a\nb: ‸\0\n' }, '', ['NUL byte', 'binary'], 'YAML or JSON');
  });

  it('a board and a catalogue that changed places are one fault each', () => {
    const faults = faultsOf(catalogueText(), boardText());
    expect(faults.map(({ file, key }) => [file, key])).toEqual([
      ['board.yaml', ''],
      ['shop.yaml', ''],
    ]);
    expect(faults[0]?.message).toContain('this is a catalogue');
    expect(faults[1]?.message).toContain('this is a board');
  });
});

describe('many faults', () => {
  it('of both files are told at once, by file and position', () => {
    const board = boardText({
      pedals: 'pedals:\n  - {name: B, volts: 9V, milliamps: -1}\n  - {milliamps: 1, name: A, volts: 0}',
      board: 'board: 1',
    });
    const faults = faultsOf(board, catalogueText({ catalogue: 'catalogue: 2', parts: 'parts: 3' }));
    expect(faults.map(({ file, line, key }) => [file, line, key])).toEqual([
      ['board.yaml', 1, 'board'],
      ['board.yaml', 6, 'pedals[0].volts'],
      ['board.yaml', 6, 'pedals[0].milliamps'],
      ['board.yaml', 7, 'pedals[1].volts'],
      ['shop.yaml', 1, 'catalogue'],
      ['shop.yaml', 6, 'parts'],
    ]);
  });

  it('beyond 20 are counted', () => {
    const pedals = Array.from({ length: 25 }, (_, index) => `{name: P${index}, volts: ${index + 1}V, milliamps: 1}`);
    const result = inputsFromText({ file: 'b', text: boardWithPedals(...pedals) }, null);
    expect(result).toMatchObject({ kind: 'faulty', more: 5 });
    expect(result.kind === 'faulty' ? result.faults.length : 0).toBe(20);
  });

  it('of one cause are one fault, with every further place', () => {
    const pedals = Array.from({ length: 25 }, (_, index) => `{name: P${index}, volts: 9V, milliamps: 1}`);
    const result = inputsFromText({ file: 'b', text: boardWithPedals(...pedals) }, null);
    expect(result).toMatchObject({ kind: 'faulty', more: 0, faults: [{ line: 6, key: 'pedals[0].volts' }] });
    const [fault] = result.kind === 'faulty' ? result.faults : [];
    expect(fault?.alike?.map(({ line }) => line)).toEqual(Array.from({ length: 24 }, (_, index) => 7 + index));
    expect(fault?.alike?.at(-1)).toEqual({ line: 30, key: 'pedals[24].volts', name: null });
  });

  it('that are mended in different ways are not of one cause', () => {
    const pedals = ['{name: A, volts: 9V, milliamps: 1}', '{name: B, volts: 12V, milliamps: 1}'];
    expect(faultsOf(boardWithPedals(...pedals)).map(({ remedy }) => remedy)).toEqual(['Write 9.', 'Write 12.']);
  });

  it('a field that is wrong is not missing, too, and what it hides is not complained about', () => {
    const pedal = '{name: A, volts: [9, 9V], milliamps: {9: x}, prefers: 12, maxVolts: 5, power: dc}';
    expect(faultsOf(boardWithPedals(pedal)).map(({ key }) => key)).toEqual([
      'pedals[0].volts[1]',
      'pedals[0].milliamps.9',
      'pedals[0].power',
    ]);
  });

  it('a catalogue that is no YAML hides nothing that is wrong with the board itself', () => {
    const board = boardText({ owned: 'owned: {supplies: [quay]}', board: 'board: 1' });
    expect(faultsOf(board, '{').map(({ file, key }) => [file, key])).toEqual([
      ['board.yaml', 'board'],
      ['shop.yaml', ''],
    ]);
  });
});

it('boards read beside one catalogue are read as they are one by one', () => {
  const shop = { file: 'shop', text: marramCatalogue };
  const read = inputsBeside(shop);
  const boards = [tidewayBoard, tidewayBoard.replace('volts: 9', 'volts: nine'), tidewayBoard.replace('EUR', 'SEK')];
  for (const text of [...boards, ...boards]) {
    const board = { file: 'board', text };
    expect(read(board)).toEqual(inputsFromText(board, shop));
  }
});
