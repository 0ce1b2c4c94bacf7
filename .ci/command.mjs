import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';

import { absolute } from './places.mjs';

/** The command as it is installed: Node finds and compiles a few files sooner than hundreds. */
export const commandFolder = 'dist/command';

/** Bundles the command and the thread of a folder. What a command alone needs stays in files of its own. */
export async function buildCommand() {
  const { build } = await import('esbuild');
  const { outputFiles } = await build({
    absWorkingDir: absolute('.'),
    entryPoints: { boardfeed: 'src/node/cli/main.ts', 'folder-worker': 'src/node/threads/folder-worker.ts' },
    bundle: true,
    splitting: true,
    minifySyntax: true,
    minifyWhitespace: true,
    write: false,
    outdir: commandFolder,
    platform: 'node',
    target: 'node20',
    charset: 'utf8',
    legalComments: 'eof',
    format: 'esm',
    banner: { js: forCommonJs },
    logLevel: 'warning',
  });
  rmSync(absolute(commandFolder), { recursive: true, force: true });
  mkdirSync(absolute(commandFolder), { recursive: true });
  for (const { path, contents } of outputFiles) writeFileSync(join(absolute(commandFolder), basename(path)), contents);
}

/** Libraries that are no modules ask for what belongs to Node by `require`. */
const forCommonJs =
  "import { createRequire as requireOfNode } from 'node:module'; const require = requireOfNode(import.meta.url);";
