import { describe, expect, it } from 'vitest';

import { webTiming, type Timing } from '../../solver/timing.js';
import { nodeTiming } from '../../src/node/threads/node-timing.js';

describe.each<[string, Timing]>([
  ['by web standards', webTiming],
  ['in Node', nodeTiming],
])('%s', (_where, { pause, later }) => {
  it('waiting ends well when the time is over', async () => {
    const started = performance.now();
    expect(await later(30, new AbortController().signal)).toBe(true);
    // Timers may ring a little before a clock of another sort says so.
    expect(performance.now() - started).toBeGreaterThan(25);
  });

  it('waiting ends at once when nobody waits any more, and says so', async () => {
    const controller = new AbortController();
    const waiting = later(60_000, controller.signal);
    controller.abort();
    expect(await waiting).toBe(false);
    expect(await later(60_000, controller.signal)).toBe(false);
  });

  it('a search that pauses again and again keeps no timer waiting', async () => {
    const ring = new AbortController();
    void later(5, new AbortController().signal).then(() => ring.abort());
    let pauses = 0;
    for (; !ring.signal.aborted; pauses += 1) await pause();
    expect(pauses).toBeGreaterThan(0);
  });

  it('pauses at once take turns, and all end', async () => {
    const ended: number[] = [];
    await Promise.all([1, 2, 3].map(async (turn) => pause().then(() => ended.push(turn))));
    expect(ended.sort()).toEqual([1, 2, 3]);
  });
});
