import type { Feed } from '../../domain/plan.js';
import { feedMillivolts } from '../../domain/plan.js';
import type { Changes, Move } from '../../planning/rewire/changes.js';
import { at, list, oneOf, orAbsent, orNull, record, word } from './codec.js';
import { inletOf } from './inlets-codec.js';
import { join, placeKeys } from './shared-codecs.js';
import { choice, count, id, money, numbered, numbers, pedals, polarities, rule, volts, yes } from './values.js';

type Step = Changes['steps'][number];
type StepOf<Kind extends Step['kind']> = Extract<Step, { readonly kind: Kind }>;
type ReasonOf<Kind extends Move['reason']['kind']> = Extract<Move['reason'], { readonly kind: Kind }>;

const pedal = id('The id of a pedal.');

const stand = (about: string) =>
  record<Feed>()(about, {
    ...placeKeys((feed: Feed) => feed),
    volts: at(volts('What the pedal gets.'), feedMillivolts),
  });

const reason = oneOf<Move['reason']>('Why the pedal moves.', {
  rule: record<ReasonOf<'rule'>>()('A hard rule.', {
    kind: word('rule', 'Put back where it is today, the pedal makes the plan break a rule.'),
    rule: at(rule('The hard rule that would be broken.'), ({ violation }) => violation.rule),
    pedals: at(pedals('Those that it concerns.'), ({ violation }) => violation.pedals),
    message: at(numbers, ({ violation }) => violation.message),
  }),
  taken: record<ReasonOf<'taken'>>()('Its place is taken.', {
    kind: word('taken', 'Other pedals take its place.'),
    by: pedals('These pedals.'),
  }),
  saves: record<ReasonOf<'saves'>>()('It is better off elsewhere.', {
    kind: word('saves', 'Put back, it asks for more money or supplies in use, or exposes more pedals.'),
    money: money('What the move saves.'),
    exposed: pedals('Those that the move keeps digital noise off.'),
    supplies: count('Supplies in use that the move spares, where they count as money.'),
  }),
  company: record<ReasonOf<'company'>>()('Another pedal needs it.', {
    kind: word('company', 'Without it another pedal would be alone on a chain lead, and could not be fed there.'),
    pedal,
  }),
  none: record<ReasonOf<'none'>>()('None is known.', {
    kind: word('none', 'No reason was shown.'),
  }),
});

export const moves = list(
  'Of `rewire`: the pedals that move.',
  record<Move>()('A pedal that is plugged in today and moves.', {
    pedal: at(pedal, ({ to }) => to.pedal),
    from: stand('Where it is today.'),
    to: stand('Where it goes.'),
    reason,
  }),
);

const mains = record<StepOf<'mains off'> | StepOf<'mains on'>>()('Units of supplies go off or on the mains.', {
  step: at(choice(['mains off', 'mains on'], 'Pull from the mains, or plug into them.'), ({ kind }) => kind),
  units: list(
    'The units of supplies.',
    record<StepOf<'mains off'>['units'][number]>()('One unit of a supply.', {
      supply: id('The id of the supply.'),
      unit: numbered('Which unit of this supply, from 1.'),
    }),
  ),
});

/** Whose plug it is: of a pedal, or of the inlet of a supply that is fed by another one. */
const fedPedal = <From>(get: (from: From) => Feed) =>
  at(orNull('The id of the pedal; null for the inlet of a supply.', pedal), (from: From) => {
    const feed = get(from);
    return feed.inletOf === undefined ? feed.pedal : null;
  });
const fedInlet = <From>(get: (from: From) => Feed) => at(orAbsent(inletOf), (from: From) => get(from).inletOf);

const fromOf = ({ from }: StepOf<'pull'>): Feed => from;
const feedOf = ({ feed }: StepOf<'measure'> | StepOf<'plug'>): Feed => feed;
const itself = (feed: Feed): Feed => feed;

/** Outputs, volts and leads as in the plan's feeds. */
export const steps = list(
  'Of `rewire`: what to do, in this order.',
  oneOf<Step>('One thing to do.', {
    'mains off': mains,
    'mains on': mains,
    pull: record<StepOf<'pull'>>()('A plug is pulled from where it is today.', {
      step: word('pull', 'Pull the plug and take off its leads.'),
      pedal: fedPedal(fromOf),
      ...placeKeys(fromOf),
      inlet: fedInlet(fromOf),
    }),
    'take out': record<StepOf<'take out'>>()('Batteries leave their pedal.', {
      step: word('take out', 'Take the batteries out of the pedal.'),
      pedal: at(pedal, ({ from }) => from.pedal),
    }),
    'set volts': record<StepOf<'set volts'>>()('A switch of volts is turned.', {
      step: word('set volts', 'Turn the switch of these outputs.'),
      ...placeKeys(({ place }: StepOf<'set volts'>) => place),
      volts: at(volts('What it is set to.'), ({ millivolts }) => millivolts),
      was: orNull('How it stands today, in volts; null if not known.', volts('Today.')),
    }),
    'set polarity': record<StepOf<'set polarity'>>()('A polarity switch is turned.', {
      step: word('set polarity', 'Turn the polarity switch of these outputs.'),
      ...placeKeys(({ place }: StepOf<'set polarity'>) => place),
      polarity: choice(polarities, 'How it must stand.'),
    }),
    lay: record<StepOf<'lay'>>()('The leads of one output are laid.', {
      step: word('lay', 'Lay leads, their plugs off the pedals.'),
      ...placeKeys(({ feeds: [first] }: StepOf<'lay'>) => first),
      join: at(join, ({ feeds: [first] }) => first.join),
      chain: at(
        orNull('The chain lead; null for a pedal alone.', id('The id of the chain lead.')),
        ({ feeds: [first] }) => first.chain,
      ),
      chained: yes('True when the chain lead is there already.'),
      tails: at(
        list(
          'The plugs that are laid.',
          record<Feed>()('One plug that is laid.', {
            pedal: fedPedal(itself),
            parts: at(list('Its adapters, in order.', id('The id of an adapter.')), ({ adapters }) => adapters),
            inlet: fedInlet(itself),
          }),
        ),
        ({ feeds }) => feeds,
      ),
    }),
    measure: record<StepOf<'measure'>>()('A plug is measured before its pedal goes on.', {
      step: word('measure', 'Hold a meter to the free plug.'),
      pedal: fedPedal(feedOf),
      volts: at(volts('What it must show with nothing on it.'), ({ reads }) => reads),
      polarity: at(
        orNull('What must be at the centre of the plug; null for AC.', choice(polarities, 'At the centre.')),
        ({ feed }) => feed.polarity,
      ),
      inlet: fedInlet(feedOf),
    }),
    plug: record<StepOf<'plug'>>()('A pedal is plugged.', {
      step: word('plug', 'Put the plug into its pedal.'),
      pedal: fedPedal(feedOf),
      inlet: fedInlet(feedOf),
    }),
    'put in': record<StepOf<'put in'>>()('Batteries go into their pedal.', {
      step: word('put in', 'Put the batteries into the pedal, the right way round.'),
      pedal: at(pedal, ({ feed }) => feed.pedal),
    }),
  }),
);
