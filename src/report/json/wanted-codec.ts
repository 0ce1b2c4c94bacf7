import * as z from 'zod/mini';

import { unitOfInlet } from '../../domain/inlet.js';
import type { Part } from '../../domain/part.js';
import type { Feed } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { WantedOutputs } from '../../planning/wanted/found-outputs.js';
import type { Wanted, WantedBatteries, WantedLead } from '../../planning/wanted/wanted.js';
import { described } from '../../reading/schema/described.js';
import { planCautions } from '../words/cautions.js';
import { confirmEntries } from '../words/confirm.js';
import { countOutputs, totalRating } from '../words/wanted.js';
import { as, at, list, orNull, record, through } from './codec.js';
import { confirmed } from './confirm-codec.js';
import { inletOf, inlets } from './inlets-codec.js';
import { printed } from './printed.js';
import { unowned } from './reason-codec.js';
import { adapterIds, boardName, cautions, feeds, format, readings } from './shared-codecs.js';
import { choice, count, id, numbered, pedals, text, thousandths, volts, yes } from './values.js';

const always = (about: string) => as(described(z.literal(true), about));

/** Of what hangs somewhere the units whose inlets do. */
const inletUnits = (about: string) =>
  through(list(about, inletOf), (ids: readonly PedalId[]) => ids.flatMap((id) => unitOfInlet(id) ?? []));

const outputs = record<WantedOutputs>()('Outputs that are alike.', {
  outputs: at(numbered('How many of them.'), (from) => from.pedals.length),
  power: choice(['AC', 'DC'], 'The kind of power.'),
  volts: at(volts('What it gives.'), ({ millivolts }) => millivolts),
  milliamps: at(thousandths('The least milliamps that each must be rated for.'), ({ rating }) => rating),
  isolated: at(always('Its ground is its own.'), () => true as const),
  regulated: at(always('It holds its volts whatever hangs on it.'), () => true as const),
  polarity: orNull(
    'Null for AC.',
    choice(['centre-negative', 'centre-positive'], 'What it gives at the centre of its plug.'),
  ),
  plug: text('The plug of its own lead.'),
  pedals: pedals('The ids of the pedals, one for each output.'),
  inlets: at(inletUnits('The supplies whose inlets hang on such outputs, one on each.'), (from) => from.pedals),
});

const joinOf = ({ role }: Part) => (role.kind === 'join' ? role.mode : null);

const lead = record<WantedLead>()('Leads that are alike.', {
  id: at(id('What parts of feeds and routes call it; the file has no such part.'), (from) => from.lead.id),
  units: numbered('How many of them.'),
  fits: at(text('The plug that goes into it.'), (from) => from.lead.fits),
  gives: at(text('The plug that it offers.'), (from) => from.lead.gives),
  reverses: at(yes('Whether it swaps plus and minus.'), (from) => from.lead.reverses),
  joins: at(orNull('Null for an adapter.', choice(['series', 'parallel'], 'How it joins two outputs.')), (from) =>
    joinOf(from.lead),
  ),
  pedals: pedals('The ids of the pedals that it goes to.'),
  inlets: at(inletUnits('The supplies to whose inlets it goes.'), (from) => from.pedals),
});

const batteries = record<WantedBatteries>()('Batteries for one pedal.', {
  id: at(id('What feeds call it; the file has no such battery.'), ({ battery }) => battery.id),
  units: numbered('How many of them are paid for.'),
  count: numbered('How many of them go in.'),
  type: at(text('The type of battery.'), ({ battery }) => battery.role.type),
  volts: at(volts('What a single one gives.'), ({ battery }) => battery.role.millivolts),
  milliampHours: at(thousandths('The least that each must hold.'), ({ battery }) => battery.role.microampHours),
  pedal: id('The id of the pedal.'),
});

const route = record<Feed>()("The leads of a pedal behind its output's own.", {
  pedal: id('The id of the pedal.'),
  parts: at(adapterIds, ({ adapters }) => adapters),
  readings,
});

/** What is plugged, and what hangs on the outputs to look for. */
const fedBy = ({ installed, inlets: hung }: Wanted) => ({ feeds: installed.feeds, inlets: hung });

/** Keys and their order are a promise to programs that read it: new keys come after those that are there. */
export const wantedCodec = record<Wanted>()(
  'What to look for where nothing is for sale and what is owned is not enough.',
  {
    format: format('boardfeed/wanted/1'),
    board: boardName(),
    status: at(
      choice(
        ['proven', 'best found'],
        'Proven: no fewer outputs do, no as many with fewer milliamps in all, and none of those with fewer leads.',
      ),
      ({ isProven }) => (isProven ? ('proven' as const) : ('best found' as const)),
    ),
    count: at(count('How many outputs to look for, each for one pedal.'), countOutputs),
    milliamps: at(thousandths('Their milliamps in all.'), totalRating),
    outputs: list('The outputs to look for.', outputs),
    leads: list('The leads to look for.', lead),
    routes: at(
      list("How pedals on those outputs are plugged, where that takes more than the output's own lead.", route),
      ({ ledThere }) => ledThere,
    ),
    total: at(
      thousandths('The milliamps that one supply with all those outputs must give in all.'),
      ({ together }) => together,
    ),
    sockets: record<Wanted['sockets']>()('Mains sockets.', {
      owned: count('Those of owned supplies in use.'),
      least: count('In all, where one supply has all outputs to look for.'),
      most: count('In all, at the most.'),
    }),
    feeds: at(feeds, fedBy),
    exposed: at(
      pedals('The ids of the high-gain pedals that share a ground with a digital one.'),
      ({ installed }) => installed.exposed,
    ),
    confirm: at(confirmed, ({ installed }, { board, inventory }) => confirmEntries(board, inventory, installed.feeds)),
    cautions: cautions(({ installed }: Wanted, { inventory }) => planCautions(inventory, installed)),
    inlets: at(inlets, fedBy),
    wattHours: at(
      orNull(
        'What power banks with those outputs must hold in all, where no mains socket is left for them; null where they stand on mains.',
        thousandths('Watt-hours.'),
      ),
      ({ charge }) => charge,
    ),
    batteries: list(
      'The batteries to look for, where neither a mains socket nor a power bank is to be had.',
      batteries,
    ),
    unowned: orNull(
      'Leads that are plugged today, with which nothing is to be looked for; null where there are none.',
      unowned,
    ),
  },
);

/** What to look for as one JSON object with a line break at its end. */
export const wantedJson = (wanted: Wanted): string => printed(wantedCodec, wanted.kit, wanted);
