import { setTimeout } from 'node:timers/promises';

import { describe, expect, it } from 'vitest';

import { workThrough, type Lane } from '../../../../src/node/threads/lanes.js';

/** A lane that doubles numbers, takes its time, and breaks down over odd ones. */
function doubling(): Lane<number, number> & { readonly ended: () => boolean } {
  let ended = false;
  return {
    ask: async (task) => {
      await setTimeout(task % 3);
      if (task % 2 === 1) throw new Error(`${task} is odd`);
      return task * 2;
    },
    end: () => {
      ended = true;
      return Promise.resolve();
    },
    ended: () => ended,
  };
}

const tasks = (count: number) => {
  const left = Array.from({ length: count }, (_, index) => index);
  return () => Promise.resolve(left.shift() ?? null);
};

describe('work on several lanes', () => {
  it.each([1, 3, 30])('is done once each, on %i of them, broken or not', async (count) => {
    const lanes = Array.from({ length: count }, doubling);
    const results: number[] = [];
    let busy = 0;
    await workThrough(lanes, {
      next: tasks(20),
      broken: (task) => -task,
      done: async (result) => {
        busy += 1;
        expect(busy).toBe(1);
        await setTimeout(1);
        busy -= 1;
        results.push(result);
      },
      signal: new AbortController().signal,
    });
    const expected = Array.from({ length: 20 }, (_, index) => (index % 2 === 1 ? -index : index * 2));
    expect(results.sort((a, b) => a - b)).toEqual(expected.sort((a, b) => a - b));
    expect(lanes.every((lane) => lane.ended())).toBe(true);
  });

  it('ends when it is told to, and what was not ready by then is not done', async () => {
    const stop = new AbortController();
    const results: number[] = [];
    const lanes = [doubling(), doubling()];
    await workThrough(lanes, {
      next: tasks(1000),
      broken: (task) => -task,
      done: (result) => {
        results.push(result);
        if (results.length === 5) stop.abort();
        return Promise.resolve();
      },
      signal: stop.signal,
    });
    expect(results).toHaveLength(5);
    expect(lanes.every((lane) => lane.ended())).toBe(true);
  });
});
