import { groupBy } from '../../domain/group-by.js';
import type { AskedLabel, Decides } from '../../planning/ask/decisive-labels.js';
import { fieldWords } from './label-places.js';
import type { Speech } from './speech.js';
import { listText } from './words.js';

/** What a label weighs: what it decides, or that nothing is to be bought before it is read. */
export type Weight = 'first' | Decides;

export const weightOf = (label: AskedLabel): Weight => (label.isToReadFirst ? 'first' : label.decides);

/** Above the labels that are to be read before anything is bought. */
export const readFirstTitle = 'Read these first: with some readings there is no plan';

/** What stands beside what is bought: the labels that are to be read before; null where there are none. */
export function readFirstText({ inventory }: Speech, labels: readonly AskedLabel[]): string | null {
  const fields = groupBy(
    labels.filter(({ isToReadFirst }) => isToReadFirst),
    ({ field }) => field,
  ).map(
    (alike) => `${fieldWords[alike[0].field]} of ${listText(alike.map(({ pedal }) => inventory.pedalName(pedal.id)))}`,
  );
  if (fields.length === 0) return null;
  return `Read this before you buy: ${listText(fields)}. With some readings there is no plan, and what is bought may be of no use.`;
}
