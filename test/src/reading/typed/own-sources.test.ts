import { expect, test } from 'vitest';

import { typedLine } from '../../../../src/reading/typed/pedal-line.js';

const mA = (milliamps: number): object => ({ milliamps, workings: null });
const block = { type: '9V-block', count: 1 };
const six = { type: 'AA', count: 6 };
const blockNote = ['The block is taken to be its battery, and 9 V what it wants at its inlet, too.'];

test.each<[string, object]>([
  ['sedge wah 9v 2 block', { name: 'sedge wah', volts: 9, draw: mA(2), battery: block }],
  ['sedge wah 9v 2 9v block', { name: 'sedge wah', volts: 9, draw: mA(2), battery: block }],
  ['sedge wah 9v 2 9V-block neg', { volts: 9, draw: mA(2), battery: block, polarity: 'centre-negative' }],
  ['sedge wah 9v 2 PP3', { volts: 9, draw: mA(2), battery: block }],
  ['sedge wah 9-18v 2, 9 V battery', { volts: { from: 9, to: 18 }, draw: mA(2), battery: block }],
  ['wren 18v 5 2 x 9v block', { volts: 18, battery: { type: '9V-block', count: 2 } }],
  ['ruff tuner 9v 100 6xAA', { volts: 9, draw: mA(100), battery: six }],
  ['ruff tuner 9v 100 6 × AA', { volts: 9, battery: six }],
  ['ruff tuner 9v 100 AA x 6', { volts: 9, battery: six }],
  ['ruff tuner 9v 100 6AA batteries', { volts: 9, battery: six }],
  ['ruff tuner 4.5v 100 3xAAA', { volts: 4.5, battery: { type: 'AAA', count: 3 } }],
  ['heath fuzz 9v or block battery', { name: 'heath fuzz', volts: 9, battery: block }],
  ['heath fuzz 9v or a 9v block', { name: 'heath fuzz', volts: 9, battery: block }],
  ['heath fuzz block battery or 9 volts', { name: 'heath fuzz', volts: 9, battery: block }],
  ['heath fuzz takes a block battery or 9v 4', { name: 'heath fuzz', volts: 9, draw: mA(4), battery: block }],
  ['ruff tuner 9v or 6xAA 40', { name: 'ruff tuner', volts: 9, draw: mA(40), battery: six }],
  ['heath fuzz block', { name: 'heath fuzz', battery: block }],
  ['wharf station own adapter', { name: 'wharf station', adapter: {} }],
  ['wharf station adapter digital', { name: 'wharf station', adapter: {}, digital: true }],
  ['wharf station keeps its adaptor 100-240v', { name: 'wharf station', adapter: { mains: { from: 100, to: 240 } } }],
  ['wharf station own adapter 230 V 9v 300', { adapter: { mains: 230 }, volts: 9, draw: mA(300) }],
])('%s', (text, expected) => {
  const typed = typedLine(text, true);
  expect(typed).toMatchObject({ kind: 'line', line: { ...expected, notes: [] } });
});

test.each<[string, object]>([
  ['sedge wah 9v block', { volts: 9, battery: block, notes: blockNote }],
  ['sedge wah 9v block 2', { volts: 9, draw: mA(2), battery: block, notes: blockNote }],
])('%s: a block alone says the volts as well, and that it does', (text, expected) => {
  expect(typedLine(text, true)).toMatchObject({ kind: 'line', line: expected });
});

test('two blocks do not say what the inlet wants', () => {
  const typed = typedLine('wren 2 x 9v block', true);
  expect(typed.kind === 'line' ? Object.keys(typed.line) : []).toEqual(['name', 'battery', 'notes']);
});

test.each(['battery booster 9v 5', 'adapter delay 9v 5', 'block, 9v 5', 'AA delay 9v 5', 'roadblock 9v 5'])(
  '%s: the words are a name',
  (text) => {
    const typed = typedLine(text, true);
    expect(typed.kind === 'line' ? Object.keys(typed.line) : []).toEqual(['name', 'volts', 'draw', 'notes']);
  },
);

test.each<[string, RegExp]>([
  ['sedge wah 9v 2 battery', /^"battery": say which goes in and how many, such as 9v block or 6xAA\.$/],
  // How many is not made up, nor taken from a draw.
  ['ruff tuner 9v 6 AA', /^"AA": say which goes in/],
  ['ruff tuner 9v 100 6xAA x4', /say which goes in/],
  ['sedge wah 9v 2 block 6xAA', /^the battery is said twice: "block" and "6xAA"\.$/],
  ['wharf station 9v adapter own adapter', /^the adapter is said twice/],
  ['wharf station adapter 240-100v', /^"adapter 240-100v": Write 230 V or 100-240 V/],
  ['wharf station 9v adaptr', /^"adaptr" is not understood\. Did you mean adapter\?$/],
])('%s is asked for', (text, fault) => {
  const typed = typedLine(text, true);
  expect(typed.kind === 'unclear' ? typed.faults.join('\n') : 'it is understood').toMatch(fault);
});
