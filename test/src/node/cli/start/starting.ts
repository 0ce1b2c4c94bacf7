import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterEach, beforeEach, expect, vi } from 'vitest';

import { signsFor } from '../../../../../src/node/cli/start/label-help.js';
import { startWith, type StartFlags } from '../../../../../src/node/cli/start/start-command.js';
import { scripted, type Scripted, type Step } from './scripted.js';

/** Lets conversations be held by a script, with a folder of their own: call it at the top of a file. */
export function starting(flags: StartFlags) {
  let folder = '';
  const printed = { output: '', errors: '' };
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'boardfeed-start-'));
    Object.assign(printed, { output: '', errors: '' });
    vi.spyOn(process.stdout, 'write').mockImplementation((text) => ((printed.output += String(text)), true));
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => ((printed.errors += String(text)), true));
  });
  afterEach(async () => {
    vi.restoreAllMocks();
    await rm(folder, { recursive: true });
  });
  const start = async (
    path: string | undefined,
    steps: readonly Step[],
  ): Promise<Scripted & { readonly code: number }> => {
    const script = scripted(steps);
    const code = await startWith(script.asker, signsFor(true), path, flags);
    expect(script.left()).toEqual([]);
    return { ...script, code };
  };
  return { at: (name: string) => join(folder, name), folder: () => folder, printed, start };
}

/** What is asked of a new board. */
export const boardHead: readonly Step[] = [
  ['board called', 'Tour: east'],
  ['Which currency', 'eur'],
  ['Which mains volts', '230 V'],
  ['What is it worth', '25'],
  ['a negative ground?', true],
];

/** A pedal about which all is known. */
export const delay: readonly Step[] = [
  ['pedal called', 'Lode delay'],
  ['kind of circuit', 'digital-delay'],
  ['Which volts', '9 V DC'],
  ['Which sign', 'centre-negative'],
  ['Which plug', 'barrel-2.1'],
  ['What current', '0.3 A'],
  ['Where did you read', 'label'],
  ['of its own', false],
  ['Is this right?', true],
];
/** A pedal of which neither polarity nor draw is known. */
export const fuzz: readonly Step[] = [
  ['pedal called', 'Old fuzz'],
  ['kind of circuit', 'fuzz'],
  ['Which volts', '9V'],
  ['beside the volts', 'DC'],
  ['Which sign', 'unknown'],
  ['Which plug', 'barrel-2.1'],
  ['negative or positive', 'positive'],
  ['What current', '?'],
  ['of its own', false],
  ['Is this right? It is left out of plans until this is known: polarity.', true],
];

export const another: Step = ['another pedal', true];
export const enough: Step = ['another pedal', false];
export const noSchema: Step = ['board.schema.json be written', false];
