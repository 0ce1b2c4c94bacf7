import { describe, expect, test } from 'vitest';

import { program } from '../../src/node/cli/program.js';
import { documents } from './documents.js';

const textOf = (path: string): string => documents.find((document) => document.path === path)?.text ?? '';
const readme = textOf('README.md');

/** The page of a command, by the README's table. */
const pageOf = (command: string): string => {
  const [, page = ''] = new RegExp(`^\\| \\[\`${command}\`\\]\\((docs/[^)]+)\\) \\|`, 'm').exec(readme) ?? [];
  return page;
};

describe.each(program('0.0.0').commands.map((command) => ({ command, name: command.name() })))(
  '$name',
  ({ command, name }) => {
    test('has a page, which the README leads to and which names every option', () => {
      const text = textOf(pageOf(name));
      expect(text).toContain(`boardfeed ${name}`);
      // Those of its own go between the scripts and the command, and help hides them.
      const options = command.options.filter(({ hidden }) => !hidden).map(({ long }) => long ?? '');
      expect(options.filter((option) => !text.includes(option))).toEqual([]);
    });
  },
);

test('the README has every exit code', () => {
  for (const code of [0, 1, 2, 3, 4, 5]) expect(readme).toMatch(new RegExp(`^\\| ${code} \\|`, 'm'));
});
