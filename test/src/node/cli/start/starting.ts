import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterEach, beforeEach, expect, vi } from 'vitest';

import { signsFor } from '../../../../../src/node/cli/start/label-help.js';
import { startWith, type StartFlags } from '../../../../../src/node/cli/start/start-command.js';
import { scripted, type Scripted, type Step } from './scripted.js';

/** A folder of its own for each test. */
export function scratchFolder(): () => string {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'boardfeed-start-'));
  });
  afterEach(async () => {
    await rm(folder, { recursive: true });
  });
  return () => folder;
}

/** Lets conversations be held by a script, with a folder of their own: call it at the top of a file. */
export function starting(flags: StartFlags) {
  const folder = scratchFolder();
  const printed = { output: '', errors: '' };
  beforeEach(() => {
    Object.assign(printed, { output: '', errors: '' });
    vi.spyOn(process.stdout, 'write').mockImplementation((text) => ((printed.output += String(text)), true));
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => ((printed.errors += String(text)), true));
  });
  afterEach(() => void vi.restoreAllMocks());
  const start = async (
    path: string | undefined,
    steps: readonly Step[],
  ): Promise<Scripted & { readonly code: number }> => {
    const script = scripted(steps);
    const code = await startWith(script.asker, signsFor(true), path, flags);
    expect(script.left()).toEqual([]);
    return { ...script, code };
  };
  return { at: (name: string) => join(folder(), name), folder, printed, start };
}

export const first = (line: Step[1]): Step => ['first pedal', line];
export const next = (line: Step[1]): Step => ['next pedal', line];
/** No other pedal. */
export const enough = next('');

/** What is asked of a new board besides its pedals, where one of them disturbs another. */
export const policy: readonly Step[] = [
  ['What is the most', '120'],
  ['How much more', '25'],
  ['Which mains volts', '230 V'],
];
/** Nothing is owned. */
export const notOwned: Step = ['own a supply', false];
/** Where none does. */
export const quietPolicy: readonly Step[] = policy.toSpliced(1, 1);
export const assume = (value: 'usual' | 'polarity' | 'nothing'): Step => ['What may plans take', value];
