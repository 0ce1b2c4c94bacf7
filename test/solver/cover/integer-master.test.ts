import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { ColumnPool } from '../../../solver/cover/column-pool.js';
import { seekBeside } from '../../../solver/cover/integer-master.js';
import type { Engine } from '../../../solver/engines/engine.js';
import { load } from '../../../solver/engines/javascript-lp-solver.js';
import { webTiming } from '../../../solver/timing.js';
import { liars, silent } from '../../support/liars.js';
import { share, trying } from '../../support/runs.js';
import { ended, expectTrue } from './searching.js';
import { cheapest, programOf, smallCovers, type Column, type SmallCover } from './small-covers.js';

const core = await load();
const honest: Engine = {
  name: 'javascript-lp-solver',
  solve: async (program, objective, { timeoutMs }) => Promise.resolve(core.solve(program, objective, timeoutMs)),
  close: async () => Promise.resolve(),
};

/** What is asked of an engine, once, about all columns of a cover, and what comes of its answer. */
async function sought(cover: SmallCover, engine: Engine) {
  const program = programOf(cover);
  const pool = new ColumnPool<number>(program);
  for (const column of cover.columns) pool.add(column);
  const offers: (readonly Column[])[] = [];
  let left = 1;
  const rootDuals = { rows: new Float64Array(program.rows.length), conditions: new Float64Array(), scale: 1 };
  await seekBeside(
    { program, pool, rootDuals, offered: new Set<Column>(), offer: (columns) => offers.push(columns) > 0 },
    { engine, afterMs: 0 },
    { ...webTiming, later: async () => Promise.resolve(left-- > 0) },
    new AbortController().signal,
  );
  return offers;
}

describe('what an engine says beside the search', () => {
  it('is a best solution over the columns when it is honest', async () => {
    const seen = { solved: 0, infeasible: 0 };
    await fc.assert(
      fc.asyncProperty(smallCovers, async (cover) => {
        const truth = cheapest(cover);
        const [offer] = await sought(cover, honest);
        if (truth === null) expect(offer).toBeUndefined();
        seen[truth === null ? 'infeasible' : 'solved'] += 1;
        const contents = (offer ?? []).map(({ content }) => content);
        if (truth !== null) expect(programOf(cover).complete(offer ?? [])).toEqual({ value: truth.value, contents });
      }),
      trying(300),
    );
    expect(Math.min(seen.solved, seen.infeasible)).toBeGreaterThan(share(30));
  });

  it.each([...liars, silent].map((liar) => liar(honest)).map((engine) => [engine.name, engine] as const))(
    'changes no answer when it %s',
    async (_, engine) => {
      let asked = 0;
      const counted: Engine = {
        ...engine,
        solve: async (...question) => {
          asked += 1;
          return engine.solve(...question);
        },
      };
      await fc.assert(
        fc.asyncProperty(smallCovers, async (cover) => {
          const truth = cheapest(cover);
          const timing = {
            ...webTiming,
            unpausedMs: 0,
            later: async (_: number, signal: AbortSignal) => (await webTiming.pause(), !signal.aborted),
          };
          const end = await ended(cover, undefined, { timing, beside: { engine: counted, afterMs: 0 } });
          expectTrue(end.outcome, end.cover, truth?.value ?? null);
        }),
        trying(80),
      );
      expect(asked).toBeGreaterThan(0);
    },
  );
});
