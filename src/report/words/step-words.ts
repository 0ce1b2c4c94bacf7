import type { Feed } from '../../domain/plan.js';
import { batteriesOf, unitName } from './inventory.js';
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
type LaidLead = { readonly lead: string; readonly tails: readonly string[] };

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

/** How power is cut off or comes back. */
type PowerWords = {
  /** "Mains off", or "Power off" where a power bank is among them. */
  readonly title: string;
  /** "pull Quay 6 and Jetty 6, unit 2 from the mains, and switch Barge 20 off". */
  readonly text: string;
  /** The units by name. */
  readonly units: string;
};

export function powerWords(
  { inventory }: Speech,
  feeds: readonly Feed[],
  { kind, units }: StepOf<'mains off'> | StepOf<'mains on'>,
): PowerWords {
  const isBank = ({ supply }: StepOf<'mains on'>['units'][number]): boolean =>
    inventory.supply(supply).source.kind === 'charge';
  const named = (some: typeof units): string => listText(some.map((unit) => unitName(inventory, feeds, unit)));
  const [banks, others] = [units.filter(isBank), units.filter((unit) => !isBank(unit))];
  const isOff = kind === 'mains off';
  const oneByOne = others.length > 1 && !isOff ? ', one at a time' : '';
  const texts = [
    ...(others.length === 0
      ? []
      : [`${isOff ? `pull ${named(others)} from` : `plug ${named(others)} into`} the mains${oneByOne}`]),
    ...(banks.length === 0 ? [] : [`switch ${named(banks)} ${isOff ? 'off' : 'on'}`]),
  ];
  const title = `${banks.length === 0 ? 'Mains' : 'Power'} ${isOff ? 'off' : 'on'}`;
  return { title, text: texts.join(', and '), units: named(units) };
}

/** "1 × Nine-volt block out of Sedge wah". */
export const takenOut = ({ inventory }: Speech, { from }: StepOf<'take out'>): string => {
  const batteries = batteriesOf(inventory, from);
  const what = batteries === null ? '' : inventory.batteriesName(batteries);
  return `${what} out of ${inventory.pedalName(from.pedal)}`;
};

const whereText = ({ inventory, marks }: Speech, feeds: readonly Feed[], place: StepOf<'set volts'>['place']): string =>
  placeText(inventory, feeds, place, marks.dash);
