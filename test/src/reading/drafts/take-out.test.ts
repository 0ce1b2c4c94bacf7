import { expect, test } from 'vitest';

import { withoutEntry } from '../../../../src/reading/drafts/take-out.js';

const out = (text: string, index: number): string | null => withoutEntry(text, { list: 'pedals', index });

const lines = `# head
pedals: # list
  # of A
  - name: A   # a
    volts: 9
  - {name: B, volts: 9} # b
  - name: C
# end
policy: {}
`;

test('an entry in lines goes with its lines, all else stays letter by letter', () => {
  expect(out(lines, 1)).toBe(lines.replace('  - {name: B, volts: 9} # b\n', ''));
  expect(out(lines, 0)).toBe(lines.replace('  - name: A   # a\n    volts: 9\n', ''));
  expect(out(lines, 2)).toBe(lines.replace('  - name: C\n', ''));
  expect(out(lines.replaceAll('\n', '\r\n'), 2)).toBe(lines.replace('  - name: C\n', '').replaceAll('\n', '\r\n'));
});

test('an entry in brackets goes with its comma', () => {
  const text = 'pedals: [{name: A}, {name: B}, {name: C}] # x\n';
  expect(out(text, 0)).toBe('pedals: [{name: B}, {name: C}] # x\n');
  expect(out(text, 1)).toBe('pedals: [{name: A}, {name: C}] # x\n');
  expect(out(text, 2)).toBe('pedals: [{name: A}, {name: B}] # x\n');
  expect(out('{"pedals": [{"name": "A"}]}', 0)).toBe('{"pedals": []}');
});

test('the only entry leaves an empty list', () => {
  expect(out('pedals:\n  - name: A\n', 0)).toBe('pedals:\n');
});

test('what is not there, or is no entry, cannot be taken out', () => {
  expect(out(lines, 3)).toBeNull();
  expect(out('pedals: 3\n', 0)).toBeNull();
  expect(out('board: B\n', 0)).toBeNull();
  // The entry begins on the line of its dash no more.
  expect(out('pedals:\n  -\n    name: A\n  - name: B\n', 0)).toBeNull();
  expect(out('x: &a {name: A}\npedals:\n  - *a\n', 0)).toBeNull();
});
