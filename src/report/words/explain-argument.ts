import { minorUnits, type PedalId } from '../../domain/quantities.js';
import type { Argument } from '../../planning/explain/argument.js';
import { factText, type FactsContext } from './explain-facts.js';
import { needsText } from './needs.js';
import { speechOf } from './speech.js';
import { capital, countText, fullStop, listText, outputsText, priceText } from './words.js';

/** The most names that a sentence lists. */
const mostNamed = 8;
/** The most supplies that are named as the only ones. */
const mostSupplies = 4;

/** Why some pedals cannot all be powered, in sentences that lead from what each needs to what does not go together. */
export function argumentTexts(told: FactsContext, argument: Argument): readonly string[] {
  const { conflict } = argument;
  const pedals = conflict.pedals.map(told.inventory.pedal);
  return [
    ...argument.feeders.map((each) => feederText(told, argument, each)),
    ...argument.refusals.flatMap((each) => refusalTexts(told, each)),
    ...conflict.facts.map((fact) => factText(told, fact, pedals)),
    ...unitTexts(told, argument),
    ...conclusionTexts(told, argument),
  ];
}

/** The names; of many the first, and how many others. */
export function namesText({ inventory }: FactsContext, pedals: readonly PedalId[]): string {
  const names = pedals.map(inventory.pedalName);
  if (names.length <= mostNamed) return listText(names);
  const shown = names.slice(0, mostNamed - 1);
  return `${shown.join(', ')} and ${names.length - shown.length} other pedals`;
}

function feederText(
  told: FactsContext,
  { conflict }: Argument,
  { pedals, supplies }: Argument['feeders'][number],
): string {
  const { inventory } = told;
  const names = namesText(told, pedals);
  const it = pedals.length === 1 ? 'it' : 'any one of them';
  if (supplies.length === 0)
    return `Nothing that you own${told.kit.catalogue === null ? '' : ' or can buy'} has an output for ${names}.`;
  if (supplies.length > mostSupplies)
    return `For ${names} there are ${supplies.length} supplies with an output for ${it}.`;
  const only = listText(supplies.map(inventory.supplyName), 'or');
  const alone = conflict.pedals.length === 1 ? '' : ' by itself';
  return `Only ${only} has an output for ${names}${pedals.length === 1 ? alone : ''}.`;
}

/** What the pedal needs, how near it came, and what the rest fails on. */
function refusalTexts(told: FactsContext, { pedal, refusals }: Argument['refusals'][number]): readonly string[] {
  const { inventory } = told;
  const [nearest, ...others] = refusals;
  const needs = `${inventory.pedalName(pedal)} needs ${needsText(speechOf(told.kit), inventory.pedal(pedal))}.`;
  if (nearest === undefined) return [needs];
  const { rule, at, message } = nearest;
  if (at === null) return [needs, fullStop(capital(message))];
  const place = `${inventory.supplyName(at.supply)} ${outputsText(at.outputs, '–')}`;
  const rules = [...new Set(others.map((other) => other.rule))].filter((other) => other !== rule);
  const rest = rules.length === 0 ? [] : [`Other outputs fail on ${listText(rules, 'or')}.`];
  return [needs, fullStop(`The nearest miss is at ${place}, on the rule ${rule}: ${message}`), ...rest];
}

/** "One Quay 6 feeds 6 of these 7 at most, and there is 1." Said where it bears on the number of supplies. */
function unitTexts({ inventory }: FactsContext, { conflict, units }: Argument): readonly string[] {
  const count = conflict.pedals.length;
  const told = units.flatMap(({ supply, units: there, most }) =>
    most === null || (there === null && most === count)
      ? []
      : [
          `One ${inventory.supplyName(supply)} feeds ${most === count ? (count === 2 ? 'both' : `all ${count}`) : `${most} of these ${count} at most`}` +
            `${there === null ? '' : `, and there ${there === 1 ? 'is' : 'are'} ${there === 0 ? 'none' : there}`}.`,
        ],
  );
  const whole = units.every(({ units: there, most }) => there !== null && most !== null);
  const together = units.reduce((sum, { units: there, most }) => sum + (there ?? 0) * (most ?? 0), 0);
  if (!whole || units.length === 0 || together >= count) return told;
  return [...told, `That makes ${together} of ${count}.`];
}

function conclusionTexts(told: FactsContext, argument: Argument): readonly string[] {
  const { conflict, least, perSupply, mostSupplies: allowed } = argument;
  const { policy } = told.board;
  const count = conflict.pedals.length;
  const they = count === 1 ? 'It takes' : `Together these ${count} take`;
  const texts: string[] = [];
  if (least.budget !== undefined && least.budget !== null) {
    const beyond = minorUnits(least.budget - (policy.budget ?? 0));
    texts.push(
      `${they} at least ${priceText(minorUnits(least.budget), told.board)}: ${priceText(beyond, told.board)} more than the budget.`,
    );
  }
  if (perSupply !== undefined && perSupply !== null && allowed !== null && perSupply * allowed < count)
    texts.push(
      `No supply feeds more than ${perSupply} of these ${count} at once, so ${countText(allowed, 'supply', 'supplies')} ${allowed === 1 ? 'feeds' : 'feed'} ${perSupply * allowed} at most.`,
    );
  else texts.push(...fewestTexts(least).map((fewest) => `${they} at least ${fewest}.`));
  return [...texts, sizeText(told, argument)];
}

function fewestTexts({ bricks, sockets }: Argument['least']): readonly string[] {
  if (bricks !== undefined && bricks !== null) return [countText(bricks, 'supply', 'supplies')];
  return sockets === undefined || sockets === null ? [] : [countText(sockets, 'mains socket')];
}

/** What is shown of the set as a whole. */
function sizeText(told: FactsContext, { conflict }: Argument): string {
  const { pedals, facts, size } = conflict;
  const [first] = pedals;
  if (size === 'open')
    return 'So these cannot all be powered. The search stopped before it had looked for a smaller reason.';
  const smallest = size === 'smallest' ? ', and no shorter reason exists' : '';
  if (pedals.length === 1 && first !== undefined) {
    const name = told.inventory.pedalName(first);
    if (facts.length === 0) return `So no plan can have power for ${name}.`;
    const conditions = facts.length === 1 ? 'this condition' : 'any one of these conditions';
    return `So ${name} cannot have power. Without ${conditions} it could${smallest}.`;
  }
  const rest = facts.length === 0 ? 'Without any one of these pedals' : 'Without any one of these pedals or conditions';
  return `So they do not go together. ${rest} the others would${smallest}.`;
}
