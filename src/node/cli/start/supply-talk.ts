import type { BankDraft, SupplyDraft } from '../../../reading/drafts/supply-draft.js';
import { isUnknown, typedDraw, typedVolts } from '../../../reading/typed/label-figures.js';
import { plainNumber } from '../../../reading/typed/plain-number.js';
import type { Asker } from './asker.js';
import { askBank } from './bank-talk.js';
import type { Signs } from './label-help.js';
import { askMoney, askName } from './questions.js';

/** What a supply is asked about with. */
export type AroundSupply = { readonly signs: Signs; readonly taken: ReadonlySet<string>; readonly currency: string };

/** Asks for all that is to be known about one supply. What nobody knows stays open. */
export async function askSupply(asker: Asker, { signs, taken, currency }: AroundSupply): Promise<SupplyDraft> {
  const name = await askName(asker, 'What is the supply called?', taken);
  const price = await askMoney(asker, 'What does it cost?', currency);
  const mains = await askMains(asker);
  const banks: BankDraft[] = [];
  const regulated = await askRegulated(asker);
  do banks.push(await askBank(asker, signs, { first: banks.length === 0, unregulated: regulated === false }));
  while (await asker.confirm('Has it other outputs as well, with other figures?', false));
  const total = await askTotal(asker);
  return { name, price, mains, regulated, total, banks };
}

async function askMains(asker: Asker): Promise<SupplyDraft['mains']> {
  const mainsIn = (answer: string): SupplyDraft['mains'] => {
    const typed = typedVolts(answer.replace(/~|\bAC\b|\d+(?:[/-]\d+)?\s*Hz/gi, ' '));
    if (typed.kind !== 'volts') return null;
    const { volts } = typed;
    return typeof volts === 'number' || 'from' in volts ? volts : null;
  };
  const check = (answer: string): string | null =>
    isUnknown(answer) || mainsIn(answer) !== null ? null : 'Write 230 V or 100-240 V as it stands at INPUT, or ?.';
  const answer = await asker.text('Which mains volts does it take (INPUT)?', { example: '100-240 V, or ?', check });
  if (isUnknown(answer)) asker.say('Boards that state the mains of their venue will then refuse this supply.');
  return mainsIn(answer);
}

async function askRegulated(asker: Asker): Promise<boolean | null> {
  asker.say(
    'A regulated supply holds its volts whatever the load. Nearly all light ones with a switching circuit are; old heavy wall ' +
      'adapters often are not: with nothing plugged in a meter then reads some volts more than the label says.',
  );
  const chosen = await asker.choose('Are its DC outputs regulated?', [
    { value: 'yes', label: 'yes', hint: 'the label or data sheet says regulated or stabilised' },
    { value: 'no', label: 'no' },
    { value: 'unknown', label: 'I do not know' },
  ]);
  return chosen === 'unknown' ? null : chosen === 'yes';
}

async function askTotal(asker: Asker): Promise<SupplyDraft['total']> {
  const totalIn = (answer: string): SupplyDraft['total'] => {
    const watts = /W\s*$/i.test(answer) ? plainNumber(answer, 'W') : null;
    if (watts !== null && Number(watts) > 0) return { watts: Number(watts) };
    const typed = typedDraw(answer, null);
    return typed.kind === 'milliamps' ? { milliamps: typed.milliamps } : null;
  };
  const isNone = (answer: string): boolean => isUnknown(answer) || /^(none|no)$/i.test(answer.trim());
  const check = (answer: string): string | null =>
    isNone(answer) || totalIn(answer) !== null ? null : 'Write 1800 mA, 1.8 A or 18 W; or none when nothing is stated.';
  const answer = await asker.text('What may all its outputs give together, if that is stated?', {
    example: '1800 mA, 18 W, or none',
    check,
  });
  return isNone(answer) ? null : totalIn(answer);
}
