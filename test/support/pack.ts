import { execFile } from 'node:child_process';
import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the checkout. */
export const checkout = fileURLToPath(new URL('../..', import.meta.url));

/** What a program printed, and how it ended. */
export type Finished = { readonly exitCode: number; readonly output: string; readonly errors: string };

/** Runs a program to its end; a failure is a value. @throws Error when the program cannot be started. */
export function run(program: string, parameters: readonly string[], folder: string): Promise<Finished> {
  return new Promise((resolve, reject) => {
    const options = { cwd: folder, env: plainEnvironment(), maxBuffer: 64 * 1024 * 1024 };
    const child = execFile(program, parameters, options, (error, output, errors) => {
      if (typeof error?.code === 'string') reject(new Error(`${program} does not run`, { cause: error }));
      else resolve({ exitCode: child.exitCode ?? 1, output, errors });
    });
  });
}

/** Runs a program that must succeed, and returns what it printed. @throws Error with all that it said when it fails. */
export async function runWell(program: string, parameters: readonly string[], folder: string): Promise<string> {
  const { exitCode, output, errors } = await run(program, parameters, folder);
  if (exitCode === 0) return output;
  throw new Error(`${program} ${parameters.join(' ')} ended with ${exitCode}:\n${output}\n${errors}`);
}

/** A folder in which somebody has installed the published package, and nothing else. */
export type Customer = {
  readonly folder: string;
  /** Where the package lies. */
  readonly packageFolder: string;
  /** The command as the package installs it. */
  readonly command: string;
  readonly remove: () => Promise<void>;
};

/** Packs the checkout and installs the tarball in a new folder, as a customer would. @throws Error when npm fails. */
export async function installPacked(): Promise<Customer> {
  const folder = await mkdtemp(join(tmpdir(), 'boardfeed-package-'));
  await npm(['pack', '--pack-destination', folder], checkout);
  const tarballs = (await readdir(folder)).filter((name) => name.endsWith('.tgz'));
  await writeFile(join(folder, 'package.json'), '{ "private": true, "type": "module" }\n');
  await npm(['install', '--prefer-offline', '--no-audit', '--no-fund', ...tarballs.map((name) => `./${name}`)], folder);
  return {
    folder,
    packageFolder: join(folder, 'node_modules', 'boardfeed'),
    command: join(folder, 'node_modules', '.bin', 'boardfeed'),
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}

/** Every file below a folder, as paths inside it with forward slashes, sorted. */
export async function filesBelow(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

/** The npm that runs the tests, where one does. */
function npm(parameters: readonly string[], folder: string): Promise<string> {
  const caller = process.env.npm_execpath;
  return caller?.endsWith('npm-cli.js') === true
    ? runWell(process.execPath, [caller, ...parameters], folder)
    : runWell('npm', parameters, folder);
}

/** The environment without what npm tells its scripts about this checkout, and without colours. */
function plainEnvironment(): NodeJS.ProcessEnv {
  const told = /^(npm_package_|npm_lifecycle_|npm_config_local_prefix$|INIT_CWD$|FORCE_COLOR$)/;
  const kept = Object.entries(process.env).filter(([name]) => !told.test(name));
  return { ...Object.fromEntries(kept), NO_COLOR: '1', LC_ALL: 'C.UTF-8' };
}
