import type { Feed } from '../../domain/plan.js';
import { unitName } from './inventory.js';
import { placeText } from './places.js';
import { startText, stepsText, tailWay, wayText } from './route.js';
import type { Speech } from './speech.js';
import type { StepOf } from './step-groups.js';
import { listText, polarityWord, voltsText } from './words.js';

/** "Skerry delay, from Jetty 6 output 6". */
export const pullText = (speech: Speech, feeds: readonly Feed[], { from }: StepOf<'pull'>): string =>
  `${speech.inventory.pedalName(from.pedal)}, from ${whereText(speech, feeds, from)}`;

/** "Jetty 6 output 5 to 18 V (it stands at 9 V)". */
export function switchText(
  speech: Speech,
  feeds: readonly Feed[],
  step: StepOf<'set volts'> | StepOf<'set polarity'>,
): string {
  const where = whereText(speech, feeds, step.place);
  if (step.kind === 'set polarity') return `${where}, polarity: to ${polarityWord(step.polarity)}`;
  const was = step.was === null ? '' : ` (it stands at ${voltsText(step.was)})`;
  const shared = step.place.outputs.length > 1 ? ', by their one switch:' : '';
  return `${where}${shared} to ${voltsText(step.millivolts)}${was}`;
}

/** The lead from an output, and for a chain each of its tails that are laid. */
export type LaidLead = { readonly lead: string; readonly tails: readonly string[] };

export function laidLead(speech: Speech, feeds: readonly Feed[], step: StepOf<'lay'>): LaidLead {
  const { inventory } = speech;
  const [first] = step.feeds;
  const where = whereText(speech, feeds, first);
  if (first.chain === null) {
    const way = wayText(speech, first);
    return { lead: `${where}: ${way}, for ${inventory.pedalName(first.pedal)}`, tails: [] };
  }
  const head = step.chained
    ? `${inventory.partName(first.chain)}, which is there already`
    : stepsText(speech, startText(first), [first.chain]);
  const tails = step.feeds.map((feed) => `${tailWay(speech, feed)}, for ${inventory.pedalName(feed.pedal)}`);
  return { lead: `${where}: ${head}`, tails };
}

/** "Quay 6 and Jetty 6, unit 2"; of a power bank that it has a switch instead of a socket. */
export const unitsText = (
  { inventory }: Speech,
  feeds: readonly Feed[],
  { units }: StepOf<'mains off'> | StepOf<'mains on'>,
): string =>
  listText(
    units.map((unit) => {
      const name = unitName(inventory, feeds, unit).replace(/,$/, '');
      return inventory.supply(unit.supply).source.kind === 'charge' ? `${name} (by its own switch)` : name;
    }),
  );

const whereText = ({ inventory, marks }: Speech, feeds: readonly Feed[], place: StepOf<'set volts'>['place']): string =>
  placeText(inventory, feeds, place, marks.dash);
