import { expect, test } from 'vitest';

import { readCsv } from '../../../../src/reading/csv/read-csv.js';
import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';

const table =
  'Bezeichnung;Preis;Ausgänge;Getrennt;Spannung;Strom je Ausgang mA;Stecker;Pol;Regelung;Farbe\n' +
  'Erle neun;9,90 €;1;yes;9 V DC;500;barrel 2.1;centre negative;yes;grau\n' +
  'Eibe;39,00 €;5;no;9 V DC;200;barrel 2.1;centre negative;yes;rot\n';
const meanings = {
  Bezeichnung: 'name',
  Preis: 'price',
  Ausgänge: 'outputs',
  Getrennt: 'isolated',
  Spannung: 'volts',
  'Strom je Ausgang mA': 'milliamps',
  Stecker: 'plug',
  Pol: 'polarity',
  Regelung: 'regulated',
};

test('columns of which nobody has said what they hold are told with what stands in them', () => {
  const { places } = readCsv('laden.csv', table, { meanings: {} });
  expect(places?.open.map(({ heading }) => heading)).toEqual([...Object.keys(meanings), 'Farbe']);
  expect(places?.open[0]?.samples).toEqual(['Erle neun', 'Eibe']);
  expect(places?.open.find(({ heading }) => heading === 'Strom je Ausgang mA')?.mayLimit).toBe(true);
  expect(places?.open.find(({ heading }) => heading === 'Farbe')?.mayLimit).toBe(false);
});

test('what somebody has said of headings is taken as if they said it', () => {
  const board = {
    file: 'b.yaml',
    text: 'board: B\ncurrency: EUR\npolicy: {headroom: {alone: 1.2, chained: 2, supply: 1.2}, chains: never}\npedals: [{name: A, volts: 9, milliamps: 9, power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}]\n',
  };
  const shop = { file: 'laden.csv', text: table };
  expect(inputsFromText(board, shop, { skipBadRows: true }).kind).toBe('faulty');
  const read = inputsFromText(board, shop, { skipBadRows: true, meanings });
  if (read.kind === 'faulty') throw new Error(JSON.stringify(read.faults));
  expect(read.value.catalogue.supplies.map(({ name, price }) => [name, price])).toEqual([
    ['Erle neun', 990],
    ['Eibe', 3900],
  ]);
  expect(read.value.catalogue.supplies[0]?.banks[0]?.settings).toEqual([
    expect.objectContaining({ millivolts: 9000, rating: 500_000 }),
  ]);
  expect(read.notes).toEqual(['laden.csv: not used: the column "Farbe".']);
});

test('a column that may hold a limit is left aside only where somebody has said that it holds none', () => {
  const of = (said: Readonly<Record<string, string>>) =>
    readCsv('s.csv', `Grenzlast 10 W,name,price,outputs,volts,milliamps\n1 W,A,9 €,1,9,500\n`, { meanings: said });
  const open = of({});
  expect(open.kind === 'tree' && open.faults.length).toBe(1);
  const closed = of({ 'Grenzlast 10 W': 'nothing' });
  expect(closed.kind === 'tree' && closed.faults).toEqual([]);
  expect(closed.places).toMatchObject({ open: [], ignored: ['Grenzlast 10 W'] });
});
