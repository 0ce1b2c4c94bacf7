import { decimalOfThousandths, factorText, minorUnits } from '../../domain/quantities.js';
import type { Pedal } from '../../domain/pedal.js';
import type { Fact, FactName } from '../../planning/conflict/facts.js';
import { connectorText } from './connector-words.js';
import type { Inventory } from './inventory.js';
import type { Board } from '../../domain/board.js';
import type { Kit } from '../../domain/kit.js';
import { countText, listText, priceText, percentText, voltsText } from './words.js';

/** What facts are told of. */
export type FactsContext = { readonly kit: Kit; readonly board: Board; readonly inventory: Inventory };

/** A fact as a sentence, about these pedals. */
export function factText(told: FactsContext, fact: Fact, pedals: readonly Pedal[]): string {
  if (fact.kind === 'stock') return stockText(told, fact);
  const names: Names = (which) => listText(which.map(({ id }) => told.inventory.pedalName(id)));
  return sentences[fact.kind]({ ...told, pedals, names });
}

type Names = (pedals: readonly Pedal[]) => string;
type About = FactsContext & { readonly pedals: readonly Pedal[]; readonly names: Names };

const sentences: Readonly<Record<FactName, (about: About) => string>> = {
  budget: ({ board }) => `The budget is ${priceText(minorUnits(board.policy.budget ?? 0), board)}.`,
  bricks: ({ board }) => `No more than ${countText(board.policy.bricks ?? 0, 'supply', 'supplies')} may be in use.`,
  sockets: ({ board: { policy } }) => `${socketsText(policy.sockets ?? 0)}, and every supply on the mains takes one.`,
  'headroom alone': ({ board }) =>
    `A pedal alone on an output is planned with a reserve of × ${factorText(board.policy.headroom.alone)}.`,
  'headroom chained': ({ board }) =>
    `Pedals that share an output are planned with a reserve of × ${factorText(board.policy.headroom.chained)}.`,
  'headroom supply': ({ board }) =>
    `The total of a supply is planned with a reserve of × ${factorText(board.policy.headroom.supply)}.`,
  guess: ({ board, pedals, names }) => {
    const guessed = pedals.filter(({ figure }) => figure === 'guess');
    return `What ${names(guessed)} ${guessed.length === 1 ? 'draws' : 'draw'} is a guess, and counted × ${factorText(board.policy.guess)}.`;
  },
  chains: () => 'The board rules out chains: every pedal takes an output of its own.',
  mains: ({ board: { policy } }) =>
    policy.mains.length === 1
      ? `The venue has ${listText(policy.mains.map(voltsText))} mains, and a supply has to state that it accepts them.`
      : `The venues have ${listText(policy.mains.map(voltsText))} mains, and a supply has to state that it accepts each of them.`,
  plug: ({ pedals, names }) => `Plugs have to fit: ${inletsText(pedals, names)}.`,
  polarity: ({ kit, pedals, names, inventory }) => {
    const reversing = [...kit.parts.values()].filter(({ role, reverses }) => reverses && role.kind !== 'adapter');
    const swapped =
      reversing.length === 0
        ? ''
        : `; ${listText(reversing.map(({ id }) => inventory.partName(id)))} ${reversing.length === 1 ? 'turns' : 'turn'} them round`;
    return `Plus and minus have to be the right way round: ${polaritiesText(pedals, names)}${swapped}.`;
  },
  runtime: ({ board: { policy } }) =>
    `Power banks have to last ${policy.runtime === null ? 0 : factorText(policy.runtime.hours)} h by ${policy.runtime === null ? '' : percentText(policy.runtime.usable)} of their watt-hours.`,
  battery: ({ board: { policy } }) =>
    `A set of batteries has to last ${policy.batteries === null ? 0 : factorText(policy.batteries.change)} h.`,
  setting: () => 'A bank that is switched together gives the same volts on all its outputs.',
  ground: ({ pedals, names }) => {
    const positive = pedals.filter((pedal) => pedal.ground === 'positive');
    const unknown = pedals.filter((pedal) => pedal.ground === 'unknown');
    return [
      ...(positive.length === 0
        ? []
        : [
            `${names(positive)} ${positive.length === 1 ? 'has' : 'have'} a positive ground and may share it with none of the others.`,
          ]),
      ...(unknown.length === 0
        ? []
        : [`Nobody knows the ground of ${names(unknown)}, which may be shared with no other pedal.`]),
    ].join(' ');
  },
  startup: ({ pedals, inventory }) => {
    const starting = pedals.filter(({ startup }) => startup !== null);
    const each = starting.map(
      ({ id, startup }) => `${inventory.pedalName(id)} takes ${decimalOfThousandths(startup ?? 0)} mA`,
    );
    return `All are switched on at once, and then ${listText(each)}.`;
  },
  total: () => 'What a supply states as its total holds for all its outputs together.',
  alone: ({ pedals, names }) => {
    const alone = pedals.filter((pedal) => pedal.alone);
    return `${names(alone)} ${alone.length === 1 ? 'asks' : 'ask'} for an output of ${alone.length === 1 ? 'its' : 'their'} own.`;
  },
};

function socketsText(sockets: number): string {
  if (sockets === 0) return 'There is no mains socket';
  return `There ${sockets === 1 ? 'is' : 'are'} ${countText(sockets, 'mains socket')}`;
}

function inletsText(pedals: readonly Pedal[], names: Names): string {
  const inlets = [...new Set(pedals.map(({ inlet }) => inlet))];
  const each = inlets.map((inlet) => {
    const having = pedals.filter((pedal) => pedal.inlet === inlet);
    return `${names(having)} ${having.length === 1 ? 'has' : 'have'} ${connectorText(inlet)}`;
  });
  return listText(each);
}

function polaritiesText(pedals: readonly Pedal[], names: Names): string {
  const each = (['centre-negative', 'centre-positive'] as const).flatMap((polarity) => {
    const having = pedals.filter((pedal) => pedal.polarity === polarity);
    return having.length === 0 ? [] : [`${names(having)} ${having.length === 1 ? 'is' : 'are'} ${polarity}`];
  });
  const unknown = pedals.filter((pedal) => pedal.polarity === 'unknown');
  return listText([...each, ...(unknown.length === 0 ? [] : [`${names(unknown)} may be either`])]);
}

function stockText({ board, inventory }: FactsContext, fact: Extract<Fact, { kind: 'stock' }>): string {
  const [name, thing, owned] =
    fact.of === 'supply'
      ? [inventory.supplyName(fact.id), inventory.supply(fact.id), board.owned.supplies.get(fact.id) ?? 0]
      : [inventory.partName(fact.id), inventory.part(fact.id), board.owned.parts.get(fact.id) ?? 0];
  return `Of ${name} there ${owned + (thing.stock ?? 0) === 1 ? 'is' : 'are'} no more than ${owned + (thing.stock ?? 0)}: ${owned} owned, ${thing.stock ?? 0} in stock.`;
}
