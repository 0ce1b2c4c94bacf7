import { feedMillivolts, type Feed } from '../domain/plan.js';
import type { Changes } from '../planning/changes.js';
import { firstBankOf } from './inventory.js';
import { beside, widthOf, type Cell, type Piece } from './layout.js';
import { placeText } from './places.js';
import { startText, stepsText } from './route.js';
import { bullet, type Screen } from './screen.js';
import { voltsText } from './words.js';

export type Step = Changes['steps'][number];
export type StepOf<Kind extends Step['kind']> = Extract<Step, { kind: Kind }>;

/** "Skerry delay, from Jetty 6 output 6". */
export const pullPiece = (screen: Screen, feeds: readonly Feed[], { from }: StepOf<'pull'>): Piece =>
  bullet(screen, `${screen.inventory.pedalName(from.pedal)}, from ${whereText(screen, feeds, from)}`);

/** "Jetty 6 output 5 to 18 V (it stands at 9 V)". */
export function switchPiece(
  screen: Screen,
  feeds: readonly Feed[],
  step: StepOf<'set volts'> | StepOf<'set polarity'>,
): Piece {
  const where = whereText(screen, feeds, step.place);
  if (step.kind === 'set polarity') return bullet(screen, `${where}, polarity: to ${step.polarity}`);
  const was = step.was === null ? '' : ` (it stands at ${voltsText(step.was)})`;
  const shared = step.place.outputs.length > 1 ? ', by their one switch:' : '';
  return bullet(screen, `${where}${shared} to ${voltsText(step.millivolts)}${was}`);
}

const whereText = ({ inventory, marks }: Screen, feeds: readonly Feed[], place: StepOf<'set volts'>['place']): string =>
  placeText(inventory, feeds, place, marks.dash);

/** One line for the lead to one pedal; for a chain one for its lead and one for each tail. */
export function layPieces(screen: Screen, feeds: readonly Feed[], step: StepOf<'lay'>): readonly Piece[] {
  const { inventory } = screen;
  const [first] = step.feeds;
  const where = whereText(screen, feeds, first);
  if (first.chain === null) {
    const joined = first.join === null ? [] : [first.join.part];
    const way = stepsText(screen, startText(first), [...joined, ...first.adapters]);
    return [bullet(screen, `${where}: ${way}, for ${inventory.pedalName(first.pedal)}`)];
  }
  const head = step.chained
    ? `${inventory.partName(first.chain)}, which is there already`
    : stepsText(screen, startText(first), [first.chain]);
  const tails = step.feeds.map(({ pedal, adapters }) => ({
    text: `${stepsText(screen, 'a tail', adapters)}, for ${inventory.pedalName(pedal)}`,
    indent: 2,
    hang: 2,
  }));
  return [bullet(screen, `${where}: ${head}`), ...tails];
}

const gap = 2;
/** No column of what to read is wider, whatever the screen. */
const mostMeter = 24;

/** What a meter must show at each plug. */
export function measureLines(screen: Screen, steps: readonly StepOf<'measure'>[], width: number): string[] {
  const { inventory, paints } = screen;
  const rows = steps.map((step) => [
    inventory.pedalName(step.feed.pedal),
    readingText(screen, step),
    polesText(screen, step.feed),
  ]);
  const heads = ['Plug for', 'Meter', 'Plus and minus'];
  const widest = (at: number): number => Math.max(...[heads, ...rows].map((row) => widthOf(row[at] ?? '')));
  const meter = Math.min(mostMeter, widest(1));
  const poles = widest(2);
  const widths = [Math.min(widest(0), width - meter - poles - 2 * gap), meter, poles];
  return [heads, ...rows].flatMap((row, index) => {
    const piece = (text: string): Piece => (index === 0 ? { text, paint: paints.faint } : { text });
    return beside(
      row.map((text, at): Cell => ({ pieces: [piece(text)], width: widths[at] ?? width })),
      0,
      gap,
    );
  });
}

/** "9 V DC"; of what is unregulated the volts with nothing on it, which is what a meter sees. */
function readingText({ inventory }: Screen, { feed, reads }: StepOf<'measure'>): string {
  const { power } = firstBankOf(inventory.supply(feed.supply), feed);
  const loaded = reads === feedMillivolts(feed) ? '' : ` (${voltsText(feedMillivolts(feed))} in use)`;
  return `${voltsText(reads)} ${power}${loaded}`;
}

/** Where plus and minus must be on the plug; a jack plug has a tip where others have a pin. */
function polesText({ inventory }: Screen, { pedal, polarity }: Feed): string {
  const centre = /jack/i.test(inventory.pedal(pedal).inlet) ? 'tip' : 'pin';
  if (polarity === null) return 'none: set the meter to AC';
  const [inside, outside] = polarity === 'centre-negative' ? ['minus', 'plus'] : ['plus', 'minus'];
  return `${inside} on the ${centre}, ${outside} on the sleeve`;
}
