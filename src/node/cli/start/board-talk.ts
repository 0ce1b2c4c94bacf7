import { idFromName } from '../../../reading/resolve/resolve-id.js';
import type { BoardHead } from '../../../reading/drafts/new-files.js';
import { pedalEntry } from '../../../reading/drafts/pedal-draft.js';
import { typedVoltage } from '../../../reading/typed/label-figures.js';
import type { Asker } from './asker.js';
import { pedalHelp, type Signs } from './label-help.js';
import { askPedal } from './pedal-talk.js';
import { askCurrency, askMoney, askTyped } from './questions.js';
import type { Notes } from './notes.js';
import { isRight } from './summary.js';

/** What a board that is there says already. */
export type KnownBoard = { readonly pedalIds: readonly string[]; readonly assumesGround: boolean };

/** Asks for a board, or for more pedals of one that is there. What is finished is noted at once, and so survives a stop. */
export async function talkAboutBoard(
  asker: Asker,
  signs: Signs,
  known: KnownBoard | null,
  notes: Notes<BoardHead>,
): Promise<void> {
  asker.say(pedalHelp(signs));
  const head = known === null ? await askHead(asker) : null;
  if (head !== null) notes.setHead(head);
  const assumesGround = known?.assumesGround ?? head?.assumesGround ?? false;
  const taken = new Set(known?.pedalIds ?? []);
  do {
    const draft = await askPedal(asker, { signs, taken, assumesGround });
    const entry = pedalEntry(draft);
    if (!(await isRight(asker, entry))) continue;
    notes.add('pedals', entry);
    taken.add(idFromName(draft.name) ?? draft.name);
  } while (await asker.confirm('Is there another pedal?', true));
}

async function askHead(asker: Asker): Promise<BoardHead> {
  const check = (answer: string): string | null => (answer.trim() === '' ? 'Give it a name.' : null);
  const name = (await asker.text('What is the board called?', { check })).trim();
  const currency = await askCurrency(asker);
  const mains = await askMains(asker);
  asker.say('A high-gain pedal that shares a ground with a digital one is exposed: it will probably whine or hum.');
  const noisePrice = await askMoney(asker, 'What is it worth to you to keep one pedal free of that?', currency, '20');
  asker.say(
    'Nearly all pedals have a negative ground, all but some old fuzz circuits. The file can say so once, for every pedal ' +
      'that does not say otherwise; each result then lists it for you to confirm. Fuzz pedals are asked about all the same.',
  );
  const assumesGround = await asker.confirm('Shall the file say that pedals have a negative ground?', true);
  return { name, currency, mains, noisePrice, assumesGround };
}

const askMains = async (asker: Asker): Promise<number | null> =>
  askTyped(
    asker,
    'Which mains volts has the venue? Plans then keep to supplies that take them.',
    (answer) => typedVoltage(answer, 'Write the volts of the mains, such as 230 V, or ?.'),
    { example: '230 V, 120 V, or ?' },
  );
