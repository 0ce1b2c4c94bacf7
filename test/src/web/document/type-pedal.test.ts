import { parse } from 'yaml';
import { describe, expect, test } from 'vitest';

import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { undone, begunWith, changedTo } from '../../../../src/web/document/history.js';
import { emptyDocument, type PageDocument } from '../../../../src/web/document/page-document.js';
import { readLine, textWithLine, withLineEntered } from '../../../../src/web/document/type-pedal.js';

const typed = (line: string, document: PageDocument = emptyDocument): PageDocument =>
  withLineEntered({ ...document, line });
const pedalsOf = ({ board }: PageDocument): unknown => (parse(board.text) as { pedals: unknown }).pedals;

describe('a pedal on a line', () => {
  test('is entered with what its label says, its kind told by its name, and what nobody has read', () => {
    expect(pedalsOf(typed('lantern reverb 9v 300'))).toEqual([
      { name: 'lantern reverb', polarity: 'unknown', volts: 9, milliamps: 300, digital: true },
    ]);
    expect(pedalsOf(typed('Heath fuzz'))).toEqual([
      {
        ...{ name: 'Heath fuzz', polarity: 'unknown', ground: 'unknown', volts: 'unknown', milliamps: 'unknown' },
        ...{ circuit: 'fuzz', highGain: true },
      },
    ]);
  });

  test('has the volts that it prefers among what the board says of it', () => {
    const document = typed('tremolo 9-12v 40 c- likes 12v');
    expect(pedalsOf(document)).toMatchObject([{ volts: { from: 9, to: 12 }, prefers: 12, milliamps: 40 }]);
    expect(inputsFromText(document.board, null)).toMatchObject({
      kind: 'read',
      value: { board: { pedals: [{ prefers: 12_000 }] } },
    });
  });

  test('of which neither draw nor kind is told counts as what draws and disturbs most', () => {
    expect(pedalsOf(typed('Estuary 9v neg'))).toMatchObject([
      { milliamps: 'unknown', circuit: 'other-digital', digital: true },
    ]);
  });

  test('makes a board that is right as it is', () => {
    const document = ['moth delay 9v 300 neg', 'Ruff tuner', 'Wick drive 9/18 V 0.03 A'].reduce(
      (before, line) => typed(line, before),
      emptyDocument,
    );
    expect(document.line).toBe('');
    expect(inputsFromText(document.board, null)).toMatchObject({
      kind: 'read',
      value: { board: { pedals: { length: 3 } } },
    });
  });

  test('counts as a pedal before it is entered, without being one', () => {
    const document = { ...typed('moth delay 9v 300'), line: 'Ruff tuner 9v 40' };
    expect(textWithLine(document)).toBe(withLineEntered(document).board.text);
    expect(pedalsOf(document)).toHaveLength(1);
  });

  test('that is unclear, empty or there already is not entered, and says why', () => {
    const one = typed('moth delay 9v 300');
    for (const line of ['moth delay 9v 300', 'Moth Delay', 'moth delay 9v 300 mauve', '   ']) {
      expect(withLineEntered({ ...one, line })).toEqual({ ...one, line });
      expect(textWithLine({ ...one, line })).toBeNull();
    }
    expect(readLine('Moth Delay', one.board.text)).toEqual({
      kind: 'unclear',
      faults: ['That name is there already: add a word that tells them apart.'],
    });
  });

  test('can be taken back, and stands on the line again', () => {
    const before = { ...emptyDocument, line: 'moth delay 9v 300' };
    expect(undone(changedTo(begunWith(before), withLineEntered(before))).present).toBe(before);
  });

  test('keeps the comments of the file that it goes into', () => {
    const text = '# mine\nboard: B # b\npedals: # p\n  - {name: A, volts: 9}   # a\n# end\n';
    const { board } = typed('moth delay 9v 300', { ...emptyDocument, board: { file: 'b.yaml', text } });
    for (const remark of ['# mine', '# b', '# p', '# a', '# end']) expect(board.text).toContain(remark);
    expect(pedalsOf({ ...emptyDocument, board })).toHaveLength(2);
  });
});
