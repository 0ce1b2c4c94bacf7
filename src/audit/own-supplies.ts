import type { Violation } from '../domain/violation.js';
import { leadsOf, type Feed } from '../domain/plan.js';
import { placeOf, type Layout, type Line } from './line.js';
import { offersPlug } from './sources.js';
import { placeOfLine, violation } from './violation.js';

/**
 * The adapter that a pedal came with is right for that pedal, whatever of it is not known, and for no other: what it gives is
 * stated nowhere (rule `voltage`). Its plug goes straight in (rule `plug`), with the polarity that the pedal has (rule
 * `polarity`).
 */
export const ownSupplyViolations = ({ lines }: Layout): readonly Violation[] =>
  lines.flatMap((line) =>
    offersPlug(line) ? elsewhere(line) : [...onAnothers(line), ...throughLeads(line), ...turned(line)],
  );

/** On an output, a pedal of which nobody has stated what it takes. */
function elsewhere(line: Line): readonly Violation[] {
  const { pedal } = line;
  if (pedal.adapter?.only !== true) return [];
  const message = `it is not stated what ${pedal.name} takes, so that it hangs on its own adapter alone; it is on ${placeOf(line)}`;
  return [violation('voltage', [pedal], message, { place: placeOfLine(line) })];
}

function onAnothers(line: Line): readonly Violation[] {
  const { pedal, supply } = line;
  // Whose a battery is, is the affair of its own rule.
  if (supply.source.kind === 'battery' || pedal.adapter?.supply === supply.id) return [];
  const message = `${pedal.name} hangs on ${supply.name}, which is for that pedal alone: what it gives is not stated`;
  return [violation('voltage', [pedal], message, { place: placeOfLine(line) })];
}

function throughLeads(line: Line): readonly Violation[] {
  const { feed, pedal, supply } = line;
  const leads = leadsOf(feed);
  if (leads.length === 0) return [];
  const message = `${supply.name} goes straight into ${pedal.name}; it hangs there through ${leads.join(', ')}`;
  return [violation('plug', [pedal], message, { place: placeOfLine(line) })];
}

/** What of it reaches the pedal is what the pedal takes, so that nothing else may be said of it. */
function turned(line: Line): readonly Violation[] {
  const { feed, pedal, supply } = line;
  if (feed.polarity === pedal.polarity || supply.source.kind !== 'adapter') return [];
  const message = `${pedal.name} is said to get ${polarityWord(feed)} from ${supply.name}; it gets ${polarityWord(pedal)}`;
  return [violation('polarity', [pedal], message, { place: placeOfLine(line) })];
}

const polarityWord = ({ polarity }: Pick<Feed, 'polarity'>): string =>
  polarity === 'unknown' ? 'either polarity' : (polarity ?? 'no polarity');
