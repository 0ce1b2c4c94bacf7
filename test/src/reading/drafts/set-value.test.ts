import { expect, test } from 'vitest';

import { withAppended, withValue } from '../../../../src/reading/drafts/set-value.js';

const board = `# mine
board: Mine   # x
policy:
  chains: allow   # a
  # between
  budget: 120   # b
owned: {supplies: [quay-6], parts: {flip: 1}}
`;

test('a value is put in the place of the one that is there, and all else stays letter by letter', () => {
  expect(withValue(board, ['board'], 'Yours: 2')).toBe(board.replace('Mine   #', '"Yours: 2"   #'));
  expect(withValue(board, ['policy', 'budget'], 90)).toBe(board.replace('120', '90'));
  expect(withValue(board, ['policy', 'chains'], 'never')).toBe(board.replace('allow', 'never'));
  expect(withValue(board, ['owned', 'supplies'], ['a', 'b'])).toBe(board.replace('[quay-6]', '[a, b]'));
});

test('a key that is not there comes behind the others, a map that is not there with it', () => {
  expect(withValue(board, ['policy', 'mains'], [120, 230])).toBe(
    board.replace('120   # b\n', '120   # b\n  mains: [120, 230]\n'),
  );
  expect(withValue('board: A\n', ['owned', 'supplies'], ['a'])).toBe('board: A\nowned: {supplies: [a]}\n');
});

test('a value that is undefined takes its line with it, or is left out of its braces', () => {
  expect(withValue(board, ['policy', 'budget'], undefined)).toBe(board.replace('  budget: 120   # b\n', ''));
  expect(withValue(board, ['owned', 'parts'], undefined)).toBe(board.replace(', parts: {flip: 1}', ''));
  expect(withValue(board, ['policy', 'mains'], undefined)).toBe(board);
  expect(withValue('{"board": "A", "currency": "EUR"}', ['currency'], undefined)).toBe('{"board":"A"}');
});

test('a list gets one more entry where it stands, or is begun', () => {
  const gear = 'gear:\n  supplies:\n    - name: A   # mine\n  # below\n';
  expect(withAppended(gear, ['gear', 'supplies'], { name: 'B' })).toBe(
    'gear:\n  supplies:\n    - name: A   # mine\n    - {name: B}\n  # below\n',
  );
  expect(withAppended('board: A\n', ['gear', 'supplies'], { name: 'B' })).toBe(
    'board: A\ngear: {supplies: [{name: B}]}\n',
  );
  expect(withAppended('{"a": {"b": [1]}}', ['a', 'b'], 2)).toBe('{"a": {"b": [1, 2]}}');
});

test('what has no room is not changed at all', () => {
  expect(withValue('[', ['board'], 'A')).toBeNull();
  expect(withValue('- a\n', ['board'], 'A')).toBeNull();
  expect(withValue('a: &x {b: 1}\nc: *x\n', ['a', 'b'], 2)).toBeNull();
});
