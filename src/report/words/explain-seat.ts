import { groupBy } from '../../domain/group-by.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { feedMillivolts } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Elsewhere, SeatExplanation } from '../../planning/explain/seats.js';
import { inTrade } from './connector-words.js';
import { namesText } from './explain-argument.js';
import { differencesText } from './explain-difference.js';
import { factText, type FactsContext } from './explain-facts.js';
import { batteriesOf, isFedByOwn } from './inventory.js';
import { placeText } from './places.js';
import { fullStop, listText, outputsText, voltsText } from './words.js';

/** The most supplies without an output for the pedal that are named. */
const mostUnfit = 6;

/** Where the pedal sits in the plan. */
export function hereText(told: FactsContext, { feeds }: JudgedPlan, { feed, alike }: SeatExplanation): string {
  const { inventory } = told;
  if (isFedByOwn(inventory, feed)) {
    const batteries = batteriesOf(inventory, feed);
    return batteries === null ? 'It keeps its own adapter.' : `It runs on ${inventory.batteriesName(batteries)}.`;
  }
  const chained = feed.chain === null ? '' : `, on a chain with ${inventory.partName(feed.chain)}`;
  const others = alike.length === 0 ? '' : ` ${outputsOfBank(alike)} would do as well.`;
  return `It sits on ${placeText(inventory, feeds, feed)} at ${voltsText(feedMillivolts(feed))}${chained}.${others}`;
}

const outputsOfBank = (outputs: readonly number[]): string => {
  const text = outputsText(outputs);
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)} of the same bank`;
};

/** Stands before the other places. */
export const othersArranged = 'With the other pedals arranged as well as can be:';

/** The most places of one sort that are told one by one, and the most names in what is said of several. */
const mostTold = 3;
const mostNames = 6;

/**
 * Each other place, and what it would cost or break; those of which the same can be said share a text, and so do all but the
 * best of those that are worse in the same thing.
 */
export function elsewhereTexts(told: FactsContext, pedal: PedalId, all: readonly Elsewhere[]): readonly string[] {
  return groupBy(all, (each) => sortOf(told, pedal, each)).flatMap((alike) => sortTexts(told, pedal, alike));
}

/** Plans that are worse in the same tier are of one sort; else it is what is said of the place. */
function sortOf(told: FactsContext, pedal: PedalId, elsewhere: Elsewhere): string {
  const first = worst(elsewhere);
  return first === null ? verdictText(told, pedal, elsewhere) : `${first.tier} ${first.to > first.from}`;
}

const worst = ({ verdict }: Elsewhere) => (verdict.kind === 'plan' ? (verdict.differences[0] ?? null) : null);

function sortTexts(told: FactsContext, pedal: PedalId, alike: readonly [Elsewhere, ...Elsewhere[]]): readonly string[] {
  const text = (places: readonly Elsewhere[], verdict: string): string => `${placesText(told, places)}: ${verdict}`;
  if (worst(alike[0]) === null) return [text(alike, verdictText(told, pedal, alike[0]))];
  const byHarm = [...alike].sort((one, other) => harmOf(one) - harmOf(other));
  const few = byHarm.length > mostTold + 1 ? byHarm.slice(0, mostTold) : byHarm;
  const rest = byHarm.slice(few.length);
  return [
    ...few.map((each) => text([each], verdictText(told, pedal, each))),
    ...(rest.length === 0 ? [] : [text(rest, `${rangeText(told, rest)}.`)]),
  ];
}

const harmOf = (elsewhere: Elsewhere): number => {
  const first = worst(elsewhere);
  return first === null ? 0 : first.to - first.from;
};

/** "46.00 EUR more to 192.50 EUR more", of the first tier in which they are worse. */
function rangeText(told: FactsContext, places: readonly Elsewhere[]): string {
  const ends = [places[0], places.at(-1)].flatMap((each) => (each === undefined ? [] : (worst(each) ?? [])));
  const texts = ends.map(({ tier, from, to }) => differencesText(told, [{ tier, from, to }]));
  return [...new Set(texts)].join(' to ');
}

function placesText({ inventory }: FactsContext, places: readonly Elsewhere[]): string {
  const names = places.map(({ supply, outputs, bank }) =>
    bank === null ? inventory.supplyName(supply) : `${inventory.supplyName(supply)} ${outputsText(outputs)}`,
  );
  if (names.length <= mostNames) return listText(names);
  return `${names.slice(0, mostNames).join(', ')} and ${names.length - mostNames} more`;
}

function verdictText(told: FactsContext, pedal: PedalId, { verdict }: Elsewhere): string {
  switch (verdict.kind) {
    case 'plan':
      return verdict.differences.length === 0 ? 'as good.' : `${differencesText(told, verdict.differences)}.`;
    case 'forbidden': {
      const [first] = verdict.findings;
      return first === undefined
        ? 'no use of it is allowed.'
        : fullStop(`no (${first.rule}): ${inTrade(first.message)}`);
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
