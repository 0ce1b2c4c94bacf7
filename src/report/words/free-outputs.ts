import { runsOf } from '../../domain/group-by.js';
import { outputsOf } from '../../domain/kit.js';
import type { Feed } from '../../domain/plan.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import type { Bank, Setting } from '../../domain/supply.js';
import { bankOf, type Inventory } from './inventory.js';
import { type Marks, type Speech } from './speech.js';
import { hasGroundAlone, settingOf, type OutputUse, type UnitUse } from './usage.js';
import { listText, voltsText } from './words.js';

/** What an output is set to; the two of a series join as "9 V +", "9 V". */
export function settingTexts({ settings, feeds: [{ join }] }: OutputUse): readonly string[] {
  const texts = settings.map(voltsText);
  return join?.mode === 'series' ? texts.map((text, at) => (at === 0 ? `${text} +` : text)) : texts.slice(0, 1);
}

/** Neighbouring outputs that nothing hangs on. */
type FreeOutputs = {
  readonly first: number;
  /** "3" or "2–4". */
  readonly outputs: string;
  /** What they could give; where they are not free, who has their ground. */
  readonly text: string;
  readonly isFree: boolean;
};

/** The unit's outputs that nothing hangs on, those of a bank that are neighbours together. */
export function freeOutputs({ marks, inventory }: Speech, unit: UnitUse): readonly FreeOutputs[] {
  return unit.supply.banks.flatMap((bank) => {
    const holder = groundHolder(inventory, unit, bank);
    return freeRuns(unit, bank).map((run) => ({
      first: run[0] ?? 0,
      outputs: rangeText(run, marks.dash),
      text: holder === null ? `${freeOffer(unit, bank)}${run.length > 1 ? ' each' : ''}` : heldText(inventory, holder),
      isFree: holder === null,
    }));
  });
}

/** "Mole octave has this ground to itself". */
export const heldText = (inventory: Inventory, { pedal }: Feed): string =>
  `${inventory.pedalName(pedal)} has this ground to itself`;

/** What has the ground of the bank's outputs to itself, so that nothing more can hang on them; null where nothing has. */
export function groundHolder(inventory: Inventory, { outputs: uses, supply }: UnitUse, bank: Bank): Feed | null {
  if (bank.isolated) return null;
  const isShared = (output: number): boolean => !bankOf(supply, output).isolated;
  const holding = uses.find((use) => hasGroundAlone(inventory, use) && use.outputs.some(isShared));
  return holding === undefined ? null : holding.feeds[0];
}

/** The bank's outputs that a further pedal may hang on by itself. */
export const freeOf = (inventory: Inventory, unit: UnitUse, bank: Bank): readonly number[] =>
  groundHolder(inventory, unit, bank) === null ? freeRuns(unit, bank).flat() : [];

/** The bank's unused outputs, in runs of neighbours. */
function freeRuns({ outputs: uses }: UnitUse, bank: Bank): readonly (readonly number[])[] {
  const taken = new Set(uses.flatMap(({ outputs }) => outputs));
  return runsOf(
    outputsOf(bank).filter((output) => !taken.has(output)),
    (run, output) => run.at(-1) === output - 1,
  );
}

/** What one free output of the bank could give: "9 V 400 mA or 12 V 300 mA". */
export function freeOffer(unit: UnitUse, bank: Bank): string {
  const offers = freeSettings(unit, bank).map(
    ({ millivolts, rating }) => `${voltsText(millivolts)} ${decimalOfThousandths(rating)} mA`,
  );
  return `${bank.power === 'AC' ? 'AC ' : ''}${listText(offers, 'or')}`;
}

/** What a free output of the bank may stand at: one that is switched together and in use gives no choice. */
export function freeSettings({ outputs, supply }: UnitUse, bank: Bank): readonly Setting[] {
  if (bank.switching === 'each') return bank.settings;
  for (const use of outputs) {
    const at = use.outputs.findIndex((output) => bankOf(supply, output) === bank);
    if (at >= 0) return [settingOf(bank, use.settings[at])];
  }
  return bank.settings;
}

/** "5–8": the numbers of a bank's outputs. */
export const bankOutputs = ({ dash }: Marks, bank: Bank): string => rangeText(outputsOf(bank), dash);

const rangeText = (run: readonly number[], dash: string): string =>
  run.length === 1 ? String(run[0] ?? '') : `${run[0] ?? ''}${dash}${run.at(-1) ?? ''}`;
