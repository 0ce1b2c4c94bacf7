import { idFromName } from '../../../reading/resolve/resolve-id.js';
import { leadEntry } from '../../../reading/drafts/lead-draft.js';
import type { CatalogueHead } from '../../../reading/drafts/new-files.js';
import { supplyEntry } from '../../../reading/drafts/supply-draft.js';
import type { Asker } from './asker.js';
import { supplyHelp, type Signs } from './label-help.js';
import { askLead } from './lead-talk.js';
import type { Notes } from './notes.js';
import { askCurrency } from './questions.js';
import { isRight } from './summary.js';
import { askSupply } from './supply-talk.js';

/** What a catalogue that is there says already. */
type KnownCatalogue = {
  readonly supplyIds: readonly string[];
  readonly partIds: readonly string[];
  readonly currency: string;
};

/** Asks for a catalogue, or for more of what is in one. What is finished is noted at once, and so survives a stop. */
export async function talkAboutCatalogue(
  asker: Asker,
  signs: Signs,
  known: KnownCatalogue | null,
  notes: Notes<CatalogueHead>,
): Promise<void> {
  asker.say(supplyHelp(signs));
  const head = known === null ? await askHead(asker) : null;
  if (head !== null) notes.setHead(head);
  const currency = known?.currency ?? head?.currency ?? '';
  await askSupplies(asker, signs, { taken: new Set(known?.supplyIds), currency, notes });
  await askLeads(asker, { taken: new Set(known?.partIds), currency, notes });
}

type Around = { readonly taken: Set<string>; readonly currency: string; readonly notes: Notes<CatalogueHead> };

async function askSupplies(asker: Asker, signs: Signs, { taken, currency, notes }: Around): Promise<void> {
  for (let question = 'Is there a supply to add?'; await asker.confirm(question, true);) {
    question = 'Is there another supply?';
    const entry = supplyEntry(await askSupply(asker, { signs, taken, currency }));
    if (!(await isRight(asker, entry))) continue;
    notes.add('supplies', entry);
    taken.add(idFromName(entry.name) ?? entry.name);
  }
}

async function askLeads(asker: Asker, { taken, currency, notes }: Around): Promise<void> {
  for (let question = 'Is there a lead or adapter to add?'; await asker.confirm(question, false);) {
    question = 'Is there another lead or adapter?';
    const draft = await askLead(asker, { taken, currency });
    if (draft === null) continue;
    const entry = leadEntry(draft);
    if (!(await isRight(asker, entry))) continue;
    notes.add('parts', entry);
    taken.add(idFromName(entry.name) ?? entry.name);
  }
}

async function askHead(asker: Asker): Promise<CatalogueHead> {
  const check = (answer: string): string | null => (answer.trim() === '' ? 'Give it a name.' : null);
  const name = (await asker.text('What is the list of supplies called, such as My shop?', { check })).trim();
  return { name, currency: await askCurrency(asker) };
}
