import { expect } from 'vitest';

import type { Ran } from './command-host.js';

/** The most that a process may hold. */
const mostBytes = 500_000_000;
/** The most that one run may keep the processor busy. */
const mostBusyMs = 5_000;

/** A line about a file: which, where, and what is wrong. */
const faultLine = /^.+:\d+:\d+( \S.*)?: \S.*[.!?]$/;
/** What may follow: the line itself, a marker under the place, what to do; at the end how many faults there are. */
const furtherLines = [
  /^ +\d+ \| .*$/,
  /^ +\| +\^+$/,
  /^ {2}\S.*[.!?]$/,
  /^\d+ faults? in .+\.$/,
  /^Add --skip-bad-rows .+\.$/,
];
/** What may be on standard error besides: progress, and what was left aside in reading. */
const remark = /^(Searching, .*|.* states no policy: the board has starting values\..*|.+: (?:left out|not used:) .*)$/;

/** What holds of every run of a command that is used rightly, whatever its files hold. */
export function expectUpright(ran: Ran | null): asserts ran is Ran {
  if (ran === null) throw new Error('it hung, or its process died');
  expect(ran.crash).toBe(null);
  expect([0, 3, 4, 5]).toContain(ran.code);
  expect(ran.output + ran.errors).not.toMatch(/^\s+at .+[:(]/m);
  expect(ran.output + ran.errors).not.toMatch(/[^\P{Cc}\n]|[\u202a-\u202e\u2066-\u2069\u2028\u2029]/u);
  expect(ran.residentBytes).toBeLessThan(mostBytes);
  expect(ran.busyMs).toBeLessThan(mostBusyMs);
  const lines = ran.errors.split('\n').filter((line) => line !== '' && !remark.test(line));
  if (ran.code !== 3) {
    expect(lines).toEqual([]);
    expect(ran.output).not.toBe('');
    return;
  }
  expect(ran.output).toBe('');
  expect(lines[0]).toMatch(faultLine);
  for (const line of lines)
    expect([line, [faultLine, ...furtherLines].some((form) => form.test(line))]).toEqual([line, true]);
}
