import { Argument, Command, Option } from 'commander';
import { describe, expect, it } from 'vitest';

import { complete, type Completion } from '../../../../../src/node/cli/completion/complete.js';
import { program } from '../../../../../src/node/cli/program.js';
import type { KnownIds } from '../../../../../src/reading/known-ids.js';

/** A command of every sort of option and argument, whatever boardfeed has today. */
function sample(): Command {
  const root = new Command('boardfeed').version('1.0.0');
  root
    .command('check')
    .description('is it safe?')
    .addArgument(new Argument('<board>'))
    .addArgument(new Argument('[catalogue]'))
    .option('--pedal <id>')
    .option('--output <supply:n>')
    .option('--keep <pedal...>')
    .option('--supply <supply>')
    .option('--seconds <seconds>')
    .option('--proof <file>')
    .addOption(new Option('-a, --aim <aim>').choices(['cost', 'quiet']))
    .option('--json');
  root.command('explain').addArgument(new Argument('<board>')).addArgument(new Argument('<pedal>'));
  const reason = root.command('reason').addArgument(new Argument('<board>'));
  reason.addArgument(new Argument('[catalogue]')).addArgument(new Argument('[pedal]'));
  root.command('compare').addArgument(new Argument('<board...>'));
  root.addCommand(new Command('secret'), { hidden: true });
  return root;
}

const ids: KnownIds = {
  pedals: ['echo', 'fuzz'],
  supplies: ['quay-6'],
  parts: ['flip'],
  outputs: ['quay-6:1', 'quay-6:2'],
};

/** What is offered for words, the last of which has the cursor, and the files that were read for it. */
async function offered(root: Command, words: readonly string[], at = words.length - 1) {
  const read: string[] = [];
  const completion = await complete(root, { words, at }, (paths) => {
    read.push(...paths);
    return Promise.resolve(ids);
  });
  return { offer: wordsOf(completion), read };
}

const wordsOf = ({ kind, candidates }: Completion): readonly string[] | 'files' => {
  const words = candidates.map(({ word }) => word);
  if (kind === 'words') return words;
  return words.length === 0 ? 'files' : ['a file', ...words];
};

describe('what can be typed at the cursor', () => {
  it.each<readonly [readonly string[], readonly string[] | 'files']>([
    [[''], ['check', 'explain', 'reason', 'compare', 'help']],
    [['c'], ['check', 'compare']],
    [['--'], ['--version', '--help']],
    [['-'], ['--version', '-V', '--help', '-h']],
    [['nonsense', ''], []],
    [['check', ''], 'files'],
    [['check', 'b.yaml', ''], 'files'],
    [['check', 'b.yaml', 'c.yaml', ''], []],
    [['compare', 'a', 'b', ''], 'files'],
    [
      ['reason', 'b.yaml', ''],
      ['a file', 'echo', 'fuzz'],
    ],
    [
      ['reason', 'b.yaml', 'f'],
      ['a file', 'fuzz'],
    ],
    [
      ['reason', 'b.yaml', 'c.yaml', ''],
      ['echo', 'fuzz'],
    ],
    [
      ['check', '--p'],
      ['--pedal', '--proof'],
    ],
    [['check', 'b.yaml', '--j'], ['--json']],
    [
      ['check', '--aim', ''],
      ['cost', 'quiet'],
    ],
    [['check', '-a', 'q'], ['quiet']],
    [['check', '--aim=', ''], 'files'],
    [['check', '--aim=q'], ['--aim=quiet']],
    [['check', '--proof', ''], 'files'],
    [['check', '--proof=x'], 'files'],
    [['check', '--seconds', ''], []],
    [['check', '--nonsense=x'], []],
    [
      ['check', '--pedal', ''],
      ['echo', 'fuzz'],
    ],
    [['check', '--pedal', 'f'], ['fuzz']],
    [['check', '--pedal=f'], ['--pedal=fuzz']],
    [
      ['check', '--output', 'quay-6:'],
      ['quay-6:1', 'quay-6:2'],
    ],
    [['check', '--supply', ''], ['quay-6']],
    [
      ['check', '--keep', 'echo', ''],
      ['echo', 'fuzz'],
    ],
    [['check', '--keep', 'echo', '--js'], ['--json']],
    [['check', '--', '--j'], 'files'],
    [['check', '--json', ''], 'files'],
    [
      ['explain', 'b.yaml', ''],
      ['echo', 'fuzz'],
    ],
    [['help', 'e'], ['explain']],
  ])('%j: %j', async (words, expected) => {
    expect((await offered(sample(), words)).offer).toEqual(expected);
  });

  it('ids are those of the boards and catalogues that the line names, before the cursor or behind it', async () => {
    expect((await offered(sample(), ['check', 'b.yaml', 'c.yaml', '--pedal', ''])).read).toEqual(['b.yaml', 'c.yaml']);
    expect((await offered(sample(), ['check', '--pedal', '', 'b.yaml'], 2)).read).toEqual(['b.yaml']);
    expect((await offered(sample(), ['check', '--keep', 'echo', '--json', 'b.yaml', '--pedal', ''])).read).toEqual([
      'b.yaml',
    ]);
  });

  it('no file is read for anything but ids', async () => {
    for (const words of [[''], ['check', ''], ['check', '--'], ['check', '--aim', '']])
      expect((await offered(sample(), words)).read).toEqual([]);
  });
});

describe('the commands of boardfeed', () => {
  const root = program('1.2.3');
  const commands = root.createHelp().visibleCommands(root);

  it('are all offered, with what they are for', async () => {
    const completion = await complete(root, { words: [''], at: 0 }, () => Promise.resolve(ids));
    const candidates = completion.kind === 'words' ? completion.candidates : [];
    expect(candidates.map(({ word }) => word)).toEqual(commands.map((command) => command.name()));
    expect(candidates.filter(({ help }) => help === '')).toEqual([]);
  });

  it.each(commands.map((command) => command.name()))(
    '%s: all its options, and the choices of those that have some',
    async (name) => {
      const command = commands.find((one) => one.name() === name);
      if (command === undefined) throw new Error('there is no such command');
      const options = command.createHelp().visibleOptions(command);
      expect((await offered(root, [name, '--'])).offer).toEqual(options.map(({ long }) => long));
      for (const { long, argChoices } of options)
        if (argChoices !== undefined) expect((await offered(root, [name, String(long), ''])).offer).toEqual(argChoices);
    },
  );

  it.each([
    [['choose', '']],
    [['verify', 'b', 'c', '']],
    [['convert', '']],
    [['start', '']],
    [['choose', '--proof', '']],
  ])('%j: files', async (words) => {
    expect((await offered(root, words)).offer).toBe('files');
  });

  it('schema and completion have choices', async () => {
    expect((await offered(root, ['schema', ''])).offer).toEqual([
      'board',
      'catalogue',
      'plan',
      'check',
      'check-output',
      'comparison',
      'explain',
      'spare',
      'spare-add',
      'ask',
      'verdict',
      'wanted',
    ]);
    expect((await offered(root, ['completion', ''])).offer).toEqual(['bash', 'zsh', 'fish']);
  });
});
