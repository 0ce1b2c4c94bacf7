import { decimalOfThousandths, factorText, millivolts, minorUnits } from '../domain/quantities.js';
import type { Pedal } from '../domain/pedal.js';
import type { Fact } from '../planning/explain/facts.js';
import type { Inventory } from './inventory.js';
import { safeText } from './safe-text.js';
import type { Board, Catalogue } from '../domain/board.js';
import { countText, listText, priceText, voltsText } from './words.js';

/** What facts are told of. */
export type Told = { readonly board: Board; readonly catalogue: Catalogue; readonly inventory: Inventory };

/** A fact as a sentence, about these pedals. */
export function factText(told: Told, fact: Fact, pedals: readonly Pedal[]): string {
  const { policy } = told.board;
  const names = (which: readonly Pedal[]): string => listText(which.map(({ id }) => told.inventory.pedalName(id)));
  switch (fact.kind) {
    case 'budget':
      return `The budget is ${priceText(minorUnits(policy.budget ?? 0), told.board)}.`;
    case 'bricks':
      return `No more than ${countText(policy.bricks ?? 0, 'supply', 'supplies')} may be in use.`;
    case 'sockets':
      return `There ${policy.sockets === 1 ? 'is' : 'are'} ${countText(policy.sockets ?? 0, 'mains socket')}, and every supply takes one.`;
    case 'headroom alone':
      return `A pedal alone on an output is planned with a reserve of × ${factorText(policy.headroom.alone)}.`;
    case 'headroom chained':
      return `Pedals that share an output are planned with a reserve of × ${factorText(policy.headroom.chained)}.`;
    case 'headroom supply':
      return `The total of a supply is planned with a reserve of × ${factorText(policy.headroom.supply)}.`;
    case 'guess': {
      const guessed = pedals.filter(({ figure }) => figure === 'guess');
      return `What ${names(guessed)} ${guessed.length === 1 ? 'draws' : 'draw'} is a guess, and counted × ${factorText(policy.guess)}.`;
    }
    case 'chains':
      return 'The board rules out chains: every pedal takes an output of its own.';
    case 'mains':
      return `The venue has ${voltsText(policy.mains ?? millivolts(0))} mains, and a supply has to state that it accepts them.`;
    case 'plug':
      return `Plugs have to fit: ${inletsText(pedals, names)}.`;
    case 'polarity':
      return `Plus and minus have to be the right way round: ${polaritiesText(pedals, names)}.`;
    case 'setting':
      return 'A bank that is switched together gives the same volts on all its outputs.';
    case 'ground': {
      const positive = pedals.filter(({ ground }) => ground === 'positive');
      return `${names(positive)} ${positive.length === 1 ? 'has' : 'have'} a positive ground and may share it with none of the others.`;
    }
    case 'startup': {
      const starting = pedals.filter(({ startup }) => startup !== null);
      const each = starting.map(
        ({ id, startup }) => `${told.inventory.pedalName(id)} takes ${decimalOfThousandths(startup ?? 0)} mA`,
      );
      return `At the moment of switching on ${listText(each)}.`;
    }
    case 'total':
      return 'What a supply states as its total holds for all its outputs together.';
    case 'alone': {
      const alone = pedals.filter((pedal) => pedal.alone);
      return `${names(alone)} ${alone.length === 1 ? 'asks' : 'ask'} for an output of ${alone.length === 1 ? 'its' : 'their'} own.`;
    }
    case 'stock':
      return stockText(told, fact);
  }
}

type Names = (pedals: readonly Pedal[]) => string;

function inletsText(pedals: readonly Pedal[], names: Names): string {
  const inlets = [...new Set(pedals.map(({ inlet }) => inlet))];
  const each = inlets.map((inlet) => {
    const having = pedals.filter((pedal) => pedal.inlet === inlet);
    return `${names(having)} ${having.length === 1 ? 'has' : 'have'} ${safeText(inlet)}`;
  });
  return listText(each);
}

function polaritiesText(pedals: readonly Pedal[], names: Names): string {
  const each = (['centre-negative', 'centre-positive'] as const).flatMap((polarity) => {
    const having = pedals.filter((pedal) => pedal.polarity === polarity);
    return having.length === 0 ? [] : [`${names(having)} ${having.length === 1 ? 'is' : 'are'} ${polarity}`];
  });
  return listText(each);
}

function stockText({ board, inventory }: Told, fact: Extract<Fact, { kind: 'stock' }>): string {
  const [name, thing, owned] =
    fact.of === 'supply'
      ? [inventory.supplyName(fact.id), inventory.supply(fact.id), board.owned.supplies.get(fact.id) ?? 0]
      : [inventory.partName(fact.id), inventory.part(fact.id), board.owned.parts.get(fact.id) ?? 0];
  return `Of ${name} there ${owned + (thing.stock ?? 0) === 1 ? 'is' : 'are'} no more than ${owned + (thing.stock ?? 0)}: ${owned} owned, ${thing.stock ?? 0} in stock.`;
}
