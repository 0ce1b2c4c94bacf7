import { feedMillivolts, type Feed } from '../../domain/plan.js';
import { firstBankOf } from '../words/inventory.js';
import { beside, gap, widthOf, type Cell, type Piece } from './layout.js';
import { bullet, type Screen } from './screen.js';
import type { StepOf } from '../words/step-groups.js';
import { laidLead } from '../words/step-words.js';
import { voltsText } from '../words/words.js';

/** One line for the lead to one pedal; for a chain one for its lead and one for each tail. */
export function layPieces(screen: Screen, feeds: readonly Feed[], step: StepOf<'lay'>): readonly Piece[] {
  const { lead, tails } = laidLead(screen, feeds, step);
  return [bullet(screen, lead), ...tails.map((text) => ({ text, indent: 2, hang: 2 }))];
}

/** No column of what to read is wider, whatever the screen. */
const mostMeter = 24;
/** What a pedal's name has on a narrow screen, where plus and minus take more lines. */
const leastPlug = 12;

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
  const room = width - meter - 2 * gap;
  const plug = Math.min(widest(0), Math.max(leastPlug, room - widest(2)));
  const widths = [plug, meter, Math.min(widest(2), room - plug)];
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
