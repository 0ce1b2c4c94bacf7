import type { BankDraft, SettingDraft } from '../../../reading/drafts/supply-draft.js';
import { typedDraw, typedVolts } from '../../../reading/typed/label-figures.js';
import { mostOutputsOfBank } from '../../../reading/schema/schema-fields.js';
import type { Asker } from './asker.js';
import { isolationHelp, polarityChoices, powerChoices, type Signs } from './label-help.js';
import { askConnector, askCount } from './questions.js';

export type AboutBank = {
  /** Whether it is the supply's first: what needs explaining is explained once a supply. */
  readonly first: boolean;
  /** Whether the supply is known not to hold its volts. */
  readonly unregulated: boolean;
};

/** Asks for outputs that are alike. */
export async function askBank(asker: Asker, signs: Signs, { first, unregulated }: AboutBank): Promise<BankDraft> {
  const outputs = await askCount(asker, 'How many outputs of the same kind are there?', 1, mostOutputsOfBank);
  const { settings, power: read } = await askSettings(asker, unregulated);
  const power = read ?? (await askPower(asker, signs));
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
    const read = readSetting(
      await asker.text(
        settings.length === 0 ? 'What does each of them give, at most?' : 'What does each give at the next setting?',
        { example: '9 V 400 mA', check: (answer) => wrongSetting(answer, settings) },
      ),
    );
    if (read === null) throw new Error('a setting was taken that cannot be read');
    power = read.power ?? power;
    const openCircuitVolts = unregulated && power !== 'AC' ? await askOpenCircuit(asker, read.volts) : null;
    settings.push({ volts: read.volts, milliamps: read.milliamps, openCircuitVolts });
  } while (await asker.confirm('Can they be switched to other volts as well?', false));
  return { settings, power };
}

type ReadSetting = { readonly volts: number; readonly milliamps: number; readonly power: BankDraft['power'] };

function readSetting(answer: string): ReadSetting | null {
  const typed = typedVolts(answer);
  if (typed.kind !== 'volts' || typeof typed.volts !== 'number' || typed.draw === null) return null;
  const draw = typedDraw(typed.draw, typed.volts);
  return draw.kind === 'milliamps' ? { volts: typed.volts, milliamps: draw.milliamps, power: typed.power } : null;
}

function wrongSetting(answer: string, settings: readonly SettingDraft[]): string | null {
  const read = readSetting(answer);
  if (read === null)
    return 'Write the volts and the most current of one output, such as 9 V 400 mA. Without them it is of no use.';
  return settings.some(({ volts }) => volts === read.volts) ? `There is a setting for ${read.volts} V already.` : null;
}

/** What an unregulated output gives without a load; null when it is not known. */
async function askOpenCircuit(asker: Asker, volts: number): Promise<number | null> {
  const check = (answer: string): string | null => {
    const typed = typedVolts(answer);
    if (typed.kind === 'unknown') return null;
    if (typed.kind === 'unclear' || typeof typed.volts !== 'number') return 'Write volts such as 13.6 V, or ?.';
    return typed.volts < volts ? `Without a load it gives no less than ${volts} V: measure again, or write ?.` : null;
  };
  const typed = typedVolts(
    await asker.text(`How many volts does a meter read at ${volts} V with nothing plugged in?`, {
      example: '13.6 V, or ?',
      check,
    }),
  );
  return typed.kind === 'volts' && typeof typed.volts === 'number' ? typed.volts : null;
}

async function askPower(asker: Asker, signs: Signs): Promise<BankDraft['power']> {
  const chosen = await asker.choose('What stands beside the volts of these outputs?', powerChoices(signs));
  return chosen === 'unknown' ? null : chosen;
}

async function askPolarity(asker: Asker, signs: Signs): Promise<BankDraft['polarity']> {
  const [negative, positive, unknown] = polarityChoices(signs);
  const either = { value: 'either', label: 'each output has a polarity switch' } as const;
  const choices = [negative, positive, either, unknown].filter((choice) => choice !== undefined);
  const chosen = await asker.choose('Which sign is printed at these outputs, or at their leads?', choices);
  return chosen === 'unknown' ? null : chosen;
}

async function askIsolated(asker: Asker): Promise<boolean | null> {
  const chosen = await asker.choose('Is each of these outputs isolated?', [
    { value: 'yes', label: 'yes', hint: 'or there is one output only' },
    { value: 'no', label: 'no, they share a ground' },
    { value: 'unknown', label: 'I do not know', hint: 'counted as not isolated, the careful assumption' },
  ]);
  return chosen === 'unknown' ? null : chosen === 'yes';
}

async function askJoins(asker: Asker): Promise<BankDraft['joins']> {
  const chosen = await asker.choose('Does its maker allow two of these outputs to be joined by a special lead?', [
    { value: 'none', label: 'no, or I do not know' },
    { value: 'series', label: 'in series', hint: 'volts add' },
    { value: 'parallel', label: 'in parallel', hint: 'milliamps add' },
    { value: 'both', label: 'either way' },
  ]);
  if (chosen === 'none') return [];
  return chosen === 'both' ? ['series', 'parallel'] : [chosen];
}

/** A single output is set by itself. */
async function askSwitch(asker: Asker, outputs: number): Promise<'each' | 'together'> {
  if (outputs === 1) return 'each';
  return asker.choose('How are the volts chosen?', [
    { value: 'each', label: 'at every output by itself' },
    { value: 'together', label: 'with one switch for all of these outputs' },
  ]);
}
