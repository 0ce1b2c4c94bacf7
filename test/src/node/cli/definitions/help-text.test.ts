import { describe, expect, test } from 'vitest';

import { fitted } from '../../../../../src/node/cli/definitions/help-text.js';
import { program } from '../../../../../src/node/cli/program.js';

/** The help of a command, by itself and by its parent, for a terminal of so many columns. */
function helpAt(columns: number, name: string | null): string {
  let text = '';
  const output = {
    getOutHelpWidth: () => columns,
    writeOut: (more: string) => {
      text += more;
    },
  };
  const root = program('0.0.0').configureOutput(output);
  const one = root.commands.find((command) => command.name() === name) ?? root;
  one.configureOutput({ ...one.configureOutput(), ...output }).outputHelp();
  return text;
}

const names = [null, ...program('0.0.0').commands.map((command) => command.name())];
const wordsOf = (text: string): readonly string[] => text.split(/\s+/).filter((word) => word !== '');

describe.each(names)('the help of %s', (name) => {
  test.each([40, 60, 80, 120])('keeps within %d columns and breaks no word', (columns) => {
    const text = helpAt(columns, name);
    expect(text).toMatch(/^Usage: boardfeed/);
    const long = text.split('\n').filter((line) => line.length > columns);
    // A single word may be longer than a narrow terminal.
    expect(long.filter((line) => wordsOf(line).length > 1 && columns >= 60)).toEqual([]);
    expect(wordsOf(text)).toEqual(wordsOf(helpAt(1000, name)));
  });
});

describe('a long line', () => {
  test('goes on below what follows on its first wide gap, or a little further in', () => {
    expect(fitted('  0  one two three', 12)).toBe('  0  one two\n     three');
    expect(fitted('  one two three', 10)).toBe('  one two\n    three');
    expect(fitted('one two three', 8)).toBe('one two\nthree');
    expect(fitted('Usage: one two three', 14)).toBe('Usage: one two\n         three');
  });

  test('stays where it fits to the column, and is not broken within a word', () => {
    expect(fitted('  0  one two', 12)).toBe('  0  one two');
    expect(fitted('a-word-that-is-long', 8)).toBe('a-word-that-is-long');
    expect(fitted('first\n\nsecond', 80)).toBe('first\n\nsecond');
  });
});
