import { batteryEntry } from '../../../reading/drafts/battery-draft.js';
import { leadEntry } from '../../../reading/drafts/lead-draft.js';
import { idOf, type OwnedDraft, type OwnedThing } from '../../../reading/drafts/owned-draft.js';
import { supplyEntry } from '../../../reading/drafts/supply-draft.js';
import { typedBattery, type LabelBattery } from '../../../reading/typed/battery-line.js';
import { unclear, type Typed } from '../../../reading/typed/typed.js';
import type { Asker } from './asker.js';
import { supplyHelp, type Signs } from './label-help.js';
import { askLead } from './lead-talk.js';
import { askCount, askTyped } from './questions.js';
import { isRight } from './summary.js';
import { askSupply } from './supply-talk.js';

/** What is asked of what is owned. */
type AboutOwned = { readonly signs: Signs; readonly takesBatteries: boolean };

/**
 * Asks for the supplies and leads that are there already, and for batteries where a pedal takes any. `note` is told all of them
 * after each.
 */
export async function askOwned(
  asker: Asker,
  { signs, takesBatteries }: AboutOwned,
  note: (owned: OwnedDraft) => void,
): Promise<OwnedDraft> {
  const { supplies, leads } = await askSuppliesAndLeads(asker, signs, note);
  if (!takesBatteries) return { supplies, leads, batteries: [] };
  return askBatteries(asker, (batteries) => ({ supplies, leads, batteries }), note);
}

/** A kind on a line, until one is empty. */
async function askBatteries(
  asker: Asker,
  ownedWith: (batteries: readonly OwnedThing[]) => OwnedDraft,
  note: (owned: OwnedDraft) => void,
): Promise<OwnedDraft> {
  let owned = ownedWith([]);
  for (let question = 'Which batteries do you own, such as 2 x 9v block or 12 x AA 2000 mAh? Enter for none.'; ;) {
    const taken = owned.batteries.map(({ entry }) => idOf(entry));
    const battery = await askTyped(asker, question, (answer) => newBattery(answer, taken));
    if (battery === null) return owned;
    const entry = batteryEntry(battery);
    asker.say(
      `${battery.count} × ${entry.name}, ${battery.volts} V each${battery.isUsual ? ': what such batteries usually hold' : ''}.`,
    );
    note((owned = ownedWith([...owned.batteries, { entry, count: battery.count }])));
    question = 'Which other batteries? Enter when there are none.';
  }
}

function newBattery(answer: string, taken: readonly string[]): Typed<LabelBattery> {
  const typed = typedBattery(answer);
  return typed.kind === 'said' && taken.includes(idOf(batteryEntry(typed.value)))
    ? unclear('That kind was told already: tell all of a kind at once.')
    : typed;
}

async function askSuppliesAndLeads(asker: Asker, signs: Signs, note: (owned: OwnedDraft) => void): Promise<OwnedDraft> {
  const supplies: OwnedThing[] = [];
  const leads: OwnedThing[] = [];
  const noted = (): OwnedDraft => ({ supplies: [...supplies], leads: [...leads], batteries: [] });
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
