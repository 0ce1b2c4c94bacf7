import { outputsOf } from '../../domain/kit.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import type { Bank, Setting } from '../../domain/supply.js';
import { bankOf } from './inventory.js';
import { type Marks, type Speech } from './speech.js';
import { carriesInlet, settingOf, type OutputUse, type UnitUse } from './usage.js';
import { listText, voltsText } from './words.js';

/** What an output is set to; the two of a series join as "9 V +", "9 V". */
export function settingTexts({ settings, feeds: [{ join }] }: OutputUse): readonly string[] {
  const texts = settings.map(voltsText);
  return join?.mode === 'series' ? texts.map((text, at) => (at === 0 ? `${text} +` : text)) : texts.slice(0, 1);
}

/** Neighbouring outputs that nothing hangs on. */
export type FreeOutputs = {
  readonly first: number;
  /** "3" or "2–4". */
  readonly outputs: string;
  /** What they could give. */
  readonly text: string;
};

/** The unit's free outputs, those of a bank that are neighbours together. */
export function freeOutputs({ marks }: Speech, unit: UnitUse): readonly FreeOutputs[] {
  return unit.supply.banks.flatMap((bank) =>
    freeRuns(bank, takenOf(unit)).map((run) => ({
      first: run[0] ?? 0,
      outputs: rangeText(run, marks.dash),
      text: `${freeOffer(unit, bank)}${run.length > 1 ? ' each' : ''}`,
    })),
  );
}

/** The outputs of the unit on which nothing more can hang: an inlet has its output, and a common ground, to itself. */
export function takenOf({ outputs: uses, supply }: UnitUse): ReadonlySet<number> {
  const isShared = (output: number): boolean => !bankOf(supply, output).isolated;
  const onCommon = uses.some((use) => carriesInlet(use) && use.outputs.some(isShared));
  const beside = onCommon ? supply.banks.filter(({ isolated }) => !isolated).flatMap(outputsOf) : [];
  return new Set([...uses.flatMap(({ outputs }) => outputs), ...beside]);
}

/** The bank's unused outputs, in runs of neighbours. */
function freeRuns(bank: Bank, taken: ReadonlySet<number>): readonly (readonly number[])[] {
  const runs: number[][] = [];
  for (const output of outputsOf(bank)) {
    if (taken.has(output)) continue;
    const run = runs.at(-1);
    if (run?.at(-1) === output - 1) run.push(output);
    else runs.push([output]);
  }
  return runs;
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
