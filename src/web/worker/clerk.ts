import type { Kit } from '../../domain/kit.js';
import { chooseOrSeek } from '../../planning/wanted/wanted.js';
import type { InputFault } from '../../reading/faults/input-fault.js';
import { inputsFromText, type BoardAlone, type Inputs } from '../../reading/inputs-from-text.js';
import type { ReadResult } from '../../reading/faults/input-fault.js';
import { webTiming } from '../../../solver/timing.js';
import type { HeldFile } from '../document/page-document.js';
import type { News, Question, ToldFault, ToWorker } from './messages.js';
import { toldAnswer } from './told-answer.js';

/** Milliseconds after which the best plan so far is told, each time from the beginning; then the search goes on to its end. */
const patience = [500, 3_000, Infinity];

export type ClerkPlace = {
  readonly post: (news: News) => void;
  /** Milliseconds of a clock that only goes on. */
  readonly now: () => number;
};

/** Answers questions, one at a time: whoever asks a new one does not wait for the one before any more. */
export function createClerk({ post, now }: ClerkPlace): (message: ToWorker) => Promise<void> {
  let asked = new AbortController();
  return async (message) => {
    asked.abort();
    if (message.kind === 'stop') return;
    asked = new AbortController();
    const { signal } = asked;
    const { about } = message.question;
    const tell = (news: NewsAlone): void => {
      if (!signal.aborted) post({ about, ...news });
    };
    tell({ kind: 'begun' });
    try {
      // Whoever types is at the next key already: it is heard before the work begins.
      await webTiming.pause();
      if (!signal.aborted) await answer(message.question, { tell, signal, now });
      tell({ kind: 'done' });
    } catch (error) {
      tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  };
}

type NewsAlone = News extends infer Each ? (Each extends News ? Omit<Each, 'about'> : never) : never;

type Desk = Pick<ClerkPlace, 'now'> & { readonly tell: (news: NewsAlone) => void; readonly signal: AbortSignal };

async function answer({ board, shop, aim }: Question, { tell, signal, now }: Desk): Promise<void> {
  const read = readInputs(board, shop);
  if (read.kind === 'faulty') {
    tell({ kind: 'faulty', faults: read.faults.map((fault) => toldFault(fault, shop)), more: read.more });
    return;
  }
  tell({ kind: 'read', notes: read.notes ?? [] });
  const kit: Kit = read.value;
  for (const limitMs of patience) {
    const end = now() + limitMs;
    const found = await chooseOrSeek(kit, { aim, signal, remainingMs: () => end - now() });
    if (signal.aborted) return;
    const isFinal = limitMs === Infinity || found.kind === 'impossible' || isProven(found);
    if (isFinal || found.kind !== 'stopped') tell({ kind: 'answer', answer: toldAnswer(kit, found) });
    if (isFinal) return;
  }
}

const isProven = (found: Awaited<ReturnType<typeof chooseOrSeek>>): boolean =>
  (found.kind === 'plan' && found.gap === null) || (found.kind === 'wanted' && found.isProven);

function readInputs(board: HeldFile, shop: HeldFile | null): ReadResult<Inputs | BoardAlone> {
  return inputsFromText(board, shop, { skipBadRows: true });
}

const toldFault = ({ file, line, key, message, remedy }: InputFault, shop: HeldFile | null): ToldFault => ({
  of: file === shop?.file ? 'shop' : 'board',
  where: key === '' ? `line ${line}` : `line ${line}, ${key}`,
  message,
  remedy,
});
