import type { Part } from '../../domain/part.js';
import { decimalOfThousandths, factorText, minorUnits, type PedalId } from '../../domain/quantities.js';
import type { Supply } from '../../domain/supply.js';
import type { Change, FactorName, WayOut } from '../../planning/explain/way-out.js';
import { namesText } from './explain-argument.js';
import type { FactsContext } from './explain-facts.js';
import { safeText } from './safe-text.js';
import { countText, listText, priceText, voltsText } from './words.js';

/** What to change, in a sentence or two. */
export function changeText(told: FactsContext, change: Change): string {
  const { board, inventory } = told;
  switch (change.kind) {
    case 'budget':
      return `Raise the budget from ${priceText(change.from, board)} to ${priceText(change.to, board)}; no less will do.`;
    case 'bricks':
    case 'sockets':
      return `${limitText(change.kind, change.from, change.to)}; no fewer will do.`;
    case 'limits':
      return `${limitsText(told, change)}. No limit by itself is to blame.`;
    case 'factor':
      return `${factorTexts[change.factor]} from × ${factorText(change.from)} to × ${factorText(change.to)}, the most with which there is a plan.${factorCautions[change.factor]}`;
    case 'chains':
      return 'Allow chains.';
    case 'stock': {
      const name = change.of === 'supply' ? inventory.supplyName(change.id) : inventory.partName(change.id);
      return `Get ${change.units} × ${name} more than there is in stock; no fewer will do.`;
    }
    case 'lead':
      return `Find ${leadText(change.lead)}.`;
    case 'supply':
      return `Find one more supply for ${inventory.pedalName(change.pedal)}: ${outputText(change.supply)}.`;
    case 'pedal':
      return `Leave out ${eitherText(told, change.pedals)}.`;
    case 'pedals':
      return `Leave out ${namesText(told, change.pedals)}; no fewer than ${change.pedals.length} will do.`;
  }
}

/** What the plan that a way out allows costs, and what it buys. */
export function planText(told: FactsContext, { change, wiring, cheapest }: WayOut): string {
  const { board, inventory } = told;
  const { buy, score } = wiring;
  const bought = [
    ...buy.supplies.map(({ id, units }) => `${units} × ${inventory.supplyName(id)}`),
    ...buy.parts.map(({ id, units }) => `${units} × ${inventory.partName(id)}`),
  ];
  const beside = change.kind === 'lead' || change.kind === 'supply' ? ' besides' : '';
  if (bought.length === 0) return `Then there is a plan that buys nothing${beside}.`;
  const least = cheapest === true ? 'the cheapest plan' : 'a plan';
  return `Then ${least} buys ${listText(bought)}${beside}, for ${priceText(score.money, board)}.`;
}

const limitText = (limit: 'bricks' | 'sockets', from: number, to: number): string =>
  limit === 'bricks'
    ? `Allow ${countText(to, 'supply', 'supplies')} in use instead of ${from}`
    : `Have ${countText(to, 'mains socket')} at hand instead of ${from}`;

function limitsText({ board }: FactsContext, { budget, bricks, sockets }: Extract<Change, { kind: 'limits' }>): string {
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

/** "a lead from barrel-2.1 to jack-3.5 that swaps plus and minus". */
function leadText({ role, fits, gives, reverses }: Part): string {
  const way = `fits ${safeText(fits)}${reverses ? ', swaps plus and minus' : ''} and gives ${safeText(gives)}`;
  switch (role.kind) {
    case 'adapter':
      return `one more lead that ${way}`;
    case 'chain':
      return `one more chain lead with ${role.tails} tails that ${way}`;
    case 'join':
      return `one more lead for two outputs in ${role.mode} that ${way}`;
    case 'battery':
      return `one more battery of the type ${safeText(role.type)}`;
  }
}

/** "an isolated output of 9 V DC with 20 mA or more, centre-negative, plug barrel-2.1". */
export function outputText({ banks }: Supply): string {
  const [bank] = banks;
  const [setting] = bank?.settings ?? [];
  if (bank === undefined || setting === undefined) return 'with an output of its own';
  const polarity = bank.polarity === null ? '' : `, ${bank.polarity}`;
  return `an isolated output of ${voltsText(setting.millivolts)} ${bank.power} with ${decimalOfThousandths(setting.rating)} mA or more${polarity}, plug ${safeText(bank.plug)}`;
}

function eitherText(told: FactsContext, pedals: readonly PedalId[]): string {
  if (pedals.length === 1) return namesText(told, pedals);
  return `one of ${namesText(told, pedals)}`;
}
