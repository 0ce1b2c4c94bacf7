import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Decisions } from '../../../solver/cover/decisions.js';
import { easyColumns, PricingRounds } from '../../../solver/cover/pricing.js';
import type { CoverProgram, PricingRequest } from '../../../solver/cover/program.js';
import { share, trying } from '../../support/runs.js';
import { exactWorths, priced } from './priced-covers.js';
import { toldApart } from './searching.js';
import { exactPrice, programOf, worthOf, type Column, type SmallCover } from './small-covers.js';

/** The same without a word on which of its groups are alike. */
const unlike = (cover: SmallCover): SmallCover => ({
  ...cover,
  groups: cover.groups.map(({ name, most }) => ({ name, most })),
});

/** Three times as many groups, so that there is enough before all were looked at. */
const thrice = (cover: SmallCover): SmallCover => {
  const { length } = cover.groups;
  const columns = [0, 1, 2].flatMap((turn) =>
    cover.columns.map((column) => ({ ...column, group: column.group + turn * length })),
  );
  return {
    ...cover,
    groups: [...cover.groups, ...cover.groups, ...cover.groups],
    columns: columns.map((column, content) => ({ ...column, content })),
  };
};

const nothingDecided = ({ groups }: CoverProgram<number>): Decisions => ({
  conditions: [],
  most: groups.map(({ most }) => most),
  taken: [],
});

describe('pricing round after round', () => {
  it('finds columns that are new to the relaxation, or has looked at all groups', () => {
    const seen = { inPart: 0, whole: 0, spared: 0 };
    fc.assert(
      fc.property(priced, ([given, duals]) => {
        const cover = thrice(unlike(toldApart(given)));
        let asked: number[] = [];
        const worthOfAll = (request: PricingRequest) => {
          asked.push(request.group);
          const own = cover.columns.filter(({ group }) => group === request.group);
          const worths = own.map((column) => worthOf(column, request));
          return { bound: Math.max(...worths), columns: own.filter((_, at) => (worths[at] ?? 0) > request.floor) };
        };
        const program = programOf(cover, worthOfAll);
        const whole = nothingDecided(program);
        const rounds = new PricingRounds(program, whole, 'exact');
        const known = new Set<number>();
        const isNew = ({ content }: Column): boolean => !known.has(content) && known.add(content).has(content);
        let next: { readonly after: number; readonly group: number } | null = null;
        for (let found = Infinity; found > 0;) {
          asked = [];
          const { worths, fresh } = rounds.next(duals, isNew);
          found = fresh.length;
          // After the groups that had columns it goes on where it ended.
          if (next !== null) expect(asked[next.after]).toBe(next.group);
          const last = asked.at(-1) ?? 0;
          const lively = new Set(fresh.map(({ group }) => group)).size;
          next = worths === null ? { after: lively, group: (last + 1) % program.groups.length } : null;
          seen.inPart += worths === null ? 1 : 0;
          seen.whole += worths === null ? 0 : 1;
          seen.spared += new Set(asked).size < program.groups.length ? 1 : 0;
          expect(worths !== null || found > 0).toBe(true);
          if (worths !== null) expect(worths).toEqual(exactWorths(cover, [], duals));
        }
        // Under prices that stay as they are nothing that is worth having is left out.
        expect([...known].sort()).toEqual(
          easyColumns(program, whole, duals)
            .map(({ content }) => content)
            .sort(),
        );
      }),
      trying(400),
    );
    expect(seen.inPart).toBeGreaterThan(share(20));
    expect(seen.whole).toBeGreaterThan(share(300));
    expect(seen.spared).toBeGreaterThan(share(20));
  });
});

describe('pricing of groups that can be exchanged for one another', () => {
  it('bounds each as pricing each by itself does, finds the columns of the first, and asks fewer times', () => {
    const seen = { asked: 0, groups: 0, columns: 0 };
    fc.assert(
      fc.property(priced, ([given, duals]) => {
        const apart = toldApart(given);
        const asked = (cover: SmallCover) => {
          const program = programOf(cover, (request) => {
            if (cover === apart) seen.asked += 1;
            return exactPrice(cover.columns, request);
          });
          // The units' own limits are left alone, so that alike groups have the same prices.
          const rows = program.rows.map((_, row) => (program.rows[row]?.name === 'group' ? 0 : (duals.rows[row] ?? 0)));
          const found: Column[] = [];
          // As if the relaxation had all columns, so that the round looks at all groups.
          const take = (column: Column): boolean => (found.push(column), false);
          const { worths } = new PricingRounds(program, nothingDecided(program), 'quick').next(
            { ...duals, rows: Float64Array.from(rows) },
            take,
          );
          return { worths, found };
        };
        const [shared, single] = [asked(apart), asked(unlike(apart))];
        seen.groups += apart.groups.length;
        seen.columns += shared.found.length;
        const told = ({ group, cost, amounts }: Column) => ({ group, cost, amounts });
        expect(shared.worths).toEqual(single.worths);
        const isFirst = ({ group }: { group: number }): boolean => {
          const kind = apart.groups[group]?.alike ?? null;
          return kind === null || apart.groups.findIndex(({ alike }) => alike === kind) === group;
        };
        expect(shared.found.map(told)).toEqual(single.found.filter(isFirst).map(told));
      }),
      trying(200),
    );
    expect(seen.columns).toBeGreaterThan(share(100));
    expect(seen.asked).toBeLessThan(seen.groups);
  });
});
