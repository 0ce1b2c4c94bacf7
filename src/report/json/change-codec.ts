import * as z from 'zod';

import { factorText, type Factor } from '../../domain/quantities.js';
import type { Bank, Setting, Supply } from '../../domain/supply.js';
import type { Part, PartRole } from '../../domain/part.js';
import type { Change, Raised, WayOut } from '../../planning/explain/way-out.js';
import { changeText } from '../words/explain-ways.js';
import { at, list, made, oneOf, orAbsent, orNull, record, word, type Codec } from './codec.js';
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
type WayOf<Which extends Kind> = WayOut & { readonly change: Change & { readonly kind: Which } };
type Told = { readonly [Which in Kind]: { readonly kind: Which; readonly way: WayOf<Which> } }[Kind];
type ToldOf<Which extends Kind> = Extract<Told, { readonly kind: Which }>;

/** The keys of every way out come after those of its own change. */
const common = <From extends { readonly way: WayOut }>() => ({
  message: at(sentence, ({ way }: From, told) => changeText(told, way.change)),
  cheapest: at(yes('True when no plan with this change costs less.'), ({ way }: From) => way.cheapest === true),
  plan: at(plan, ({ way }: From) => way.wiring),
});

const named = <Which extends Kind>(which: Which) => word(which, 'What would have to be otherwise.');

const raised = <Value>(about: string, value: (about: string) => Codec<Value>) =>
  record<Raised<Value>>()(about, {
    from: at(value('As it is.'), ({ from }) => from),
    to: at(value('As it would have to be.'), ({ to }) => to),
  });

type Counted = ToldOf<'bricks'> | ToldOf<'sockets'>;

const limit = (which: 'bricks' | 'sockets') =>
  record<Counted>()('A limit on a count.', {
    change: named(which),
    from: at(count('As it is.'), ({ way }) => way.change.from),
    to: at(count('As it would have to be.'), ({ way }) => way.change.to),
    ...common<Counted>(),
  });

type LeftOut = ToldOf<'pedal'> | ToldOf<'pedals'>;

const leftOut = (which: 'pedal' | 'pedals', about: string) =>
  record<LeftOut>()(about, {
    change: named(which),
    pedals: at(pedals(about), ({ way }) => way.change.pedals),
    ...common<LeftOut>(),
  });

const lead = record<Part>()('A lead that is sought.', {
  kind: at(choice(['adapter', 'chain', 'join', 'battery'], 'What it does.'), ({ role }) => role.kind),
  tails: at(orAbsent(numbered('Its tails.')), ({ role }: { readonly role: PartRole }) =>
    role.kind === 'chain' ? role.tails : undefined,
  ),
  mode: at(orAbsent(choice(['series', 'parallel'], 'How it joins.')), ({ role }: { readonly role: PartRole }) =>
    role.kind === 'join' ? role.mode : undefined,
  ),
  fits: at(text('The plug that goes into it.'), ({ fits }) => fits),
  gives: at(text('The plug that it offers.'), ({ gives }) => gives),
  reverses: at(yes('It swaps plus and minus.'), ({ reverses }) => reverses),
});

const output = record<Bank>()('An output that would do.', {
  power: at(choice(['AC', 'DC'], 'Its kind of power.'), ({ power }) => power),
  plug: at(text('Its plug.'), ({ plug }) => plug),
  polarity: at(orNull('Null for AC.', choice([...polarities, 'either'], 'Its polarity.')), ({ polarity }) => polarity),
  settings: at(
    list(
      'What it gives.',
      record<Setting>()('A setting.', {
        volts: at(volts('It gives.'), ({ millivolts }) => millivolts),
        milliamps: at(thousandths('The most milliamps that it gives.'), ({ rating }) => rating),
      }),
    ),
    ({ settings }) => settings,
  ),
});

type Sought = { readonly way: { readonly change: { readonly supply: Supply } } };

/** What has to be found. */
const sought = <From extends Sought>() => ({
  output: at(orAbsent(output), ({ way }: From) => way.change.supply.banks[0]),
  wattHours: at(
    orAbsent(thousandths('Of a power bank: what it has to hold at the least.')),
    ({
      way: {
        change: { supply },
      },
    }: From) => (supply.source.kind === 'charge' ? supply.source.milliwattHours : undefined),
  ),
});

const battery = record<ToldOf<'battery'>['way']['change']>()('A battery that would do.', {
  type: at(text('Its type.'), ({ battery: { role } }) => role.type),
  count: at(numbered('How many make a set.'), (from) => from.count),
  volts: at(volts('What each gives.'), ({ battery: { role } }) => role.millivolts),
  milliampHours: at(thousandths('The least milliamp-hours that do.'), ({ battery: { role } }) => role.microampHours),
});

const hours = (about: string) => made(z.number().gt(0).describe(about), (value: Factor) => Number(factorText(value)));

const change = oneOf<Told>('What would have to be otherwise, with a plan for that.', {
  budget: record<ToldOf<'budget'>>()('The budget.', {
    change: named('budget'),
    from: at(money('As it is.'), ({ way }) => way.change.from),
    to: at(money('As it would have to be.'), ({ way }) => way.change.to),
    ...common<ToldOf<'budget'>>(),
  }),
  bricks: limit('bricks'),
  sockets: limit('sockets'),
  limits: record<ToldOf<'limits'>>()('Several limits at once.', {
    change: named('limits'),
    budget: at(orNull('Null is as it is.', raised('The budget.', money)), ({ way }) => way.change.budget),
    bricks: at(orNull('Null is as it is.', raised('Supplies in use.', count)), ({ way }) => way.change.bricks),
    sockets: at(orNull('Null is as it is.', raised('Mains sockets.', count)), ({ way }) => way.change.sockets),
    ...common<ToldOf<'limits'>>(),
  }),
  factor: record<ToldOf<'factor'>>()('A factor of the policy.', {
    change: named('factor'),
    factor: at(choice(['alone', 'chained', 'supply', 'guess'], 'Which.'), ({ way }) => way.change.factor),
    from: at(factor('As it is.'), ({ way }) => way.change.from),
    to: at(factor('As it would have to be.'), ({ way }) => way.change.to),
    ...common<ToldOf<'factor'>>(),
  }),
  hours: record<ToldOf<'hours'>>()('How long something has to last.', {
    change: named('hours'),
    of: at(choice(['bank', 'battery'], 'Power banks, or a set of batteries.'), ({ way }) => way.change.of),
    from: at(hours('As it is.'), ({ way }) => way.change.from),
    to: at(hours('As it would have to be.'), ({ way }) => way.change.to),
    ...common<ToldOf<'hours'>>(),
  }),
  chains: record<ToldOf<'chains'>>()('Chains are allowed.', { change: named('chains'), ...common<ToldOf<'chains'>>() }),
  stock: record<ToldOf<'stock'>>()('More in stock.', {
    change: named('stock'),
    of: at(choice(['supply', 'part'], 'Of what.'), ({ way }) => way.change.of),
    id: at(id('Its id.'), ({ way }) => way.change.id),
    units: at(numbered('So many more.'), ({ way }) => way.change.units),
    ...common<ToldOf<'stock'>>(),
  }),
  lead: record<ToldOf<'lead'>>()('One more lead.', {
    change: named('lead'),
    lead: at(lead, ({ way }) => way.change.lead),
    ...common<ToldOf<'lead'>>(),
  }),
  supply: record<ToldOf<'supply'>>()('One more supply.', {
    change: named('supply'),
    pedal: at(id('The pedal that it is for.'), ({ way }) => way.change.pedal),
    ...sought<ToldOf<'supply'>>(),
    ...common<ToldOf<'supply'>>(),
  }),
  inlet: record<ToldOf<'inlet'>>()('One more supply, for the inlet of a fed one.', {
    change: named('inlet'),
    supply: at(id('The id of the supply whose inlet it is for.'), ({ way }) => way.change.of),
    ...sought<ToldOf<'inlet'>>(),
    ...common<ToldOf<'inlet'>>(),
  }),
  battery: record<ToldOf<'battery'>>()('Batteries that last as long as is asked.', {
    change: named('battery'),
    pedal: at(id('The pedal that they are for.'), ({ way }) => way.change.pedal),
    battery: at(battery, ({ way }) => way.change),
    ...common<ToldOf<'battery'>>(),
  }),
  pedal: leftOut('pedal', 'Any one of these pedals, which need the same, is left out.'),
  pedals: leftOut('pedals', 'The fewest pedals that have to be left out.'),
});

/** `change` names the kind; what else is there depends on it. */
export const way = at(change, (from: WayOut) => ({ kind: from.change.kind, way: from }) as Told);
