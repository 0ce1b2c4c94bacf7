import { leadsOf, readFeeds, type Feed, type ReadFeed } from '../../domain/plan.js';
import type { PartId } from '../../domain/quantities.js';
import { connectorText } from './connector-words.js';
import type { Speech } from './speech.js';
import { isFedByOwn } from './inventory.js';
import { switchPosition } from './usage.js';
import { polarityWord } from './words.js';

/** The way from the supply to a pedal alone on its output: "own lead → Reversing lead, centre-positive (plus on the pin)". */
export function soloRoute(speech: Speech, feed: Feed): string {
  if (isFedByOwn(speech.inventory, feed)) return goesIn(speech, feed);
  const joined = feed.join === null ? [] : [feed.join.part];
  const start = stepsText(speech, startText(feed), joined);
  return toPlug(speech, start, feed) + switchText(speech, feed);
}

/** How what belongs to a pedal gets there. */
const goesIn = ({ inventory }: Speech, { supply }: Feed): string =>
  inventory.supply(supply).source.kind === 'battery' ? 'goes in the right way round' : 'goes straight in';

/** The pedal's own tail and what its plug is, for either way in which the label may read where nobody has read it. */
const toPlug = (speech: Speech, start: string, feed: Feed): string =>
  readFeeds(feed)
    .map((read) => {
      const way = stepsText(speech, start, read.adapters);
      return feed.readings === undefined ? `${way}, ${plugText(speech, read)}` : onLabel(feed, read, way);
    })
    .join('; ');

const onLabel = ({ readings }: Feed, { polarity }: ReadFeed, way: string): string =>
  readings === undefined ? way : `labelled ${polarity ?? 'AC'}: ${way}`;

/** The way from the supply to a chain lead; null when the feed has none. */
export function chainRoute(speech: Speech, feed: Feed): string | null {
  if (feed.chain === null) return null;
  return stepsText(speech, startText(feed), [feed.chain]) + switchText(speech, feed);
}

/** The way from the chain lead to one of its pedals. */
export const tailRoute = (speech: Speech, feed: Feed): string => toPlug(speech, 'a tail', feed);

/** All leads from the supply to the pedal, without what the last plug is. */
export const wayText = (speech: Speech, feed: Feed): string =>
  isFedByOwn(speech.inventory, feed)
    ? speech.inventory.supply(feed.supply).source.kind === 'battery'
      ? 'put in the right way round'
      : 'own lead'
    : readFeeds(feed)
        .map((read) => onLabel(feed, read, stepsText(speech, startText(feed), leadsOf(read))))
        .join('; ');

/** The leads from the supply to a chain lead, with it. */
export const trunkText = (speech: Speech, feed: Feed): string =>
  stepsText(speech, startText(feed), leadsOf({ ...feed, adapters: [] }));

/** The leads from a chain lead to its pedal, without what the last plug is. */
export const tailWay = (speech: Speech, feed: Feed): string =>
  readFeeds(feed)
    .map((read) => onLabel(feed, read, stepsText(speech, 'a tail', read.adapters)))
    .join('; ');

/** What a feed begins with: its supply's straight lead, or both of a join. */
export const startText = ({ outputs }: Feed): string => (outputs.length > 1 ? 'both own leads' : 'own lead');

/** Leads in their order: "own lead → Reversing lead". */
export const stepsText = ({ inventory, marks }: Speech, start: string, leads: readonly PartId[]): string =>
  [start, ...leads.map((id) => inventory.partName(id))].join(` ${marks.arrow} `);

/** What the last plug is; its shape is named where an adapter made it. */
function plugText({ inventory }: Speech, feed: ReadFeed): string {
  const shape = feed.adapters.length === 0 ? '' : `${connectorText(inventory.pedal(feed.pedal).inlet)} plug, `;
  if (feed.polarity === null) return `${shape}AC`;
  return `${shape}${feed.polarity === 'centre-positive' ? 'centre-positive (plus on the pin)' : feed.polarity}`;
}

function switchText({ inventory }: Speech, feed: Feed): string {
  const position = switchPosition(inventory, feed);
  return position === null ? '' : `; polarity switch on ${polarityWord(position)}`;
}
