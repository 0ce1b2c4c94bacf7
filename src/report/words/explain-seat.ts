import type { JudgedPlan } from '../../domain/judged-plan.js';
import { feedMillivolts } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Elsewhere, SeatExplanation } from '../../planning/explain/seats.js';
import { namesText } from './explain-argument.js';
import { differencesText } from './explain-difference.js';
import { factText, type FactsContext } from './explain-facts.js';
import { placeText } from './places.js';
import { fullStop, outputsText, voltsText } from './words.js';

/** The most supplies without an output for the pedal that are named. */
const mostUnfit = 6;

/** Where the pedal sits in the plan. */
export function hereText(told: FactsContext, { feeds }: JudgedPlan, { feed, alike }: SeatExplanation): string {
  const { inventory } = told;
  const chained = feed.chain === null ? '' : `, on a chain with ${inventory.partName(feed.chain)}`;
  const others = alike.length === 0 ? '' : ` ${outputsOfBank(alike)} would do as well.`;
  return `It sits on ${placeText(inventory, feeds, feed)} at ${voltsText(feedMillivolts(feed))}${chained}.${others}`;
}

const outputsOfBank = (outputs: readonly number[]): string => {
  const text = outputsText(outputs);
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)} of the same bank`;
};

/** The place, and what it would cost or break. */
export function elsewhereText(told: FactsContext, pedal: PedalId, elsewhere: Elsewhere): string {
  const { supply, outputs, bank } = elsewhere;
  const name = told.inventory.supplyName(supply);
  const place = bank === null ? name : `${name} ${outputsText(outputs)}`;
  return `${place}: ${verdictText(told, pedal, elsewhere)}`;
}

function verdictText(told: FactsContext, pedal: PedalId, { verdict }: Elsewhere): string {
  switch (verdict.kind) {
    case 'plan':
      return verdict.differences.length === 0
        ? 'as good, with the others arranged to suit.'
        : `${differencesText(told, verdict.differences)}, with the others arranged as well as can be.`;
    case 'forbidden': {
      const [first] = verdict.findings;
      return first === undefined ? 'no use of it is allowed.' : fullStop(`no (${first.rule}): ${first.message}`);
    }
    case 'impossible': {
      const { conflict } = verdict;
      if (conflict === null) return 'then not every pedal can have power.';
      const others = conflict.pedals.filter((id) => id !== pedal);
      const facts = conflict.facts.map((fact) => factText(told, fact, conflict.pedals.map(told.inventory.pedal)));
      const [left, power] = others.length === 1 ? ['', 'cannot have'] : ['not all of ', 'can have'];
      const who = others.length === 0 ? 'it cannot have' : `${left}${namesText(told, others)} ${power}`;
      return `then ${who} power as well.${facts.length === 0 ? '' : ` ${facts.join(' ')}`}`;
    }
    case 'unknown':
      return 'not settled in time.';
  }
}

/** The supplies that have no output for it, in one sentence. */
export function unfitTexts({ inventory }: FactsContext, { unfit }: SeatExplanation): readonly string[] {
  if (unfit.length === 0) return [];
  const names = unfit.slice(0, mostUnfit).map(inventory.supplyName).join(', ');
  const more = unfit.length > mostUnfit ? ` and ${unfit.length - mostUnfit} more` : '';
  return [`No output for it: ${names}${more}.`];
}
