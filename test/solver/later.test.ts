import { describe, expect, it } from 'vitest';

import { later } from '../../solver/later.js';

describe('waiting for later', () => {
  it('ends well when the time is over', async () => {
    const started = performance.now();
    expect(await later(30, new AbortController().signal)).toBe(true);
    // Timers may ring a little before a clock of another sort says so.
    expect(performance.now() - started).toBeGreaterThan(25);
  });

  it('ends at once when nobody waits any more, and says so', async () => {
    const controller = new AbortController();
    const waiting = later(60_000, controller.signal);
    controller.abort();
    expect(await waiting).toBe(false);
    expect(await later(60_000, controller.signal)).toBe(false);
  });
});
