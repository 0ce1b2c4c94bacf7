/**
 * Prints "N passed, N failed" from the results file that vitest wrote and the outcome of the whole run, passed or failed.
 * A test file that does not even load counts as a failure; so does a run that failed although no test did, such as one
 * that left no results or no tests at all. Exits with 1 when anything failed.
 */
import { existsSync, readFileSync } from 'node:fs';

const [, , resultsFile, outcome] = process.argv;
const results = existsSync(resultsFile) ? JSON.parse(readFileSync(resultsFile, 'utf8')) : null;
const passed = results?.numPassedTests ?? 0;
const failures = results === null ? 0 : results.numFailedTests + results.testResults.filter(isBroken).length;
const failed = outcome === 'passed' && passed > 0 ? failures : Math.max(failures, 1);

console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;

/** Whether the file failed, but none of its tests did. */
function isBroken({ status, assertionResults }) {
  return status === 'failed' && assertionResults.every((test) => test.status !== 'failed');
}
