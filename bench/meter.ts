import type { DualEngine } from './rival/engines/engines.js';

export type MeterReading = {
  /** Time during which at least one engine had a question, since the meter was made. */
  readonly busyMs: number;
  /** Questions asked so far. */
  readonly questions: number;
};

/** Tells how much of a solve is spent in its engines; engines that work at the same time count once. */
export class Meter {
  private underWay = 0;
  private busySince = 0;
  private busyMs = 0;
  private questions = 0;

  reading(): MeterReading {
    const open = this.underWay > 0 ? performance.now() - this.busySince : 0;
    return { busyMs: this.busyMs + open, questions: this.questions };
  }

  /** The engine with each of its questions metered. */
  wrap(engine: DualEngine): DualEngine {
    return {
      name: engine.name,
      solve: async (...question) => this.during(engine.solve(...question)),
      ...(engine.relaxationDuals === undefined
        ? {}
        : { relaxationDuals: async (...question) => this.during(engine.relaxationDuals?.(...question) ?? null) }),
      close: async () => engine.close(),
    };
  }

  private async during<Answer>(answer: Answer | Promise<Answer>): Promise<Answer> {
    this.questions += 1;
    if (this.underWay === 0) this.busySince = performance.now();
    this.underWay += 1;
    try {
      return await answer;
    } finally {
      this.underWay -= 1;
      if (this.underWay === 0) this.busyMs += performance.now() - this.busySince;
    }
  }
}
