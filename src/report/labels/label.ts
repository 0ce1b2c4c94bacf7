import type { Polarity } from '../../domain/pedal.js';
import { feedMillivolts, readFeeds } from '../../domain/plan.js';
import type { PlanHandout } from '../words/handout.js';
import type { Lead, UnitHookup } from '../words/hookup.js';
import { firstBankOf } from '../words/inventory.js';
import { readName } from '../words/read-name.js';
import type { Speech } from '../words/speech.js';
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
  /** What is at the other end, and what is in between. */
  readonly there: string;
};

/** A label for each end of each lead, in the order of hooking up: an end's label follows that of its other end. */
export const labelsOf = ({ speech, hookup }: PlanHandout): readonly Label[] =>
  hookup.flatMap((unit) => unit.leads.flatMap((lead) => leadLabels(speech, unit, lead)));

function leadLabels({ inventory }: Speech, { unit, name }: UnitHookup, { number, use, ends }: Lead): readonly Label[] {
  const [feed] = use.feeds;
  const { power } = firstBankOf(unit.supply, feed);
  const target =
    feed.chain === null
      ? `to ${inventory.pedalName(feed.pedal)}`
      : `to ${countText(ends.length, 'pedal')} by ${inventory.partName(feed.chain)}`;
  const atSupply = use.outputs.map((output, at): Label => {
    const other = use.outputs[1 - at];
    const joined = other === undefined ? '' : `, joined with output ${other}`;
    const volts = use.settings[at];
    return {
      mark: String(number),
      end: 'supply',
      here: `${name}, output ${output}`,
      volts: volts === undefined ? power : `${voltsText(volts)} ${power}`,
      polarity: null,
      there: `${target}${joined}`,
    };
  });
  const atPedals = ends.flatMap(({ mark, feed: tail }) => {
    const planned = `${voltsText(feedMillivolts(tail))} ${power}`;
    if (inventory.pedal(tail.pedal).kept === 'unread') {
      const here = inventory.pedalName(tail.pedal);
      const there = 'Plug nothing in before its label has been read.';
      return [{ mark, end: 'pedal', here, volts: `a place for ${planned}`, polarity: null, there } as const];
    }
    return readFeeds(tail).map((read): Label => {
      const through =
        tail.readings === undefined || read.adapters.length === 0
          ? ''
          : `, by ${listText(read.adapters.map(inventory.partName))}`;
      return {
        mark,
        end: 'pedal',
        here: readName(inventory, tail, read),
        volts: planned,
        polarity: read.polarity,
        there: `from ${name}, ${outputsText(use.outputs)}${through}`,
      };
    });
  });
  return [...atSupply, ...atPedals];
}
