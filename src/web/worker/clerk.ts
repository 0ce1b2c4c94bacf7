import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import { decisiveLabels } from '../../planning/ask/decisive-labels.js';
import { chooseOrSeek } from '../../planning/wanted/wanted.js';
import type { InputFault } from '../../reading/faults/input-fault.js';
import { webTiming } from '../../../solver/timing.js';
import type { HeldFile, Pin } from '../document/page-document.js';
import { createReader, type ReadInputs } from './input-reader.js';
import type { Inquiry, News, Question, ToldFault, ToWorker } from './messages.js';
import { toldAnswer, type Pins } from './told-answer.js';
import { toldLabels } from './told-labels.js';
import { toldPlaces } from './told-places.js';

/** Milliseconds after which the best plan so far is told, each time from the beginning; then the search goes on to its end. */
const patience = [500, 3_000, Infinity];

export type ClerkPlace = {
  readonly post: (news: News) => void;
  /** Milliseconds of a clock that only goes on. */
  readonly now: () => number;
};

/** What inquiries are answered by: the latest plan for the latest question. */
type Basis = { readonly about: number; readonly kit: Kit; readonly plan: JudgedPlan };

/** Answers questions, one at a time: whoever asks a new one does not wait for the one before any more. */
export function createClerk({ post, now }: ClerkPlace): (message: ToWorker) => Promise<void> {
  let asked = new AbortController();
  let basis: Basis | null = null;
  const readInputs = createReader();

  async function take(question: Question): Promise<void> {
    asked.abort();
    asked = new AbortController();
    const { signal } = asked;
    const { about } = question;
    const tell = (news: NewsAlone): void => {
      if (!signal.aborted) post({ about, ...news });
    };
    tell({ kind: 'begun' });
    try {
      // Whoever types is at the next key already: it is heard before the work begins.
      await webTiming.pause();
      const lay = (kit: Kit, plan: JudgedPlan): void => void (basis = { about, kit, plan });
      if (!signal.aborted) await answer(question, { tell, lay, readInputs, signal, now });
      tell({ kind: 'done' });
    } catch (error) {
      tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  }

  function inquire({ about, pedal }: Inquiry): void {
    if (basis?.about !== about || !basis.kit.board.pedals.some(({ id }) => id === pedal)) return;
    post({ about, kind: 'places', pedal, places: toldPlaces(basis.kit, basis.plan, pedal) });
  }

  return async (message) => {
    switch (message.kind) {
      case 'ask':
        return take(message.question);
      case 'inquire':
        inquire(message.inquiry);
        return;
      case 'stop':
        asked.abort();
    }
  };
}

type NewsAlone = News extends infer Each ? (Each extends News ? Omit<Each, 'about'> : never) : never;

type Desk = Pick<ClerkPlace, 'now'> & {
  readonly tell: (news: NewsAlone) => void;
  /** Makes a plan the basis of inquiries. */
  readonly lay: (kit: Kit, plan: JudgedPlan) => void;
  readonly readInputs: ReadInputs;
  readonly signal: AbortSignal;
};

async function answer(
  { board, shop, aim, pins }: Question,
  { tell, lay, readInputs, signal, now }: Desk,
): Promise<void> {
  const read = readInputs(board, shop);
  if (read.kind === 'faulty') {
    tell({ kind: 'faulty', faults: read.faults.map((fault) => toldFault(fault, shop)), more: read.more });
    return;
  }
  tell({ kind: 'read', notes: read.notes ?? [] });
  const kit = read.value;
  const options = { aim, signal, pins: pinsFor(kit, pins) };
  for (const limitMs of patience) {
    const end = now() + limitMs;
    const found = await chooseOrSeek(kit, { ...options, remainingMs: () => end - now() });
    if (signal.aborted) return;
    if (found.kind === 'plan') lay(kit, found.wiring);
    const isFinal = limitMs === Infinity || found.kind === 'impossible' || isProven(found);
    if (isFinal || found.kind !== 'stopped') tell({ kind: 'answer', answer: toldAnswer(kit, found, options.pins) });
    if (!isFinal) continue;
    if (found.kind === 'plan' && pins.length === 0) await askLabels(kit, { tell, signal, now });
    return;
  }
}

/** Milliseconds for what each label decides: beyond that it is said not to be settled. */
const labelPatience = 10_000;

async function askLabels(kit: Kit, { tell, signal, now }: Pick<Desk, 'tell' | 'signal' | 'now'>): Promise<void> {
  const end = now() + labelPatience;
  const told = toldLabels(kit, await decisiveLabels(kit, { signal, remainingMs: () => end - now() }));
  if (told !== null) tell({ kind: 'labels', labels: told });
}

/** Those of pedals and supplies that there still are. */
const pinsFor = (kit: Kit, pins: readonly Pin[]): Pins =>
  new Map(
    pins
      .filter(({ pedal, supply }) => kit.supplies.has(supply) && kit.board.pedals.some(({ id }) => id === pedal))
      .map(({ pedal, ...berth }) => [pedal, berth]),
  );

const isProven = (found: Awaited<ReturnType<typeof chooseOrSeek>>): boolean =>
  (found.kind === 'plan' && found.gap === null) || (found.kind === 'wanted' && found.isProven);

const toldFault = ({ file, line, key, message, remedy }: InputFault, shop: HeldFile | null): ToldFault => ({
  of: file === shop?.file ? 'shop' : 'board',
  where: key === '' ? `line ${line}` : `line ${line}, ${key}`,
  message,
  remedy,
});
