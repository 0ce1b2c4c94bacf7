import { expect, test } from 'vitest';

import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { ownedLine } from '../../../../src/reading/typed/owned-line.js';
import { supplyLine } from '../../../../src/reading/typed/supply-line.js';
import { boardData } from '../../../../src/web/document/board-data.js';
import {
  labelAgrees,
  owningAnother,
  owningOneLess,
  settingIn,
  withSetting,
} from '../../../../src/web/document/change-supplies.js';
import { begunWith, changedTo, undone } from '../../../../src/web/document/history.js';
import { idTyped, owningTyped } from '../../../../src/web/document/own-typed.js';
import { emptyDocument, type PageDocument } from '../../../../src/web/document/page-document.js';
import { withLineEntered } from '../../../../src/web/document/type-pedal.js';

const says = ({ board }: PageDocument, ...path: [string] | [string, string]): unknown =>
  settingIn(boardData(board.text), path);

const told = (text: string) => {
  const read = ownedLine(text);
  if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
  return read;
};

test('a typed supply is described by the board and owned', () => {
  const read = supplyLine('Old box 6 isolated 9v 150, total 1500');
  if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
  const owned = owningTyped(read)(emptyDocument);
  expect(says(owned, 'owned', 'supplies')).toEqual(['old-box']);
  expect(says(owned, 'gear', 'supplies')).toMatchObject([{ name: 'Old box', total: { milliamps: 1500 } }]);
});

test('what was taken of a typed supply stands in the file beside it until its label is read, and all else stays', () => {
  const read = supplyLine('Old box 6 isolated 9v 150, total 1500');
  if (read.kind === 'unclear') throw new Error(read.faults.join(' '));
  const text = `# mine\n${emptyDocument.board.text}gear:\n  supplies:\n    # kept apart\n    - {name: Other, assumed: [plug]}\n`;
  const owned = owningTyped(read)({ ...emptyDocument, board: { file: 'b.yaml', text } });
  const taken = ['polarity', 'plug', 'regulated'];
  expect(says(owned, 'gear', 'supplies')).toMatchObject([{ assumed: ['plug'] }, { name: 'Old box', assumed: taken }]);
  const agreed = labelAgrees('supply', 'old-box')(owned);
  expect(agreed.board.text).toContain('    # kept apart\n');
  expect(says(agreed, 'gear', 'supplies')).toMatchObject([{ assumed: ['plug'] }, { name: 'Old box', total: {} }]);
  expect(agreed.board.text.match(/assumed/g)).toHaveLength(1);
  const plain = supplyLine('Box 9v 500 neg regulated barrel-2.1');
  if (plain.kind === 'unclear') throw new Error(plain.faults.join(' '));
  expect(owningTyped(plain)(emptyDocument).board.text).not.toContain('assumed');
});

test.each([
  ['2 x chain of two', 'parts', { 'chain-of-two': 2 }, { name: 'chain of two', tails: 2, fits: 'barrel-2.1' }],
  ['reversing lead', 'parts', { 'reversing-lead': 1 }, { name: 'reversing lead', reverses: true }],
  ['12 x AA 2000 mAh', 'batteries', { 'aa-2000-mah': 12 }, { name: 'AA 2000 mAh', type: 'AA', volts: 1.5 }],
] as const)('%s is described, counted and read again', (line, list, counts, entry) => {
  const { board } = owningTyped(told(line))(withLineEntered({ ...emptyDocument, line: 'Wren drive 9v 10' }));
  const { gear, owned } = boardData(board.text);
  expect(gear).toMatchObject({ [list]: [entry] });
  expect(owned).toMatchObject({ [list]: counts });
  expect(Object.keys(counts)).toEqual([idTyped(told(line))]);
  const read = inputsFromText(board, null);
  expect(read.kind === 'faulty' ? read.faults : []).toEqual([]);
});

test('a supply that hangs on another one is described with its inlet', () => {
  const owned = owningTyped(told('step 9v 300, fed from 5 V 900 mA pos usb-a'))(emptyDocument);
  expect(says(owned, 'gear', 'supplies')).toMatchObject([
    { name: 'step', inlet: { power: 'DC', plug: 'usb-a', polarity: 'centre-positive', volts: 5, milliamps: 900 } },
  ]);
});

test.each(['Old box 6 isolated 9v 150, total 1500', '2 x chain of two', '2 x 9v block'])(
  '%s is typed anew once it is owned no more, whatever hung on it, and undoing brings it back',
  (line) => {
    const read = told(line);
    const [id, units] = [idTyped(read), read.kind === 'lead' ? read.count : read.kind === 'battery' ? 2 : 1];
    const kind = read.kind === 'lead' ? 'part' : read.kind;
    const wired = { supply: { supply: id, output: 1 }, part: { supply: 'x', chain: id }, battery: { battery: id } }[
      kind
    ];
    const begun = owningTyped(told('wall adapter 9v 500'))(
      withLineEntered({ ...emptyDocument, line: 'Wren drive 9v 10' }),
    );
    const owned = withSetting(['wiring'], [{ pedal: 'wren-drive', ...wired, volts: 9 }])(owningTyped(read)(begun));
    const less = (document: PageDocument) => owningOneLess(kind, id)(document);
    const none = Array.from({ length: units }).reduce<PageDocument>(less, owned);
    expect(boardData(none.board.text)).toMatchObject({ gear: { supplies: [{ name: 'wall adapter' }] } });
    expect(none.board.text).not.toContain(id);
    expect(none.board.text).not.toContain('wiring');
    expect(boardData(owningTyped(read)(none).board.text)['gear']).toEqual(boardData(owned.board.text)['gear']);
    expect(undone(changedTo(begunWith(owned), none)).present).toBe(owned);
    const alone = Array.from({ length: units }).reduce<PageDocument>(less, owningTyped(read)(emptyDocument));
    expect(alone.board.text).not.toContain('gear');
    const counts = Array.from({ length: units - 1 }).reduce<PageDocument>(less, owned);
    expect(counts.board.text).toContain('wiring');
  },
);

test('what the shop sells stays known when it is owned no more', () => {
  const owned = owningAnother('supply', 'quay-6')(owningTyped(told('wall adapter 9v 500'))(emptyDocument));
  expect(boardData(owningOneLess('supply', 'quay-6')(owned).board.text)).toMatchObject({
    gear: { supplies: [{ name: 'wall adapter' }] },
    owned: { supplies: ['wall-adapter'] },
  });
});

test('the first thing is described a key a line, in YAML and in JSON', () => {
  expect(owningTyped(told('chain of 5'))(emptyDocument).board.text).toContain(
    '\ngear:\n  parts:\n    - name: chain of 5\n      fits: barrel-2.1\n',
  );
  const json = owningTyped(told('chain of 5'))({ ...emptyDocument, board: { file: 'b.json', text: '{"board": "B"}' } });
  expect(JSON.parse(json.board.text)).toMatchObject({
    gear: { parts: [{ tails: 5 }] },
    owned: { parts: { 'chain-of-5': 1 } },
  });
});

test('a text without room stays as it is', () => {
  const closed = { ...emptyDocument, board: { file: 'b.yaml', text: 'gear: none\n' } };
  expect(owningTyped(told('chain of 5'))(closed)).toBe(closed);
});
