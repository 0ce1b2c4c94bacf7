import type { Policy } from '../../domain/board.js';
import type { Part } from '../../domain/part.js';
import { decimalOfThousandths, factorText, minorUnits, type PedalId } from '../../domain/quantities.js';
import type { Supply } from '../../domain/supply.js';
import type { Change, FactorName, LastingName, WayOut } from '../../planning/explain/way-out.js';
import { connectorText } from './connector-words.js';
import { batterySetText, batteryTypeText } from './battery-words.js';
import { namesText } from './explain-argument.js';
import type { FactsContext } from './explain-facts.js';
import { boughtTexts } from './purchases.js';
import { countText, listText, priceText, voltsText } from './words.js';

/** What to change, in a sentence or two. */
export const changeText = (told: FactsContext, change: Change): string =>
  (changeTexts[change.kind] as (told: FactsContext, change: Change) => string)(told, change);

type OfKind<Kind extends Change['kind']> = Extract<Change, { readonly kind: Kind }>;

const changeTexts: { readonly [Kind in Change['kind']]: (told: FactsContext, change: OfKind<Kind>) => string } = {
  budget: ({ board }, { from, to }) =>
    `Raise the budget from ${priceText(from, board)} to ${priceText(to, board)}; no less will do.`,
  bricks: (_, { from, to }) => `${limitText('bricks', from, to)}; no fewer will do.`,
  sockets: (_, { from, to }) => `${limitText('sockets', from, to)}; no fewer will do.`,
  limits: (told, change) => `${limitsText(told, change)}. No limit by itself is to blame.`,
  factor: (_, { factor, from, to }) =>
    `${factorTexts[factor]} from × ${factorText(from)} to × ${factorText(to)}, the most with which there is a plan.${factorCautions[factor]}`,
  hours: (_, { of, from, to }) =>
    `${lastingTexts[of]} ${factorText(to)} h instead of ${factorText(from)} h, the most with which there is a plan. ${lastingCautions[of]}`,
  chains: () => 'Allow chains.',
  stock: ({ inventory }, change) => {
    const name = change.of === 'supply' ? inventory.supplyName(change.id) : inventory.partName(change.id);
    return `Get ${change.units} × ${name} more than there is in stock; no fewer will do.`;
  },
  unowned: ({ inventory }, { parts }) => {
    const names = listText(parts.map(({ id, units }) => `${units} × ${inventory.partName(id)}`));
    return `Add ${names} to what you own, if you have ${isOne(parts) ? 'it: it is' : 'them: they are'} plugged today.`;
  },
  lead: (_, { lead }) => `Find ${leadText(lead)}.`,
  supply: ({ inventory }, { pedal, supply }) =>
    `Find one more supply for ${inventory.pedalName(pedal)}: ${outputText(supply)}.`,
  inlet: ({ inventory }, { of, supply }) =>
    `Find one more supply for the inlet of ${inventory.supplyName(of)}: ${outputText(supply)}.`,
  battery: ({ board, inventory }, change) =>
    `Find batteries for ${inventory.pedalName(change.pedal)}: ${batteryText(change)}, which ${lastingText(board.policy)}.`,
  pedal: (told, { pedals }) => `Leave out ${eitherText(told, pedals)}.`,
  pedals: (told, { pedals }) => `Leave out ${namesText(told, pedals)}; no fewer than ${pedals.length} will do.`,
};

/** What the plan that a way out allows costs, and what it buys. */
export function planText(told: FactsContext, { change, wiring, cheapest }: WayOut): string {
  const { buy, score } = wiring;
  const bought = boughtTexts(told, buy);
  const beside = isSought(change) ? ' besides' : '';
  if (bought.length === 0) return `Then there is a plan that buys nothing${beside}.`;
  const least = cheapest === true ? 'the cheapest plan' : 'a plan';
  return `Then ${least} buys ${listText(bought)}${beside}, for ${priceText(score.money, told.board)}.`;
}

/** Whether a thing has to be found that nobody sells, so that the plan does not buy it. */
const isSought = ({ kind }: Change): boolean => ['lead', 'supply', 'inlet', 'battery'].includes(kind);

const isOne = ([first, ...others]: OfKind<'unowned'>['parts']): boolean => first?.units === 1 && others.length === 0;

const limitText = (limit: 'bricks' | 'sockets', from: number, to: number): string =>
  limit === 'bricks'
    ? `Allow ${countText(to, 'supply', 'supplies')} in use instead of ${from}`
    : `Have ${countText(to, 'mains socket')} at hand instead of ${from}`;

function limitsText({ board }: FactsContext, { budget, bricks, sockets }: OfKind<'limits'>): string {
  const texts = [
    ...(budget === null
      ? []
      : [`Raise the budget from ${priceText(minorUnits(budget.from), board)} to ${priceText(budget.to, board)}`]),
    ...(bricks === null ? [] : [limitText('bricks', bricks.from, bricks.to)]),
    ...(sockets === null ? [] : [limitText('sockets', sockets.from, sockets.to)]),
  ];
  return listText(texts.map((text, at) => (at === 0 ? text : text.slice(0, 1).toLowerCase() + text.slice(1))));
}

const factorTexts: Readonly<Record<FactorName, string>> = {
  alone: 'Lower the reserve for a pedal alone on an output',
  chained: 'Lower the reserve for pedals that share an output',
  supply: 'Lower the reserve for the total of a supply',
  guess: 'Count guessed draws for less:',
};

const factorCautions: Readonly<Record<FactorName, string>> = {
  alone: ' Less reserve runs hotter and forgives less.',
  chained: ' Less reserve runs hotter and forgives less.',
  supply: ' Less reserve runs hotter and forgives less.',
  guess: ' Better still, read the labels: a figure that is known is not multiplied.',
};

const lastingTexts: Readonly<Record<LastingName, string>> = {
  bank: 'Let power banks last',
  battery: 'Let a set of batteries last',
};

const lastingCautions: Readonly<Record<LastingName, string>> = {
  bank: 'The hours are an estimate, from the watt-hours and what is known of the draws.',
  battery: 'The hours are an estimate, from the milliamp-hours and what is known of the draws.',
};

/** "one more lead that fits 2.1 mm barrel, swaps plus and minus and gives 3.5 mm jack". */
function leadText({ role, fits, gives, reverses }: Part): string {
  const way = `fits ${connectorText(fits)}${reverses ? ', swaps plus and minus' : ''} and gives ${connectorText(gives)}`;
  switch (role.kind) {
    case 'adapter':
      return `one more lead that ${way}`;
    case 'chain':
      return `one more chain lead with ${role.tails} tails that ${way}`;
    case 'join':
      return `one more lead for two outputs in ${role.mode} that ${way}`;
    case 'battery':
      return `one more ${batteryTypeText(role.type, 1)}`;
  }
}

/** "6 × AA batteries of 1.5 V with 800 mAh or more". */
export const batteryText = ({ battery: { role }, count }: OfKind<'battery'>): string =>
  `${batterySetText(role.type, count)} of ${voltsText(role.millivolts)} with ${decimalOfThousandths(role.microampHours)} mAh or more`;

/** For how long a set lasts that is sought. */
export const lastingText = ({ batteries }: Policy): string =>
  `last ${batteries === null ? '' : factorText(batteries.change)} h by what is known of the draw`;

/**
 * "an isolated output of 9 V DC with 20 mA or more, centre-negative, plug 2.1 mm barrel"; of a power bank also what it has to hold.
 */
export function outputText({ banks, source }: Supply): string {
  const [bank] = banks;
  const [setting] = bank?.settings ?? [];
  if (bank === undefined || setting === undefined) return 'with an output of its own';
  const charge =
    source.kind === 'charge' ? `, of a power bank of ${decimalOfThousandths(source.milliwattHours)} Wh or more` : '';
  const polarity = bank.polarity === null ? '' : `, ${bank.polarity}`;
  return `an isolated output of ${voltsText(setting.millivolts)} ${bank.power} with ${decimalOfThousandths(setting.rating)} mA or more${polarity}, plug ${connectorText(bank.plug)}${charge}`;
}

function eitherText(told: FactsContext, pedals: readonly PedalId[]): string {
  if (pedals.length === 1) return namesText(told, pedals);
  return `one of ${namesText(told, pedals)}`;
}
