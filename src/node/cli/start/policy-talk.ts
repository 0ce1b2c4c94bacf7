import { usualAssumption, usualWithPolarity, type Assumption } from '../../../reading/drafts/assumption.js';
import type { PedalDraft } from '../../../reading/drafts/pedal-draft.js';
import type { BoardHead } from '../../../reading/drafts/new-files.js';
import { typedBudget, type Budget } from '../../../reading/typed/budget.js';
import { typedVoltage } from '../../../reading/typed/label-figures.js';
import { plainNumber } from '../../../reading/typed/plain-number.js';
import { said, unclear, type Clear } from '../../../reading/typed/typed.js';
import { thousandths } from '../../../domain/quantities.js';
import { largestHours } from '../../../reading/schema/schema-fields.js';
import type { Asker } from './asker.js';
import { askMoney, askSaid, askTyped } from './questions.js';

/** What a new board says until something else is told. Nothing that bears on safety is among it. */
export const startingHead = {
  assumption: {},
  currency: 'EUR',
  budget: null,
  noisePrice: 20,
  mains: null,
} satisfies ToldHead;

/** What is told of a board as a whole. */
export type ToldHead = Omit<BoardHead, 'name' | 'terms'>;

/** Asks what plans are to keep to, beside what is assumed. `note` is told after each answer. */
export async function askPolicy(
  asker: Asker,
  pedals: readonly PedalDraft[],
  begun: ToldHead,
  note: (head: ToldHead) => void,
): Promise<void> {
  let head = begun;
  const add = (more: Partial<ToldHead>): void => note((head = { ...head, ...more }));
  const { currency, budget } = await askBudget(asker);
  add({ currency, budget });
  add({ noisePrice: await askNoisePrice(asker, pedals, currency) });
  add({ mains: await askMains(asker) });
}

/** What may be assumed of the pedals that do not say; `misses` are the keys that some pedal lacks. */
export async function askAssumption(asker: Asker, misses: ReadonlySet<string>): Promise<Assumption> {
  const within = (assumption: Assumption): Assumption =>
    Object.fromEntries(Object.entries(assumption).filter(([key]) => misses.has(key)));
  if (misses.size === 0) return {};
  const isOpen = misses.has('polarity');
  const usual = {
    value: 'usual',
    key: 'm',
    label: `what most pedals have: ${words(within(usualAssumption))}${isOpen ? '. The polarity stays open: plans are right for either' : ''}`,
  } as const;
  const polarity = {
    value: 'polarity',
    key: 'p',
    label: 'the same, and centre-negative where no sign was told',
  } as const;
  const nothing = { value: 'nothing', key: 'n', label: 'nothing: no plan before these labels are read' } as const;
  const chosen = await asker.choose(
    'What may plans take where a label says nothing? Each use is listed, to be confirmed before anything is plugged in.',
    isOpen ? [usual, polarity, nothing] : [usual, nothing],
  );
  if (chosen === 'nothing') return {};
  return within(chosen === 'polarity' ? usualWithPolarity : usualAssumption);
}

function words({ power, inlet, ground, volts }: Assumption): string {
  return [
    ...(power === undefined ? [] : [power]),
    ...(inlet === undefined ? [] : ['a barrel plug with a 2.1 mm pin']),
    ...(ground === undefined ? [] : ['a negative ground, fuzzes excepted']),
    ...(volts === undefined ? [] : [`${volts} V to keep a place by where the volts are not known`]),
  ].join('; ');
}

const askBudget = async (asker: Asker): Promise<Budget> =>
  askSaid(
    asker,
    `What is the most that you want to spend, in ${startingHead.currency}? Another currency stands beside it: 120 USD. ` +
      'Enter for no limit.',
    (answer) => typedBudget(answer, startingHead.currency),
  );

/** Only where there is somebody to disturb and somebody to be disturbed. */
async function askNoisePrice(asker: Asker, pedals: readonly PedalDraft[], currency: string): Promise<number> {
  const usual = startingHead.noisePrice;
  const first = (trait: 'digital' | 'highGain'): string | undefined =>
    pedals.find(({ line, kind }) => line[trait] ?? kind?.[trait])?.line.name;
  const [digital, highGain] = [first('digital'), first('highGain')];
  if (digital === undefined || highGain === undefined) return usual;
  asker.say(
    `${digital} is digital, ${highGain} has high gain: on one ground ${highGain} will probably whine or hum. ` +
      `At ${usual} ${currency} a plan that keeps one such pedal quiet is taken if it costs up to ${usual} ${currency} more.`,
  );
  return askMoney(asker, 'How much more may it cost to keep one such pedal quiet?', currency, String(usual));
}

const askMains = async (asker: Asker): Promise<number | null> =>
  askTyped(
    asker,
    'Which mains volts has the venue, such as 230 V or 120 V? Plans keep to supplies that take them; Enter for any supply.',
    (answer) => typedVoltage(answer, 'Write the volts of the mains, such as 230 V, or nothing.'),
  );

/** Asked once something is there that has to last. Whoever knows no better has a number to begin with. */
export const askHours = async (
  asker: Asker,
  what: 'a set of batteries' | 'the power bank',
  usual: number,
): Promise<number> =>
  askSaid(
    asker,
    `How many hours must ${what} last? They are counted by what is known of the draws: an estimate.`,
    typedHours,
    { initial: String(usual) },
  );

function typedHours(answer: string): Clear<number> {
  const hours = Number(plainNumber(answer, 'h') ?? '0');
  return hours > 0 && hours <= largestHours && thousandths(hours) !== null
    ? said(hours)
    : unclear('Write the hours, such as 4 or 2.5 h.');
}
