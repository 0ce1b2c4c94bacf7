import type { Polarity } from '../../domain/pedal.js';
import { feedMillivolts, readFeeds } from '../../domain/plan.js';
import type { PlanHandout } from '../words/handout.js';
import { feedHazards, leadHazards, type Hazard } from '../words/hazards.js';
import type { Lead, LeadEnd, UnitHookup } from '../words/hookup.js';
import { firstBankOf, isFedByOwn } from '../words/inventory.js';
import { readName } from '../words/read-name.js';
import { countText, listText, outputsText, voltsText } from '../words/words.js';

/** What is written on one end of a lead. */
export type Label = {
  /** The lead's number, the same at its other end, where a chain adds a letter. */
  readonly mark: string;
  readonly end: 'supply' | 'pedal';
  /** What this end goes into. */
  readonly here: string;
  /** "9 V DC". */
  readonly volts: string;
  /** What the plug offers; null at the supply, and for AC. */
  readonly polarity: Polarity | null;
  /** At the supply those of all that hangs on the lead. */
  readonly hazards: readonly Hazard[];
  /** What is at the other end, and what is in between. */
  readonly there: string;
};

/** A label for each end of each lead, in the order of hooking up: an end's label follows that of its other end. */
export const labelsOf = (plan: PlanHandout): readonly Label[] =>
  plan.hookup.flatMap((unit) =>
    unit.leads
      .filter(({ number }) => number > 0)
      .flatMap((lead) => [
        ...supplyLabels(plan, unit, lead),
        ...lead.ends.flatMap((end) => pedalLabels(plan, unit, end)),
      ]),
  );

function supplyLabels({ speech, wiring }: PlanHandout, { unit, name }: UnitHookup, lead: Lead): readonly Label[] {
  const { number, use, ends } = lead;
  const { inventory } = speech;
  const [feed] = use.feeds;
  const { power } = firstBankOf(unit.supply, feed);
  const isOwn = isFedByOwn(inventory, feed);
  const target =
    feed.chain === null
      ? `to ${inventory.pedalName(feed.pedal)}`
      : `to ${countText(ends.length, 'pedal')} by ${inventory.partName(feed.chain)}`;
  const hazards = leadHazards(speech, wiring, use.feeds);
  return use.outputs.map((output, at): Label => {
    const other = use.outputs[1 - at];
    const joined = other === undefined ? '' : `, joined with output ${other}`;
    const volts = use.settings[at];
    return {
      mark: String(number),
      end: 'supply',
      here: isOwn ? name : `${name}, output ${output}`,
      volts: isOwn ? 'for one pedal' : volts === undefined ? power : `${voltsText(volts)} ${power}`,
      polarity: null,
      hazards,
      there: `${target}${joined}`,
    };
  });
}

function pedalLabels(
  { speech, wiring }: PlanHandout,
  { unit, name }: UnitHookup,
  { mark, feed }: LeadEnd,
): readonly Label[] {
  const { inventory } = speech;
  if (isFedByOwn(inventory, feed)) {
    const hazards = feedHazards(speech, wiring, feed);
    const here = inventory.pedalName(feed.pedal);
    return [{ mark, end: 'pedal', here, volts: 'its own adapter', polarity: null, hazards, there: `from ${name}` }];
  }
  const planned = `${voltsText(feedMillivolts(feed))} ${firstBankOf(unit.supply, feed).power}`;
  if (inventory.pedal(feed.pedal).kept === 'unread') {
    return [
      {
        mark,
        end: 'pedal',
        here: inventory.pedalName(feed.pedal),
        volts: `a place for ${planned}`,
        polarity: null,
        hazards: feedHazards(speech, wiring, feed),
        there: 'Plug nothing in before its label has been read.',
      },
    ];
  }
  return readFeeds(feed).map((read): Label => {
    const through =
      feed.readings === undefined || read.adapters.length === 0
        ? ''
        : `, by ${listText(read.adapters.map(inventory.partName))}`;
    return {
      mark,
      end: 'pedal',
      here: readName(inventory, feed, read),
      volts: planned,
      polarity: read.polarity,
      hazards: feedHazards(speech, wiring, read),
      there: `from ${name}, ${outputsText(feed.outputs)}${through}`,
    };
  });
}
