import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';

import { withEntryMoved } from '../../../../src/reading/drafts/move-entry.js';

const move = (text: string, index: number, to: number): string | null =>
  withEntryMoved(text, { list: 'pedals', index }, to);

const lines = `# head
pedals: # list
  # of A
  - name: A   # a
    volts: 9 # nine

  # of B
  - {name: B, volts: 9} # b
  - name: C
# end
policy: {}
`;

test('an entry in lines goes with its comments, all else stays letter by letter', () => {
  expect(move(lines, 0, 2)).toBe(`# head
pedals: # list

  # of B
  - {name: B, volts: 9} # b
  - name: C
  # of A
  - name: A   # a
    volts: 9 # nine
# end
policy: {}
`);
  expect(move(lines, 2, 0)).toContain('pedals: # list\n  - name: C\n  # of A\n');
  const windows = lines.replaceAll('\n', '\r\n');
  expect(move(windows, 0, 2)).toBe(move(lines, 0, 2)?.replaceAll('\n', '\r\n'));
  expect(move('pedals:\n- name: A\n- name: B', 0, 1)).toBe('pedals:\n- name: B\n- name: A');
});

test('an entry in brackets changes places, commas and comments stay', () => {
  const text = 'pedals: [{name: A}, {name: B},\n  {name: C}] # x\n';
  expect(move(text, 0, 1)).toBe('pedals: [{name: B}, {name: A},\n  {name: C}] # x\n');
  expect(move('{"pedals": [{"name": "A"}, {"name": "B"}]}', 1, 0)).toBe('{"pedals": [{"name": "B"}, {"name": "A"}]}');
});

test('what is not there, or would mean something else there, stays', () => {
  for (const [index, to] of [
    [3, 0],
    [0, 3],
    [-1, 0],
  ] as const)
    expect(move(lines, index, to)).toBeNull();
  expect(move('pedals: 3\n', 0, 0)).toBeNull();
  expect(move('board: B\n', 0, 0)).toBeNull();
  expect(move('pedals: [a, b]\n', 0, 1)).toBeNull();
  // The alias would stand before its anchor.
  expect(move('pedals:\n  - {name: A, plug: &p x}\n  - {name: B, plug: *p}\n', 1, 0)).toBeNull();
  expect(move('pedals:\n  - &a {name: A}\n  - {name: B}\n', 0, 1)).toBe('pedals:\n  - {name: B}\n  - &a {name: A}\n');
});

test('whichever entry is moved where, the list is what moving it makes, and moving it back makes the file', () => {
  const entry = fc.constantFrom(
    '  - name: A\n    volts: 9\n',
    '  - {name: B} # b\n',
    '  # of C\n  - name: C\n',
    '  - name: >-\n      long\n      name\n    volts: 9\n',
    '\n  - name: D\n    volts: # any\n      - 9\n      - 18\n',
  );
  fc.assert(
    fc.property(fc.array(entry, { minLength: 2, maxLength: 5 }), fc.nat(), fc.nat(), (entries, one, other) => {
      const [from, to] = [one % entries.length, other % entries.length];
      const text = `board: X\npedals:\n${entries.join('')}policy: {}\n`;
      const moved = move(text, from, to);
      if (moved === null) throw new Error('it cannot be moved');
      const { pedals } = parse(text) as { readonly pedals: unknown[] };
      pedals.splice(to, 0, ...pedals.splice(from, 1));
      expect(parse(moved)).toEqual({ board: 'X', pedals, policy: {} });
      expect(move(moved, to, from)).toBe(text);
    }),
  );
});
