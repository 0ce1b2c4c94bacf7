import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { Engine } from '../../../../solver/engines/engine.js';
import type { Objective, Program } from '../../../../solver/program.js';
import { prove } from '../../../../bench/rival/solver/prove.js';
import { sharedEngines } from '../../../support/engines.js';
import { liars } from '../../../support/liars.js';
import { remembering } from '../../../support/remembering.js';
import { share, trying } from '../../../support/runs.js';
import { isSolution, withoutDuals, worth, type SmallProgram } from '../../../solver/small-programs.js';

const shared = sharedEngines();
const [trusted, twin] = [remembering(shared.trusted), remembering(shared.twin)];
const honest = { trusted, second: shared.second };

const plenty = () => Infinity;

/** A cover of twelve classes by many loadouts: more columns than are looked at first. */
const largeCover = fc
  .record({
    needs: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 12, maxLength: 12 }),
    loadouts: fc.array(
      fc.record({
        classes: fc.uniqueArray(fc.nat(11), { minLength: 1, maxLength: 5 }),
        price: fc.integer({ min: 14, max: 26 }),
      }),
      { minLength: 500, maxLength: 600 },
    ),
  })
  .map(({ needs, loadouts }): SmallProgram => ({
    program: {
      columns: loadouts.map((_, index) => ({ name: `loadout ${index}`, upper: 3 })),
      rows: needs.map((lower, pedalClass) => ({
        name: `class ${pedalClass}`,
        terms: loadouts.flatMap(({ classes }, column) =>
          classes.includes(pedalClass) ? [{ column, coefficient: 1 }] : [],
        ),
        lower,
        upper: null,
      })),
    },
    objective: {
      name: 'cost',
      terms: loadouts.map(({ classes, price }, column) => ({ column, coefficient: (classes.length + 1) * price })),
      constant: 0,
    },
  }));

test('on programs of many columns the value is that of an engine asked about the whole', async () => {
  let asked = 0;
  await fc.assert(
    fc.asyncProperty(largeCover, async ({ program, objective }) => {
      const claim = await honest.trusted.solve(program, objective, { timeoutMs: 1e9 });
      if (claim.kind !== 'optimal' || !isSolution(program, claim.point)) return;
      asked += 1;
      const outcome = await prove(program, objective, { engines: honest, remainingMs: plenty });
      expect(outcome).toMatchObject({ kind: 'optimal', value: worth(objective, claim.point) });
    }),
    trying(12),
  );
  expect(asked).toBe(share(12));
});

describe('the twin', () => {
  const [sample] = fc.sample(largeCover, { seed: 20_260, numRuns: 1 });
  const { program, objective } = sample as SmallProgram;
  const proveWith = async (trusted: Engine, other: Engine) =>
    prove(program, objective, {
      engines: { trusted: withoutDuals(trusted), second: null, twin: other },
      remainingMs: plenty,
    });
  const least = async (): Promise<number> => {
    const claim = await honest.trusted.solve(program, objective, { timeoutMs: 1e9 });
    return claim.kind === 'optimal' ? worth(objective, claim.point) : Number.NaN;
  };

  test('confirms at the same time, in another order', async () => {
    const optimum = await least();
    let asked = 0;
    const counted: Engine = { ...twin, solve: async (...question) => ((asked += 1), twin.solve(...question)) };
    expect(await proveWith(honest.trusted, counted)).toMatchObject({
      kind: 'optimal',
      value: optimum,
      proof: { kind: 'second run' },
    });
    expect(asked).toBe(1);
  });

  test.each(liars.map((liar) => [liar(twin).name, liar] as const))(
    'one that %s makes nothing wrong, in its place or in the place of the one it confirms',
    async (_, liar) => {
      const optimum = await least();
      for (const outcome of [
        await proveWith(honest.trusted, liar(twin)),
        await proveWith(liar(honest.trusted), twin),
      ]) {
        expect(outcome.kind).not.toBe('infeasible');
        if (outcome.kind === 'optimal') expect(outcome.value).toBe(optimum);
        if (outcome.kind === 'stopped') expect(outcome.bound).toBeLessThanOrEqual(optimum);
      }
    },
  );
});

test('columns that the relaxation finds less promising are not forgotten', async () => {
  // Ten units are needed. The relaxation likes 7 for 7 best, but two of those cost 14; 10 for 11 is the optimum.
  const columns = Array.from({ length: 301 }, (_, index) => ({ name: `column ${index}`, upper: 1 }));
  const termsOf = (most: number, last: number) =>
    columns.map((_, column) => ({ column, coefficient: column === 300 ? last : most }));
  const program: Program = {
    columns,
    rows: [{ name: 'units', terms: termsOf(7, 10), lower: 10, upper: null }],
  };
  const objective: Objective = { name: 'cost', terms: termsOf(7, 11), constant: 0 };
  const outcome = await prove(program, objective, { engines: honest, remainingMs: plenty });
  expect(outcome).toMatchObject({ kind: 'optimal', value: 11 });
});
