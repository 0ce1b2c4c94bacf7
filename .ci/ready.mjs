/**
 * Makes a checkout ready to run: checks Node, installs what the lock file names, compiles what has changed.
 * Quiet when there is nothing to do. Standard output belongs to the command that follows, so all goes to standard error.
 * Written for any Node that knows modules, so that an old one gets a sentence and not a syntax error.
 */
import { readFileSync } from 'fs';

const wanted = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).engines.node.slice(2);
const [major, minor] = process.versions.node.split('.').map(Number);
const [wantedMajor, wantedMinor] = wanted.split('.').map(Number);

if (major < wantedMajor || (major === wantedMajor && minor < wantedMinor)) {
  console.error(
    `boardfeed needs Node ${wanted} or newer; this is Node ${process.versions.node}. See https://nodejs.org/`,
  );
  process.exitCode = 1;
} else {
  import('./steps.mjs')
    .then((steps) => steps.ready({ installOnly: process.argv.includes('--install-only') }))
    .then((exitCode) => {
      process.exitCode = exitCode;
    });
}
