import { describe, expect, it } from 'vitest';

import { pausesOf, webTiming, type Timing } from '../../solver/timing.js';
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

describe('pauses of a search', () => {
  const counted = (unpausedMs: number) => {
    const seen = { pauses: 0 };
    const timing = { ...webTiming, unpausedMs, pause: async () => Promise.resolve(void (seen.pauses += 1)) };
    return { seen, pause: pausesOf(timing) };
  };

  it('are left out where the last one was just now', async () => {
    const { seen, pause } = counted(60_000);
    for (let step = 0; step < 100; step += 1) await pause();
    expect(seen.pauses).toBe(0);
  });

  it('are made after so many milliseconds, and always where there are none', async () => {
    const [soon, always] = [counted(5), counted(0)];
    await webTiming.later(20, new AbortController().signal);
    await soon.pause();
    expect(soon.seen.pauses).toBe(1);
    for (let step = 0; step < 100; step += 1) await always.pause();
    expect(always.seen.pauses).toBe(100);
  });
});
