import { execFileSync, spawnSync } from 'node:child_process';
import { chmod, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

import { afterAll, beforeAll, describe, expect, test } from 'vitest';

import { completionScripts, shells, type Shell } from '../../../../../src/node/cli/completion/scripts.js';
import { boardfeed, root } from '../command.js';

/** Shells that this machine has: the others are skipped here, since nothing could run their scripts. */
const has = (shell: string): boolean => spawnSync(shell, ['-c', 'true']).status === 0;

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'boardfeed-shells-'));
  const command = join(folder, 'boardfeed');
  await writeFile(command, `#!/bin/sh\nexec "${process.execPath}" "${join(root, 'dist/command/boardfeed.js')}" "$@"\n`);
  await chmod(command, 0o755);
});
afterAll(() => rm(folder, { recursive: true }));

const run = (shell: Shell, parameters: readonly string[]): readonly string[] =>
  execFileSync(shell, parameters, {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, PATH: [folder, process.env['PATH'] ?? ''].join(delimiter), LC_ALL: 'C.UTF-8' },
  })
    .split('\n')
    .filter((line) => line !== '');

describe('boardfeed completion', () => {
  test.each(shells)('%s prints its script', async (shell) => {
    expect(await boardfeed(['completion', shell])).toMatchObject({
      code: 0,
      errors: '',
      output: completionScripts[shell],
    });
  });

  test('another shell is wrong use', async () => {
    const ended = await boardfeed(['completion', 'powershell']);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toContain('Allowed choices are bash, zsh, fish.');
  });

  test('help shows the shells, and nothing of what the scripts ask', async () => {
    const { output } = await boardfeed(['completion', '--help']);
    expect(output).toContain('Usage: boardfeed completion [options] <shell>');
    expect(output).toContain('eval "$(boardfeed completion bash)"');
    for (const hidden of ['--line', '--point', '--at', 'words']) expect(output).not.toContain(hidden);
  });

  test('zsh gets colons escaped, fish a tab before what a word is for', async () => {
    const zsh = await boardfeed(['completion', 'zsh', '--at', '0', '--', 'sch']);
    expect(zsh.output).toMatch(/^words\nschema:What may stand in a file\?/);
    const fish = await boardfeed(['completion', 'fish', '--at', '0', '--', 'sch']);
    expect(fish.output).toMatch(/^words\nschema\tWhat may stand in a file\?/);
  });
});

/** What bash would put behind the cursor at the end of the line. */
const inBash = (line: string): readonly string[] =>
  run('bash', [
    '--norc',
    '-c',
    `eval "$(boardfeed completion bash)"; COMP_LINE=$1; COMP_POINT=\${#1}; _boardfeed boardfeed "\${1##* }" 2>/dev/null; printf '%s\\n' "\${COMPREPLY[@]}"`,
    'bash',
    line,
  ]);

describe.skipIf(!has('bash'))('in bash', () => {
  test.each([
    ['boardfeed sch', ['schema']],
    ['boardfeed choose --aim ', ['cost', 'bricks', 'quiet']],
    ['boardfeed choose --aim=q', ['quiet']],
    ['boardfeed choose fixtures/', []],
    ['boardfeed explain fixtures/boards/first-board.yaml bo', ['bogbean-drive']],
  ])('%s', (line, expected) => {
    expect(inBash(line)).toEqual(expected);
  });
});

const inFish = (line: string): readonly string[] =>
  run('fish', ['--no-config', '-c', `boardfeed completion fish | source; complete -C ${JSON.stringify(line)}`]).map(
    (text) => text.split('\t')[0] ?? '',
  );

describe.skipIf(!has('fish'))('in fish', () => {
  test.each([
    ['boardfeed sch', ['schema']],
    ['boardfeed choose --aim ', ['bricks', 'cost', 'quiet']],
    ['boardfeed choose fixtures/shops/m', ['fixtures/shops/marram-street.yaml']],
  ])('%s', (line, expected) => {
    expect([...inFish(line)].sort()).toEqual(expected);
  });
});

describe.skipIf(!has('zsh'))('in zsh', () => {
  test('the script is one', () => {
    expect(
      run('zsh', [
        '-f',
        '-c',
        'autoload -Uz compinit && compinit -u -D; eval "$(boardfeed completion zsh)"; echo ${_comps[boardfeed]}',
      ]),
    ).toEqual(['_boardfeed']);
  });
});
