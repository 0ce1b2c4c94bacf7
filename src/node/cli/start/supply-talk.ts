import type { BankDraft, InletDraft, SupplyDraft } from '../../../reading/drafts/supply-draft.js';
import { typedInput, typedTotal, type LabelSetting } from '../../../reading/typed/supply-figures.js';
import type { Asker } from './asker.js';
import { askBank } from './bank-talk.js';
import { inletPolarityChoices, powerChoices, type Signs } from './label-help.js';
import { askConnector, askKnown, askMoney, askName, askTyped } from './questions.js';

/** What a supply is asked about with. */
type AroundSupply = {
  readonly signs: Signs;
  readonly taken: ReadonlySet<string>;
  /** Null for what is owned, which has no price. */
  readonly currency: string | null;
};

/** Asks for all that is to be known about one supply. What nobody knows stays open. */
export async function askSupply(asker: Asker, { signs, taken, currency }: AroundSupply): Promise<SupplyDraft> {
  const name = await askName(asker, 'What is the supply called?', taken);
  const price = currency === null ? null : await askMoney(asker, 'What does it cost?', currency);
  const { mains, charge, inlet } = await askInput(asker, signs);
  const banks: BankDraft[] = [];
  const regulated = await askRegulated(asker);
  do banks.push(await askBank(asker, signs, { first: banks.length === 0, unregulated: regulated === false }));
  while (await asker.confirm('Has it other outputs as well, with other figures?', false));
  const total = await askTyped(
    asker,
    'What may all its outputs give together? 1800 mA, 18 W, or none where nothing is stated.',
    typedTotal,
  );
  return { name, price, mains, charge, inlet, regulated, total, banks };
}

async function askInput(asker: Asker, signs: Signs): Promise<Pick<SupplyDraft, 'mains' | 'charge' | 'inlet'>> {
  const question =
    'Which mains volts does it take (INPUT), such as 100-240 V? Of a power bank its watt-hours, such as 74 Wh; of one that ' +
    'hangs on another supply, as a converter lead does, what it takes: 12 V DC 600 mA. Or ?.';
  const input = await askTyped(asker, question, typedInput);
  if (input === null) asker.say('Boards that state the mains of their venue will then refuse this supply.');
  return {
    mains: input !== null && 'mains' in input ? input.mains : null,
    charge: input !== null && 'wattHours' in input ? input.wattHours : null,
    inlet: input !== null && 'inlet' in input ? await askInlet(asker, signs, input.inlet) : null,
  };
}

/** The rest of what its inlet takes; nothing of it is ever assumed. */
async function askInlet(asker: Asker, signs: Signs, read: LabelSetting): Promise<InletDraft> {
  const { volts, milliamps } = read;
  const power =
    read.power ?? (await askKnown(asker, 'What stands beside the volts of its inlet?', powerChoices(signs)));
  const polarity =
    power === 'AC' ? null : await askKnown(asker, 'Which sign is printed at its inlet?', inletPolarityChoices(signs));
  const plug = await askConnector(asker, 'Which plug goes into its inlet?');
  return { volts, milliamps, power, polarity, plug };
}

async function askRegulated(asker: Asker): Promise<boolean | null> {
  asker.say(
    'A regulated supply holds its volts whatever the load. Nearly all light ones with a switching circuit are; old heavy wall ' +
      'adapters often are not: with nothing plugged in a meter then reads some volts more than the label says.',
  );
  const chosen = await askKnown(asker, 'Are its DC outputs regulated?', [
    { value: 'yes', key: 'y', label: 'yes: the label or data sheet says regulated or stabilised' },
    { value: 'no', key: 'n', label: 'no' },
    { value: 'unknown', key: '?', label: 'I do not know' },
  ]);
  return chosen === null ? null : chosen === 'yes';
}
