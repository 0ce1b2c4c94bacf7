import { buildIsCurrent, compile } from './build.mjs';
import { install, installIsCurrent } from './install.mjs';

const steps = [
  {
    isDone: installIsCurrent,
    run: install,
    progress: 'installing the packages that package-lock.json names ...',
    failure: 'the packages could not be installed; npm says why above. Running this again starts afresh.',
  },
  {
    isDone: buildIsCurrent,
    run: compile,
    progress: 'compiling ...',
    failure: 'the sources do not compile; the compiler says where above.',
  },
];

/** Installs, then compiles, each only where that is needed. Returns the exit code: 0, or that of the step that failed. */
export async function ready({ installOnly }) {
  for (const { isDone, run, progress, failure } of installOnly ? steps.slice(0, 1) : steps) {
    if (isDone()) continue;
    console.error(`boardfeed: ${progress}`);
    const exitCode = await run();
    if (exitCode !== 0) {
      console.error(`boardfeed: ${failure}`);
      return exitCode;
    }
  }
  return 0;
}
