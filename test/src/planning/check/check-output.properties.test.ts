import { kitOf } from '../../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Board, WiredFeed } from '../../../../src/domain/board.js';
import type { PartId, SupplyId } from '../../../../src/domain/quantities.js';
import { checkOutput, type OutputAnswer, type OutputQuestion } from '../../../../src/planning/check/check-output.js';
import { readCase, type Case, withoutBatteries } from '../../../support/arbitraries.js';
import { choice, pick } from '../../../support/arbitrary-choices.js';
import { bruteForce } from '../../../support/brute-force.js';
import { isSound, moneyFor } from '../../../support/brute-force-judge.js';
import { cheapestOn, type Around } from '../../../support/brute-force-output.js';
import { wiredOf } from '../../../support/wired.js';
import { share, trying } from '../../../support/runs.js';

const runs = 1200;

/** Any pedal of the board at any output of any supply. */
function questionOf({ board, catalogue }: Case, choices: readonly number[]): OutputQuestion {
  const [first = 0, second = 0, third = 0] = choices;
  const pedal = pick(board.pedals, first);
  const supply = pick([...board.gear.supplies, ...catalogue.supplies], second);
  const outputs = supply?.banks.reduce((sum, bank) => sum + bank.outputs, 0) ?? 1;
  if (pedal === undefined || supply === undefined) throw new Error('every case has a pedal and a supply');
  return { pedal: pedal.id, supply: supply.id, unit: 1, output: 1 + (third % outputs) };
}

const questions = fc.tuple(readCase.map(withoutBatteries), fc.array(choice, { minLength: 3, maxLength: 3 }));

const supplyIn = ({ board, catalogue }: Case, id: SupplyId) => {
  const supply = [...board.gear.supplies, ...catalogue.supplies].find((one) => one.id === id);
  if (supply === undefined) throw new Error('the question is about a supply of the case');
  return supply;
};

/** What the first trial makes of the wiring around it. */
function wiringOf({ others, company }: Around, { trials: [trial] }: OutputAnswer): readonly WiredFeed[] {
  if (trial === undefined) throw new Error('an output has a setting');
  const changed = trial.changed.map(wiredOf);
  const kept = company.filter(({ pedal }) => !changed.some((feed) => feed.pedal === pedal));
  return [...others, ...kept, ...changed, wiredOf(trial.feed)];
}

function expectAgreement(around: Around, question: OutputQuestion, answer: OutputAnswer): void {
  const { board, catalogue } = around;
  const cheapest = cheapestOn(around, question);
  expect(answer.fits).toBe(cheapest !== null);
  expect(answer.trials[0]?.findings.length === 0).toBe(answer.fits);
  if (cheapest === null) return;
  const wiring = wiringOf(around, answer);
  expect(isSound(board, catalogue, wiring)).toBe(true);
  expect(moneyFor(board, catalogue, wiring)).toBe(cheapest);
  const before = moneyFor(board, catalogue, [...around.others, ...around.company]);
  expect(answer.trials[0]?.money).toBe(cheapest - before);
}

describe('an output of a unit that is not in use', () => {
  it('takes a pedal exactly when brute force finds a way, and at the same cost', () => {
    const seen = { yes: 0, no: 0, withLeads: 0 };
    fc.assert(
      fc.property(questions, ([of, choices]) => {
        const question = questionOf(of, choices);
        const answer = checkOutput(kitOf(of.board, of.catalogue), question);
        expect(answer).toMatchObject({ inPlace: false, company: [] });
        const around = { ...of, supply: supplyIn(of, question.supply), others: [], company: [] };
        expectAgreement(around, question, answer);
        seen[answer.fits ? 'yes' : 'no'] += 1;
        if (answer.fits && (answer.trials[0]?.feed.adapters.length ?? 0) > 0) seen.withLeads += 1;
      }),
      trying(runs),
    );
    expect(seen.yes).toBeGreaterThan(share(runs / 5));
    expect(seen.no).toBeGreaterThan(share(runs / 5));
    expect(seen.withLeads).toBeGreaterThan(share(runs / 50));
  });
});

/** A sound wiring, with all that it uses owned: a shop's prices count for what comes on top. */
function plugged({ board, catalogue }: Case): Board | null {
  const found = bruteForce(board, catalogue, { aim: 'cost', partial: true });
  if (found.kind === 'impossible' || found.feeds.length === 0) return null;
  const wiring = found.feeds.map(wiredOf);
  const supplies = new Map<SupplyId, number>(board.owned.supplies);
  for (const { supply, unit } of wiring) supplies.set(supply, Math.max(unit, supplies.get(supply) ?? 0));
  const parts = new Map<PartId, number>(board.owned.parts);
  const chains = new Map(wiring.map((feed) => [JSON.stringify([feed.supply, feed.unit, feed.outputs]), feed.chain]));
  const uses = [...chains.values(), ...wiring.flatMap(({ join, adapters }) => [join?.part ?? null, ...adapters])];
  for (const id of new Set(uses))
    if (id !== null) parts.set(id, Math.max(parts.get(id) ?? 0, uses.filter((one) => one === id).length));
  return { ...board, owned: { supplies, parts }, wiring };
}

describe('an output of a unit in use', () => {
  it('takes a pedal exactly when brute force finds a way with all else in place, and at the same cost', () => {
    const seen = { yes: 0, no: 0, inCompany: 0, joined: 0 };
    fc.assert(
      fc.property(questions, ([of, choices]) => {
        const board = plugged(of);
        fc.pre(board !== null);
        const asked = questionOf(of, choices);
        // An output that another pedal hangs on, so that there is company now and then.
        const taken = board.wiring.filter(({ pedal }) => pedal !== asked.pedal);
        const used = pick(taken, (choices[1] ?? 0) + (choices[2] ?? 0));
        const question =
          used === undefined || (choices[0] ?? 0) % 2 === 0
            ? asked
            : { ...asked, supply: used.supply, unit: used.unit, output: used.outputs.at(-1) ?? 1 };
        const rest = board.wiring.filter(({ pedal }) => pedal !== question.pedal);
        const onUnit = rest.filter(({ supply, unit }) => supply === question.supply && unit === question.unit);
        fc.pre(onUnit.length > 0 && isSound(board, of.catalogue, rest));
        const company = onUnit.filter(({ outputs }) => outputs.join() === String(question.output));
        const around: Around = {
          board,
          catalogue: of.catalogue,
          supply: supplyIn(of, question.supply),
          others: rest.filter((feed) => !company.includes(feed)),
          company,
        };
        const answer = checkOutput(kitOf(board, of.catalogue), question);
        expect(answer.inPlace).toBe(true);
        expect(new Set(answer.company)).toEqual(new Set(company.map(({ pedal }) => pedal)));
        expectAgreement(around, question, answer);
        seen[answer.fits ? 'yes' : 'no'] += 1;
        if (answer.fits && company.length > 0) seen.inCompany += 1;
        if (onUnit.some(({ join, outputs }) => join !== null && outputs.includes(question.output))) seen.joined += 1;
      }),
      trying(2 * runs, 2),
    );
    expect(seen.yes).toBeGreaterThan(share(runs / 10));
    expect(seen.no).toBeGreaterThan(share(runs / 10));
    expect(seen.inCompany).toBeGreaterThan(share(runs / 40));
    expect(seen.joined).toBeGreaterThan(1);
  });
});
