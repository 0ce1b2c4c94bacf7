import * as z from 'zod/mini';

import { factorText, type Factor } from '../../domain/quantities.js';
import type { Bank, Setting, Supply } from '../../domain/supply.js';
import type { Part, PartRole } from '../../domain/part.js';
import type { Change, Raised, UnownedPart, WayOut } from '../../planning/explain/way-out.js';
import { described } from '../../reading/schema/described.js';
import { changeText } from '../words/explain-ways.js';
import {
  at,
  list,
  made,
  oneOf,
  orAbsent,
  orNull,
  record,
  through,
  word,
  type Codec,
  type Keys,
  type Shape,
} from './codec.js';
import {
  choice,
  count,
  factor,
  id,
  money,
  numbered,
  pedals,
  polarities,
  sentence,
  text,
  thousandths,
  volts,
  yes,
} from './values.js';
import { plan } from './wiring-codec.js';

type Kind = Change['kind'];
/** A change, with the way out that it is of. */
type Told = { readonly [Which in Kind]: ToldOf<Which> }[Kind];
type ToldOf<Which extends Kind> = Change & { readonly kind: Which } & Whole;
type Whole = { readonly way: WayOut };

/** The keys of every way out come after those of its own change. */
const common = {
  message: at(sentence, ({ way }: Whole, told) => changeText(told, way.change)),
  cheapest: at(yes('True when no plan with this change costs less.'), ({ way }: Whole) => way.cheapest === true),
  plan: at(plan, ({ way }: Whole) => way.wiring),
};

const raised = <Value>(about: string, value: (about: string) => Codec<Value>) =>
  record<Raised<Value>>()(about, { from: value('As it is.'), to: value('As it would have to be.') });

const told =
  <Which extends Kind>(which: Which) =>
  <Of extends Shape>(about: string, keys: Keys<ToldOf<Which>, Of>) =>
    record<ToldOf<Which>>()(about, { change: word(which, 'What would have to be otherwise.'), ...keys, ...common });

const limit = { from: count('As it is.'), to: count('As it would have to be.') };

const oneOfThese = 'Any one of these pedals, which need the same, is left out.';
const fewest = 'The fewest pedals that have to be left out.';

const lead = record<Part>()('A lead that is sought.', {
  kind: at(choice(['adapter', 'chain', 'join', 'battery'], 'What it does.'), ({ role }) => role.kind),
  tails: at(orAbsent(numbered('Its tails.')), ({ role }: { readonly role: PartRole }) =>
    role.kind === 'chain' ? role.tails : undefined,
  ),
  mode: at(orAbsent(choice(['series', 'parallel'], 'How it joins.')), ({ role }: { readonly role: PartRole }) =>
    role.kind === 'join' ? role.mode : undefined,
  ),
  fits: text('The plug that goes into it.'),
  gives: text('The plug that it offers.'),
  reverses: yes('It swaps plus and minus.'),
});

const output = record<Bank>()('An output that would do.', {
  power: choice(['AC', 'DC'], 'Its kind of power.'),
  plug: text('Its plug.'),
  polarity: orNull('Null for AC.', choice([...polarities, 'either'], 'Its polarity.')),
  settings: list(
    'What it gives.',
    record<Setting>()('A setting.', {
      volts: at(volts('It gives.'), ({ millivolts }) => millivolts),
      milliamps: at(thousandths('The most milliamps that it gives.'), ({ rating }) => rating),
    }),
  ),
});

type Sought = { readonly supply: Supply };

/** What has to be found. */
const sought = {
  output: at(orAbsent(output), ({ supply }: Sought) => supply.banks[0]),
  wattHours: at(
    orAbsent(thousandths('Of a power bank: what it has to hold at the least.')),
    ({ supply: { source } }: Sought) => (source.kind === 'charge' ? source.milliwattHours : undefined),
  ),
};

const battery = record<ToldOf<'battery'>>()('A battery that would do.', {
  type: at(text('Its type.'), ({ battery: { role } }) => role.type),
  count: numbered('How many make a set.'),
  volts: at(volts('What each gives.'), ({ battery: { role } }) => role.millivolts),
  milliampHours: at(thousandths('The least milliamp-hours that do.'), ({ battery: { role } }) => role.microampHours),
});

const hours = (about: string) =>
  made(described(z.number().check(z.gt(0)), about), (value: Factor) => Number(factorText(value)));

const change = oneOf<Told>('What would have to be otherwise, with a plan for that.', {
  budget: told('budget')('The budget.', { from: money('As it is.'), to: money('As it would have to be.') }),
  bricks: told('bricks')('A limit on a count.', limit),
  sockets: told('sockets')('A limit on a count.', limit),
  limits: told('limits')('Several limits at once.', {
    budget: orNull('Null is as it is.', raised('The budget.', money)),
    bricks: orNull('Null is as it is.', raised('Supplies in use.', count)),
    sockets: orNull('Null is as it is.', raised('Mains sockets.', count)),
  }),
  factor: told('factor')('A factor of the policy.', {
    factor: choice(['alone', 'chained', 'supply', 'guess'], 'Which.'),
    from: factor('As it is.'),
    to: factor('As it would have to be.'),
  }),
  hours: told('hours')('How long something has to last.', {
    of: choice(['bank', 'battery'], 'Power banks, or a set of batteries.'),
    from: hours('As it is.'),
    to: hours('As it would have to be.'),
  }),
  chains: told('chains')('Chains are allowed.', {}),
  stock: told('stock')('More in stock.', {
    of: choice(['supply', 'part'], 'Of what.'),
    id: id('Its id.'),
    units: numbered('So many more.'),
  }),
  unowned: told('unowned')('Leads that are plugged today are owned, which the board does not say.', {
    parts: list(
      'These leads.',
      record<UnownedPart>()('A lead.', { id: id('Its id.'), units: numbered('How many of it are plugged.') }),
    ),
  }),
  lead: told('lead')('One more lead.', { lead }),
  supply: told('supply')('One more supply.', { pedal: id('The pedal that it is for.'), ...sought }),
  inlet: told('inlet')('One more supply, for the inlet of a fed one.', {
    supply: at(id('The id of the supply whose inlet it is for.'), ({ of }: ToldOf<'inlet'>) => of),
    ...sought,
  }),
  battery: told('battery')('Batteries that last as long as is asked.', {
    pedal: id('The pedal that they are for.'),
    battery: at(battery, (from: ToldOf<'battery'>) => from),
  }),
  pedal: told('pedal')(oneOfThese, { pedals: pedals(oneOfThese) }),
  pedals: told('pedals')(fewest, { pedals: pedals(fewest) }),
});

/** `change` names the kind; what else is there depends on it. */
export const way = through(change, (from: WayOut) => ({ ...from.change, way: from }));
