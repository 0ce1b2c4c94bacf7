import type { LeadDraft } from '../../../reading/drafts/lead-draft.js';
import type { Asker } from './asker.js';
import { yesOrNo } from './label-help.js';
import { askConnector, askCount, askMoney, askName } from './questions.js';

const kinds = [
  { value: 'adapter', key: 'a', label: 'an adapter from one plug to another' },
  { value: 'reversing', key: 'r', label: 'a reversing lead: swaps plus and minus' },
  { value: 'chain', key: 'c', label: 'a chain lead: several pedals on one output' },
  { value: 'series', key: 's', label: 'a series lead: joins two outputs, volts add' },
  { value: 'parallel', key: 'p', label: 'a parallel lead: joins two outputs, milliamps add' },
] as const;

/** Asks for one lead or adapter; null when a plug of it is not known, for then it is of no use. Without a currency it has no price. */
export async function askLead(
  asker: Asker,
  { taken, currency }: { readonly taken: ReadonlySet<string>; readonly currency: string | null },
): Promise<LeadDraft | null> {
  const kind = await asker.choose('What kind of lead is it?', kinds);
  const name = await askName(asker, 'What is it called?', taken);
  const price = currency === null ? null : await askMoney(asker, 'What does it cost?', currency);
  const fits = await askConnector(asker, 'Which plug goes into it, at the end towards the supply?');
  const gives = await askConnector(asker, 'Which plug does it offer, at the end towards the pedal?');
  if (fits === null || gives === null) {
    asker.say('Without its plugs a lead is of no use to a plan. Compare them with others, and add it then.');
    return null;
  }
  const tails = kind === 'chain' ? await askCount(asker, 'How many pedals can it feed?', 2) : null;
  const joins = kind === 'series' || kind === 'parallel' ? kind : null;
  const reverses =
    kind === 'reversing' || (await asker.choose('Does it swap plus and minus on the way?', yesOrNo)) === 'yes';
  return { name, price, fits, gives, reverses, tails, joins };
}
