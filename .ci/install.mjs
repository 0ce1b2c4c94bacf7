import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { rmSync, writeFileSync } from 'node:fs';

import { absolute, textOf } from './places.mjs';

const lockFile = 'package-lock.json';
/** What npm leaves behind when an install has ended well, and only then. */
const installedFile = 'node_modules/.package-lock.json';
const stampFile = 'node_modules/.boardfeed-installed';

/**
 * Whether node_modules holds what the lock file names. The stamp covers the lock file, npm's own record and the machine,
 * so a changed lock, a pruned folder or one copied from another system does not pass. A folder that was installed by hand
 * has no stamp yet: it is compared package by package, and stamped when it agrees.
 */
export function installIsCurrent() {
  const installed = textOf(installedFile);
  if (installed === null) return false;
  const lock = textOf(lockFile) ?? '';
  const stamp = stampOf(lock, installed);
  if (textOf(stampFile) === stamp) return true;
  if (!agree(JSON.parse(lock).packages, JSON.parse(installed).packages)) return false;
  writeFileSync(absolute(stampFile), stamp);
  return true;
}

/** Runs `npm ci`. Returns its exit code. An install that is cut short leaves neither record nor stamp. */
export function install() {
  rmSync(absolute(stampFile), { force: true });
  rmSync(absolute(installedFile), { force: true });
  // A production environment would leave out the compiler, and no package needs to run a script of its own.
  const exitCode = npm(['ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=warn']);
  if (exitCode !== 0) return exitCode;
  writeFileSync(absolute(stampFile), stampOf(textOf(lockFile) ?? '', textOf(installedFile) ?? ''));
  return 0;
}

const stampOf = (lock, installed) =>
  createHash('sha256').update([lock, installed, process.platform, process.arch].join('\0')).digest('hex');

/** Whether every package of the lock file that this machine needs is installed at that version, and no other. */
function agree(locked, installed) {
  const needed = Object.entries(locked).filter(([path]) => path !== '');
  const complete = needed.every(([path, entry]) => {
    const found = installed[path];
    return found === undefined
      ? entry.optional === true && !madeForThisMachine(entry)
      : found.version === entry.version;
  });
  return complete && Object.keys(installed).every((path) => path in locked);
}

/** Whether the entry is bound to an operating system and processor, and these are the ones. Libraries of C are not told apart. */
const madeForThisMachine = ({ os, cpu, libc }) =>
  libc === undefined && (os?.includes(process.platform) ?? false) && (cpu?.includes(process.arch) ?? false);

/** Runs npm with all its output on standard error: the very npm that started this, where one did. */
function npm(parameters) {
  const caller = process.env.npm_execpath;
  const options = { cwd: absolute('.'), stdio: ['ignore', 2, 2] };
  const done = caller?.endsWith('npm-cli.js')
    ? spawnSync(process.execPath, [caller, ...parameters], options)
    : spawnSync('npm', parameters, { ...options, shell: process.platform === 'win32' });
  if (done.error) console.error(`boardfeed: npm does not start: ${done.error.message}`);
  return done.status ?? 1;
}
