import { describe, expect, it } from 'vitest';

import { parseYaml } from '../../../../src/reading/text/yaml-document.js';
import { boardText, expectFault, faultsOf } from '../texts.js';

describe('text that is not YAML', () => {
  it.each([
    ['an open bracket', 'board: [a\n‸pedals: 1\n', 'Close the bracket'],
    ['an open quote', 'board: "a‸', 'Add the missing sign'],
    ['a tab as indentation', 'policy:\n‸\tchains: allow\n', 'spaces, not with tabs'],
    ['a colon in plain text', 'board: ‸a: b\n', 'into quotes'],
    ['no space after a colon', '‸board:a\ncurrency: EUR\n', 'space after the colon'],
    ['an @ before plain text', 'board: ‸@home\n', 'into quotes'],
    ['a bad escape', 'board: "a‸\\q"\n', 'backslash'],
    ['a closing bracket', 'board: a\n‸]\n', 'Mend the brackets'],
    ['a tag', 'board: ‸!!js/function a\n', 'Remove the tag'],
    ['a directive', '‸%EXTRA 1\n---\nboard: a\n', 'Mend'],
  ])('%s', (_what, board, remedy) => {
    expectFault({ board }, '', 'not valid YAML', remedy);
  });

  it('is one fault, whatever follows', () => {
    expect(faultsOf('a: [1, 2\nb: ]\nc: }\n"d\n')).toHaveLength(1);
  });

  it('of several documents is told at the second', () => {
    expectFault({ board: `${boardText()}‸---\nboard: again\n` }, '', 'a second YAML document', 'Remove the line');
  });

  it('is quoted with its control characters escaped', () => {
    const [fault] = faultsOf('a: b\n\u001b[31m\n');
    expect(fault?.message).toContain('not valid YAML');

    expect(fault?.message).not.toContain('\u001b');
  });
});

describe('hostile text', () => {
  it.each([
    ['[', 'nested'],
    ['{a: ', 'nested'],
    ['- ', 'nested'],
    ['? ', 'nested'],
    ['[{a: ', 'nested'],
  ])('%s a hundred thousand times is nested too deeply, and nothing overflows', (piece, words) => {
    const parsed = parseYaml(piece.repeat(100_000));
    expect(parsed.kind).toBe('not yaml');
    expect(parsed.kind === 'not yaml' ? parsed.words.message : '').toContain(words);
  });

  it('indentation is nested too deeply, too', () => {
    const text = Array.from({ length: 500 }, (_, depth) => `${' '.repeat(depth)}a:\n`).join('');
    expect(parseYaml(text)).toMatchObject({ kind: 'not yaml' });
  });

  it.each([']', ',', 'a: ]\n', '---\n', '&a ', '!a ', '%X\n', ': ', '"'])(
    '%j a hundred thousand times stops at the first fault',
    (piece) => {
      expect(parseYaml(piece.repeat(100_000)).kind).toBe('not yaml');
    },
  );

  it('more words and signs than any catalogue needs are refused', () => {
    const parsed = parseYaml(`a: [${'1,'.repeat(800_000)}]`);
    expect(parsed.kind === 'not yaml' ? parsed.words.message : '').toContain('more than 1500000');
  });
});

describe('YAML of other versions', () => {
  it('a directive does not change what words mean', () => {
    const parsed = parseYaml('%YAML 1.1\n---\na: yes\nb: 1:30\nc: 012\n');
    expect(parsed.kind === 'parsed' ? parsed.document.toJS() : null).toEqual({ a: 'yes', b: '1:30', c: 12 });
  });
});
