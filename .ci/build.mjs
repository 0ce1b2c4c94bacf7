import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

import { buildCommand, commandFolder } from './command.mjs';
import { buildPage, pagePath } from './page.mjs';
import { absolute, filesBelow, textOf } from './places.mjs';

/** What is published, and the bench's rival, which runs compiled as well. */
const sourceFolders = ['src', 'solver', 'bench/rival'];
const settings = ['tsconfig.json', 'tsconfig.build.json', 'package-lock.json', '.ci/command.mjs', '.ci/page.mjs'];
/** The compiler's own memory of what it has compiled. It does not notice outputs that went missing. */
const memoryFile = 'dist/.tsbuildinfo';
const stampFile = 'dist/.boardfeed-built';

/** Whether dist holds exactly what the present sources, settings and compiler make. */
export function buildIsCurrent() {
  const sources = sourceFiles();
  const { missing, stale } = compareOutputs(sources);
  return missing.length === 0 && stale.length === 0 && textOf(stampFile) === `${stampOf(sources)}${commandFiles()}`;
}

/** Compiles what has changed, removes the outputs of deleted sources, makes the command and the page. Returns the compiler's exit code. */
export async function compile() {
  const sources = sourceFiles();
  // Taken first: a file that is saved while the compiler runs makes the next build stale, not this one wrong.
  const stamp = stampOf(sources);
  const { missing, stale } = compareOutputs(sources);
  rmSync(absolute(stampFile), { force: true });
  if (missing.length > 0) rmSync(absolute(memoryFile), { force: true });
  stale.forEach(removeWithEmptyFolders);
  const compiler = [absolute('node_modules/typescript/bin/tsc'), '-p', 'tsconfig.build.json'];
  const done = spawnSync(process.execPath, compiler, { cwd: absolute('.'), stdio: ['ignore', 2, 2] });
  if (done.status !== 0) return done.status ?? 1;
  await Promise.all([buildCommand(), buildPage()]);
  writeFileSync(absolute(stampFile), `${stamp}${commandFiles()}`);
  return 0;
}

/** The files of the command, whose names follow from what is in them. */
const commandFiles = () =>
  filesBelow(commandFolder)
    .map((path) => `\n${path}`)
    .join('');

const sourceFiles = () => sourceFolders.flatMap(filesBelow).filter((path) => /\.(tsx?|css)$/.test(path));

/** A digest of everything that decides what the compiler makes. */
function stampOf(sources) {
  const hash = createHash('sha256');
  for (const path of [...settings, ...sources]) hash.update(`${path}\0${textOf(path)}\0`);
  return hash.digest('hex');
}

/** Which outputs are not there although they should be, and which are there although they should not. */
function compareOutputs(sources) {
  const expected = new Set([pagePath, ...sources.flatMap(outputsOf)]);
  const present = new Set([...sourceFolders, 'page'].flatMap((folder) => filesBelow(`dist/${folder}`)));
  return {
    missing: [...expected].filter((path) => !present.has(path)),
    stale: [...present].filter((path) => !expected.has(path)),
  };
}

/** Declaration files of our own are read by the compiler only, style sheets by what makes the page. */
function outputsOf(source) {
  if (/\.(d\.ts|css)$/.test(source)) return [];
  const stem = `dist/${source.replace(/\.tsx?$/, '')}`;
  return [`${stem}.js`, `${stem}.d.ts`];
}

function removeWithEmptyFolders(path) {
  rmSync(absolute(path), { recursive: true, force: true });
  const folder = dirname(path);
  if (folder !== 'dist' && readdirSync(absolute(folder)).length === 0) removeWithEmptyFolders(folder);
}
