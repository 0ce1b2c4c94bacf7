import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';

import { describe, expect, test } from 'vitest';

const run = promisify(execFile);
const root = resolve(import.meta.dirname, '..');
const command = join(root, 'dist', 'src', 'node', 'cli', 'main.js');
const readme = await readFile(join(root, 'README.md'), 'utf8');

/** The bodies of the README's fenced blocks of a language. */
const blocks = (language: string): readonly string[] =>
  [...readme.matchAll(new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\`$`, 'gm'))].map((match) => match[1] ?? '');

/** What a command prints on standard output when it ends with 0, or with 4 as it does when the answer is no. */
async function printedBy(parameters: readonly string[], env: NodeJS.ProcessEnv): Promise<string> {
  try {
    return (await run(process.execPath, parameters, { cwd: root, env })).stdout;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 4 && 'stdout' in error) return String(error.stdout);
    throw error;
  }
}

describe('the README', () => {
  const examples = blocks('console').map((block) => {
    const [first = '', ...printed] = block.split('\n');
    return { line: first.replace(/^\$ /, ''), printed: printed.join('\n') };
  });

  test('has an example of the command and one of the library', () => {
    expect(examples.length).toBeGreaterThanOrEqual(1);
    expect(blocks('ts')).toHaveLength(1);
  });

  test('shows a wiring that is safe to ask about and one that is not', () => {
    expect(examples.filter(({ line }) => line.startsWith('boardfeed check ')).length).toBeGreaterThanOrEqual(2);
  });

  test.each(examples)('$line prints what the README shows', async ({ line, printed }) => {
    const [program, ...words] = line.split(' ');
    expect(program).toBe('boardfeed');
    const env = { ...process.env, LC_ALL: 'C.UTF-8' };
    expect(await printedBy([command, ...words], env)).toBe(printed);
  });

  test('the library example runs and powers every pedal', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'boardfeed-readme-'));
    try {
      await symlink(join(root, 'node_modules'), join(folder, 'node_modules'));
      await symlink(join(root, 'fixtures'), join(folder, 'fixtures'));
      const library = join(root, 'dist', 'src', 'index.js');
      const code = (blocks('ts')[0] ?? '').replace("'boardfeed'", JSON.stringify(library));
      await writeFile(join(folder, 'example.mjs'), code);
      const { stdout } = await run(process.execPath, ['example.mjs'], { cwd: folder });
      expect(stdout).toMatch(/^proven: 3 pedals powered\n/);
      expect(stdout).toContain('Tideway four-piece');
    } finally {
      await rm(folder, { recursive: true });
    }
  });

  test('names every exit code', () => {
    for (const code of [0, 1, 2, 3, 4, 5]) expect(readme).toMatch(new RegExp(`^\\| ${code} \\|`, 'm'));
  });
});
