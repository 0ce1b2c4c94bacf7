import { leadEntry } from '../../../reading/drafts/lead-draft.js';
import { idOf, type OwnedDraft, type OwnedThing } from '../../../reading/drafts/owned-draft.js';
import { supplyEntry } from '../../../reading/drafts/supply-draft.js';
import type { Asker } from './asker.js';
import { supplyHelp, type Signs } from './label-help.js';
import { askLead } from './lead-talk.js';
import { askCount } from './questions.js';
import { isRight } from './summary.js';
import { askSupply } from './supply-talk.js';

/** Asks for the supplies and leads that are there already. `note` is told all of them after each. */
export async function askOwned(asker: Asker, signs: Signs, note: (owned: OwnedDraft) => void): Promise<OwnedDraft> {
  const supplies: OwnedThing[] = [];
  const leads: OwnedThing[] = [];
  const noted = (): OwnedDraft => ({ supplies: [...supplies], leads: [...leads] });
  const taken = (): ReadonlySet<string> => new Set([...supplies, ...leads].map(({ entry }) => idOf(entry)));
  for (let question = 'Do you own a supply or an adapter already?'; await asker.confirm(question, false);) {
    question = 'Do you own another supply or adapter?';
    if (supplies.length === 0) asker.say(supplyHelp(signs));
    const entry = supplyEntry(await askSupply(asker, { signs, taken: taken(), currency: null }));
    if (!(await isRight(asker, entry))) continue;
    supplies.push({ entry, count: await askHowMany(asker) });
    note(noted());
  }
  if (supplies.length === 0) return noted();
  for (let question = 'Do you own chain leads, reversing leads or adapters from one plug to another?'; ;) {
    if (!(await asker.confirm(question, false))) return noted();
    question = 'Another lead?';
    const draft = await askLead(asker, { taken: taken(), currency: null });
    if (draft === null || !(await isRight(asker, leadEntry(draft)))) continue;
    leads.push({ entry: leadEntry(draft), count: await askHowMany(asker) });
    note(noted());
  }
}

const askHowMany = async (asker: Asker): Promise<number> =>
  askCount(asker, 'How many of it do you own?', 1, { initial: '1', highest: 20 });
