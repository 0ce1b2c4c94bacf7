import { kitOf } from '../../../src/domain/kit.js';
import fc from 'fast-check';
import { expect, it } from 'vitest';

import { choosingAims, tiersOf } from '../../../src/domain/aim.js';
import { loadoutMeasures } from '../../../src/formulation/loadout-measures.js';
import { loadoutProgram } from '../../../src/formulation/loadout-program.js';
import { questionOf } from '../../../src/formulation/question.js';
import { scalarObjectives, scalarValue } from '../../../src/formulation/scalar-objective.js';
import { loadoutPricer } from '../../../src/loadout/best-loadout.js';
import { tinyCase } from '../../support/arbitraries.js';
import { everyUnit, type Carried } from '../loadout/every-unit.js';
import { leadsCounted } from '../../support/brute-force-tiers.js';
import { share, trying } from '../../support/runs.js';

it('a search starts with every pedal by itself, as cheaply as any unit can feed it', () => {
  const seen = { alone: 0, never: 0, leads: 0, owned: 0, bought: 0 };
  fc.assert(
    fc.property(tinyCase, fc.constantFrom(...choosingAims), (given, aim) => {
      const tiers = tiersOf(aim, given.board.policy);
      const question = questionOf(kitOf(given.board, given.catalogue), { tiers, partial: true });
      const { bench, supplies } = question;
      const [objective] = scalarObjectives(question);
      if (objective === undefined) throw new RangeError('a question has a step');
      const { cover, groups } = loadoutProgram(question, supplies, objective, [], (uses) => loadoutPricer(uses, bench));
      const isBattery = (group: number): boolean => groups[group]?.uses.supply.source.kind === 'battery';
      /** What a unit costs with every lead at the price of its cheapest piece. */
      const costOf = (taken: Omit<Carried, 'feeds' | 'pedals'>, group: number): number => {
        const { leads, ...counted } = taken;
        const paid = leads.reduce((sum, kind) => sum + (bench.kinds[kind]?.supplyOf[0]?.price ?? NaN), 0);
        const money = (groups[group]?.price ?? NaN) + paid;
        return scalarValue(objective, {
          ...counted,
          newlyExposed: counted.exposed,
          moved: 0,
          unpowered: 0,
          money,
          bricks: isBattery(group) ? 0 : 1,
          sockets: isBattery(group) || groups[group]?.uses.supply.source.kind === 'charge' ? 0 : 1,
          ...leadsCounted(leads.flatMap((kind) => bench.kinds[kind] ?? [])),
        });
      };
      const costs = groups.flatMap(({ uses }, group) =>
        everyUnit(uses.supply, given, question).flatMap(({ pedals, feeds: _, ...taken }) =>
          pedals.length === 1 ? [{ pedal: pedals[0], cost: costOf(taken, group) }] : [],
        ),
      );
      const begun = cover.start.map(({ group, content }) => {
        const { pedals, leads, measures } = loadoutMeasures(content, bench);
        const used = [...leads].flatMap(([kind, count]) => Array.from({ length: count }, () => kind));
        seen[groups[group]?.owned === true ? 'owned' : 'bought'] += 1;
        if (used.length > 0) seen.leads += 1;
        return { pedals: [...pedals], cost: costOf({ ...measures, leads: used }, group) };
      });
      const wanted = [...bench.classes.keys()].flatMap((pedal) => {
        const alone = costs.filter((each) => each.pedal === pedal);
        seen[alone.length > 0 ? 'alone' : 'never'] += 1;
        return alone.length > 0 ? [{ pedals: [[pedal, 1]], cost: Math.min(...alone.map(({ cost }) => cost)) }] : [];
      });
      expect(begun).toHaveLength(wanted.length);
      expect(begun).toEqual(expect.arrayContaining(wanted));
    }),
    trying(300),
  );
  for (const [what, count] of Object.entries(seen)) expect([what, count > share(20)]).toEqual([what, true]);
});
