import { closeSync, existsSync, openSync } from 'node:fs';

import { describe, expect, test } from 'vitest';

import { defectLine } from '../../../../src/node/cli/defects.js';
import { spawned, complaints, gigBoard, marramStreet, tideway } from './command.js';

describe('the line about a defect', () => {
  test('tells what is known and that the files are not to blame', () => {
    const line = 'boardfeed has a defect; your files are not to blame and nothing was changed: ';
    expect(defectLine(new RangeError('the plan fails its audit'))).toBe(`${line}the plan fails its audit`);
    expect(defectLine('left waiting')).toBe(`${line}left waiting`);
    expect(defectLine(undefined)).toBe(`${line}undefined`);
    expect(defectLine(new Error())).toBe(`${line}no more is known`);
  });

  test('is one line without anything that a terminal could act on', () => {
    expect(defectLine(new Error('a\u001b[31mb\nc\u202ed'))).toMatch(/: a\\x1b\[31mb\\x0ac\\u202ed$/);
  });

  test('tells when the output could not be written', () => {
    const full = Object.assign(new Error('ENOSPC: no space left on device, write'), {
      code: 'ENOSPC',
      syscall: 'write',
    });
    expect(defectLine(full)).toBe('boardfeed could not write its output: ENOSPC: no space left on device, write');
  });
});

describe('a defect ends the process with code 1, one line and no stack trace', () => {
  test.each([
    {
      where: 'an exception in the command',
      before: 'globalThis.AbortController = class { constructor() { throw new Error("no\\u001b[1m\\nmore"); } }',
      says: /: no\\x1b\[1m\\x0amore\n$/,
    },
    { where: 'an exception that nobody sees', before: throwingSoon('throw new Error("late")'), says: /: late\n$/ },
    { where: 'a rejection that nobody sees', before: throwingSoon('Promise.reject(null)'), says: /: null\n$/ },
    {
      where: 'waiting for what never comes',
      before: `
        import { syncBuiltinESMExports } from 'node:module';
        import timers from 'node:timers/promises';
        timers.setImmediate = () => new Promise(() => {});
        timers.setTimeout = timers.setImmediate;
        syncBuiltinESMExports();
        globalThis.setTimeout = () => undefined;`,
      says: /: it ended before it had an answer\n$/,
    },
  ])('$where', async ({ before, says }) => {
    const ended = await spawned(['choose', gigBoard, marramStreet], { before });
    expect(ended).toMatchObject({ code: 1, signal: null, output: '' });
    expect(complaints(ended)).toMatch(says);
    expect(complaints(ended).split('\n')).toHaveLength(2);
  });
});

/** Throws while the command is at work: soon after it has begun to choose. */
function throwingSoon(statement: string): string {
  return `
    globalThis.AbortController = class extends AbortController {
      constructor() {
        super();
        setImmediate(() => { ${statement}; });
      }
    };`;
}

describe('a reader that closes the pipe', () => {
  test.each([
    { parameters: ['choose', ...tideway], code: 0 },
    { parameters: ['choose', ...tideway, '--json'], code: 0 },
    { parameters: ['--help'], code: 0 },
  ])('$parameters: no error text, the code as ever', async ({ parameters, code }) => {
    const ended = await spawned(parameters, { onStart: (child) => child.stdout?.destroy() });
    expect(ended).toMatchObject({ code, signal: null });
    expect(complaints(ended)).toBe('');
  });

  test('of standard error: the exit code still tells', async () => {
    const ended = await spawned(['nonsense'], { onStart: (child) => child.stderr?.destroy() });
    expect(ended).toMatchObject({ code: 2, signal: null, output: '' });
  });
});

/** A device that is always full; there is none on every system. */
const fullDevice = '/dev/full';

test.skipIf(!existsSync(fullDevice))('a full disk is no plan: exit code 1 and a line', async () => {
  const outputTo = openSync(fullDevice, 'w');
  try {
    const ended = await spawned(['choose', ...tideway], { outputTo });
    expect(ended).toMatchObject({ code: 1, signal: null });
    expect(complaints(ended)).toMatch(/^boardfeed could not write its output: ENOSPC.*\n$/);
  } finally {
    closeSync(outputTo);
  }
});
