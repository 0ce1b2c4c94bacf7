import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';

import { expect, test } from 'vitest';

import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { boardData, statedPedals } from '../../../../src/web/document/board-data.js';
import { comingLater, naming, poweredBy, without } from '../../../../src/web/document/change-pedal.js';
import { owningAnother, owningOneLess } from '../../../../src/web/document/change-supplies.js';
import { emptyDocument, type PageDocument } from '../../../../src/web/document/page-document.js';
import { isPlugged, withUnitsLeft } from '../../../../src/web/document/todays-wiring.js';

const path = resolve(import.meta.dirname, '../../../../fixtures/boards/new-pedal.yaml');
const text = (await readFile(path, 'utf8')).replace('{pedal: skerry-delay', '{pedal: Skerry delay');
const wired: PageDocument = { ...emptyDocument, board: { file: 'board.yaml', text } };

const pedalIn = ({ board }: PageDocument, id: string) => {
  const pedal = statedPedals(boardData(board.text)).find((one) => one.id === id);
  if (pedal === undefined) throw new Error(`${id} is not there`);
  return pedal;
};

/** Who is plugged; the text is one that the commands read. */
function pluggedIn({ board }: PageDocument): readonly string[] {
  const read = inputsFromText(board, null);
  if (read.kind === 'faulty') throw new Error(JSON.stringify(read.faults));
  return read.value.board.wiring.map(({ pedal }) => pedal);
}

const all = ['beacon-tuner', 'cockle-fuzz', 'eelgrass-chorus', 'sandbar-drive', 'skerry-delay'];

test('a pedal stays plugged when it gets another name, though the file plugged it by the old one', () => {
  const named = naming(pedalIn(wired, 'skerry-delay'), 'Gull delay')(wired);
  expect(pluggedIn(named)).toEqual(all);
  expect(pedalIn(named, 'skerry-delay').name).toBe('Gull delay');
  const again = naming(pedalIn(named, 'skerry-delay'), 'Skerry  Delay')(named);
  expect(pluggedIn(again)).toEqual(all);
});

test('whoever is taken off the board, or is bought later, is not plugged any more', () => {
  const delay = pedalIn(wired, 'skerry-delay');
  expect(isPlugged(text, delay.id)).toBe(true);
  expect(isPlugged(text, 'undertow-reverb')).toBe(false);
  expect(pluggedIn(without(delay)(wired))).toEqual(all.slice(0, 4));
  const later = comingLater(delay, true)(wired);
  expect(pluggedIn(later)).toEqual(all.slice(0, 4));
  expect(pluggedIn(comingLater(pedalIn(later, delay.id), false)(later))).toEqual(all.slice(0, 4));
});

test('whoever hangs on a unit that is owned no more is not plugged any more', () => {
  const second = text.replace('jetty-6, unit: 1, output: 6', 'jetty-6, unit: 2, output: 6');
  const two = owningAnother('supply', 'jetty-6')({ ...wired, board: { file: 'board.yaml', text: second } });
  expect(pluggedIn(two)).toEqual(all);
  const one = owningOneLess('supply', 'jetty-6')(two);
  expect(pluggedIn(one)).toEqual(all.slice(0, 4));
  expect(pluggedIn(owningOneLess('supply', 'jetty-6')(one))).toEqual([]);
});

test('whoever loses a source of its own is not plugged by it any more, and the key goes', () => {
  const own = text
    .replace('- {pedal: Skerry delay', '- {pedal: cockle-fuzz, battery: block}\n  - {pedal: Skerry delay')
    .replace(/ {2}- \{pedal: cockle-fuzz, supply.*\n/, '');
  const document = { ...wired, board: { file: 'board.yaml', text: own } };
  const fuzz = pedalIn(document, 'cockle-fuzz');
  const set = poweredBy(fuzz, 'battery', { type: '9V-block', count: 1 })(document);
  expect(pedalIn(set, 'cockle-fuzz').stated['battery']).toEqual({ type: '9V-block', count: 1 });
  expect(isPlugged(set.board.text, 'cockle-fuzz')).toBe(true);
  const gone = poweredBy(fuzz, 'battery', undefined)(set);
  expect(pedalIn(gone, 'cockle-fuzz').stated).toEqual(fuzz.stated);
  expect(isPlugged(gone.board.text, 'cockle-fuzz')).toBe(false);
  expect(pluggedIn(gone)).toEqual(all.filter((id) => id !== 'cockle-fuzz'));
});

test('a unit that is owned no more is not plugged by its inlet, either', () => {
  const fed = `${text}  - {inlet: step, inletUnit: 2, supply: jetty-6, output: 4, volts: 9}\n`;
  expect(withUnitsLeft(fed, 'step', 2)).toBe(fed);
  expect(withUnitsLeft(fed, 'step', 1)).toBe(text);
});
