import { describe, expect, it } from 'vitest';

import { withSection } from '../../../../src/reading/drafts/section.js';

const owned = { key: 'owned', lines: ['', '# mine', 'owned: {supplies: [quay]}'], value: { supplies: ['quay'] } };

describe('one more key', () => {
  it('goes to the end of a file, which stays as it is', () => {
    const text = 'board:   Mine # of old\npedals:\n  - {name: Echo}\n';
    expect(withSection(text, owned)).toBe(`${text}\n# mine\nowned: {supplies: [quay]}\n`);
    expect(withSection('board: Mine', owned)).toBe('board: Mine\n\n# mine\nowned: {supplies: [quay]}\n');
    expect(withSection('a: 1\r\n', owned)).toBe('a: 1\r\n\r\n# mine\r\nowned: {supplies: [quay]}\r\n');
  });

  it('goes into the brackets of JSON', () => {
    expect(withSection('{"board": "Mine"}\n', owned)).toBe('{"board": "Mine", "owned": {"supplies":["quay"]}}\n');
  });
});

it.each([
  ['has it already', 'owned: {}\n'],
  ['is no map', '- a\n'],
  ['is no YAML', 'a: [\n'],
  ['has an end that lines cannot follow', 'a: 1\n...\n'],
  ['is empty', '{}'],
])('a file that %s is left alone', (_name, text) => {
  expect(withSection(text, owned)).toBeNull();
});
