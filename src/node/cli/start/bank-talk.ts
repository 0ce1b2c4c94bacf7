import type { BankDraft, SettingDraft } from '../../../reading/drafts/supply-draft.js';
import { mostOutputsOfBank } from '../../../reading/schema/schema-fields.js';
import { typedVoltage } from '../../../reading/typed/label-figures.js';
import { typedSetting } from '../../../reading/typed/supply-figures.js';
import { unclear } from '../../../reading/typed/typed.js';
import type { Asker } from './asker.js';
import { isolationHelp, polarityChoices, powerChoices, type Signs } from './label-help.js';
import { askConnector, askCount, askKnown, askSaid, askTyped } from './questions.js';

type AboutBank = {
  /** Whether it is the supply's first: what needs explaining is explained once a supply. */
  readonly first: boolean;
  /** Whether the supply is known not to hold its volts. */
  readonly unregulated: boolean;
};

/** Asks for outputs that are alike. */
export async function askBank(asker: Asker, signs: Signs, { first, unregulated }: AboutBank): Promise<BankDraft> {
  const outputs = await askCount(asker, 'How many outputs of the same kind are there?', 1, {
    highest: mostOutputsOfBank,
  });
  const { settings, power: read } = await askSettings(asker, unregulated);
  const power = read ?? (await askKnown(asker, 'What stands beside the volts of these outputs?', powerChoices(signs)));
  const polarity = power === 'AC' ? null : await askPolarity(asker, signs);
  const plug = await askConnector(asker, 'Which plug do its own straight leads have?');
  if (first) asker.say(isolationHelp);
  const isolated = await askIsolated(asker);
  const joins = isolated === true && outputs > 1 ? await askJoins(asker) : [];
  const switching = settings.length > 1 ? await askSwitch(asker, outputs) : null;
  return { outputs, isolated, power, plug, polarity, switch: switching, settings, joins };
}

type Settings = { readonly settings: readonly SettingDraft[]; readonly power: BankDraft['power'] };

async function askSettings(asker: Asker, unregulated: boolean): Promise<Settings> {
  const settings: SettingDraft[] = [];
  let power: BankDraft['power'] = null;
  do {
    const read = await askSaid(
      asker,
      settings.length === 0
        ? 'What does each of them give at most, such as 9 V 400 mA?'
        : 'What does each give at the next setting, such as 12 V 300 mA?',
      (answer) => newSetting(answer, settings),
    );
    power = read.power ?? power;
    const openCircuitVolts = unregulated && power !== 'AC' ? await askOpenCircuit(asker, read.volts) : null;
    settings.push({ volts: read.volts, milliamps: read.milliamps, openCircuitVolts });
  } while (await asker.confirm('Can they be switched to other volts as well?', false));
  return { settings, power };
}

function newSetting(answer: string, settings: readonly SettingDraft[]) {
  const typed = typedSetting(answer);
  if (typed.kind === 'unclear') return typed;
  const isThere = settings.some(({ volts }) => volts === typed.value.volts);
  return isThere ? unclear(`There is a setting for ${typed.value.volts} V already.`) : typed;
}

/** What an unregulated output gives without a load; null when it is not known. */
const askOpenCircuit = async (asker: Asker, volts: number): Promise<number | null> =>
  askTyped(
    asker,
    `How many volts does a meter read at ${volts} V with nothing plugged in? Such as 13.6 V, or ?.`,
    (answer) => {
      const typed = typedVoltage(answer, 'Write volts such as 13.6 V, or ?.');
      return typed.kind === 'said' && typed.value < volts
        ? unclear(`Without a load it gives no less than ${volts} V: measure again, or write ?.`)
        : typed;
    },
  );

const askPolarity = async (asker: Asker, signs: Signs): Promise<BankDraft['polarity']> =>
  askKnown(asker, 'Which sign is printed at these outputs, or at their leads?', polarityChoices(signs));

async function askIsolated(asker: Asker): Promise<boolean | null> {
  const chosen = await askKnown(asker, 'Is each of these outputs isolated?', [
    { value: 'yes', key: 'y', label: 'yes, or there is one output only' },
    { value: 'no', key: 'n', label: 'no, they share a ground' },
    { value: 'unknown', key: '?', label: 'I do not know: counted as not isolated, the careful assumption' },
  ]);
  return chosen === null ? null : chosen === 'yes';
}

async function askJoins(asker: Asker): Promise<BankDraft['joins']> {
  const chosen = await asker.choose('Does its maker allow two of these outputs to be joined by a special lead?', [
    { value: 'none', key: 'n', label: 'no, or I do not know' },
    { value: 'series', key: 's', label: 'in series: volts add' },
    { value: 'parallel', key: 'p', label: 'in parallel: milliamps add' },
    { value: 'both', key: 'b', label: 'either way' },
  ]);
  if (chosen === 'none') return [];
  return chosen === 'both' ? ['series', 'parallel'] : [chosen];
}

/** A single output is set by itself. */
async function askSwitch(asker: Asker, outputs: number): Promise<'each' | 'together'> {
  if (outputs === 1) return 'each';
  return asker.choose('How are the volts chosen?', [
    { value: 'each', key: 'e', label: 'at every output by itself' },
    { value: 'together', key: 't', label: 'with one switch for all of these outputs' },
  ]);
}
