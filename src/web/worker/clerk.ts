import type { Kit } from '../../domain/kit.js';
import { decisiveLabels } from '../../planning/ask/decisive-labels.js';
import type { ChooseOptions } from '../../planning/choose/choose.js';
import { compare } from '../../planning/compare/compare.js';
import { chooseAround, type AroundPins } from '../../planning/choose/choose-around.js';
import { explain } from '../../planning/explain/explain.js';
import { chooseOrSeek, type Wanted } from '../../planning/wanted/wanted.js';
import type { InputFault } from '../../reading/faults/input-fault.js';
import { webTiming } from '../../../solver/timing.js';
import { columnWords } from '../../report/words/column-words.js';
import type { HeldFile } from '../document/page-document.js';
import { createReader, type ReadInputs } from './input-reader.js';
import type { Inquiry, News, Question, SheetOrder, ToldFault, ToWorker } from './messages.js';
import { toldAnswer } from './told-answer.js';
import { toldLabels } from './told-labels.js';
import { toldChoices } from './told-choices.js';
import { toldPlaces } from './told-places.js';
import { toldSheet, type Shown } from './told-sheet.js';
import { toldWays } from './told-ways.js';
import { toldWhy, type Seen } from './told-why.js';
import { toldColumns, toldThings, type ToldColumns } from './told-shelf.js';

/** Milliseconds after which the best plan so far is told, each time from the beginning; then the search goes on to its end. */
const patience = [500, 3_000, Infinity];

export type ClerkPlace = {
  readonly post: (news: News) => void;
  /** Milliseconds of a clock that only goes on. */
  readonly now: () => number;
};

/** How long it is looked into why a pedal hangs where it does, in milliseconds; what is known by then is told. */
const whyMs = 8_000;

/** What inquiries are answered by: the latest plan for the latest question. */
type Basis = Seen & { readonly about: number };

/** Answers questions, one at a time: whoever asks a new one does not wait for the one before any more. */
export function createClerk({ post, now }: ClerkPlace): (message: ToWorker) => Promise<void> {
  let asked = new AbortController();
  let inquired = new AbortController();
  let basis: Basis | null = null;
  let shown: (Shown & { readonly about: number }) | null = null;
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
      const lay = (seen: Seen): void => void (basis = { about, ...seen });
      const show = (one: Shown): void => {
        if (!signal.aborted) shown = { about, ...one };
      };
      if (!signal.aborted) await answer(question, { tell, lay, show, readInputs, signal, now });
      tell({ kind: 'done' });
    } catch (error) {
      tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  }

  async function inquire({ about, asked: what, pedal }: Inquiry): Promise<void> {
    if (basis?.about !== about || !basis.plan.feeds.some((feed) => feed.pedal === pedal)) return;
    if (what === 'places') {
      post({ about, kind: 'places', pedal, places: toldPlaces(basis.kit, basis.plan, pedal) });
      return;
    }
    const { signal } = (inquired = new AbortController());
    const end = now() + whyMs;
    const texts = await toldWhy(basis, pedal, { signal, remainingMs: () => end - now() });
    if (!signal.aborted) post({ about, kind: 'why', pedal, texts });
  }

  function sheet({ about, chosen, date }: SheetOrder): void {
    const page = shown?.about === about ? toldSheet(shown, { chosen, date }) : null;
    if (page !== null) post({ about, kind: 'sheet', page });
  }

  return async (message) => {
    if (message.kind !== 'order') inquired.abort();
    switch (message.kind) {
      case 'ask':
        return take(message.question);
      case 'inquire':
        return inquire(message.inquiry);
      case 'order':
        sheet(message.order);
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
  readonly lay: (seen: Seen) => void;
  /** Makes an answer the one that a sheet is made of. */
  readonly show: (shown: Shown) => void;
  readonly readInputs: ReadInputs;
  readonly signal: AbortSignal;
};

async function answer(question: Question, { tell, lay, show, readInputs, signal, now }: Desk): Promise<void> {
  const { board, shop, aim, pins, meanings } = question;
  const columns = toldColumns(shop, meanings);
  tell({ kind: 'columns', columns });
  const read = readInputs(board, shop, meanings);
  if (read.kind === 'faulty') {
    const faults = read.faults.map((fault) => toldFault(fault, shop));
    const isAsking = faults.some((fault) => isAsked(fault, columns));
    // What else is wrong with the shop may come of what is not understood yet.
    const told = isAsking ? faults.filter(({ of }) => of === 'board') : faults;
    tell({ kind: 'faulty', faults: told, more: isAsking ? 0 : read.more });
    return;
  }
  const kit = read.value;
  tell({ kind: 'read', notes: read.notes ?? [], things: toldThings(kit) });
  for (const limitMs of patience) {
    const end = now() + limitMs;
    const found = await chosen(kit, pins, { aim, signal, remainingMs: () => end - now() });
    if (signal.aborted) return;
    const isFinal = limitMs === Infinity || isSettled(found);
    const isBest = isSettled(found) && pins.length === 0;
    if (found.kind === 'plan') lay({ kit, plan: found.wiring, aim, isBest });
    const shown: Shown = { kit, found, pins, comparison: null, labels: null };
    if (isFinal || found.kind !== 'stopped') {
      show(shown);
      tell({ kind: 'answer', answer: toldAnswer(kit, found, pins), isFinal });
    }
    if (!isFinal) continue;
    if (pins.length === 0 || found.kind === 'impossible') await tellMore(shown, { aim, tell, show, signal, now });
    return;
  }
}

/** What there is beside a final answer, where nothing is held in its place: what else could be bought, which labels decide, and ways out where there is no plan. */
async function tellMore(
  shown: Shown,
  { aim, tell, show, signal, now }: Pick<Question, 'aim'> & Pick<Desk, 'tell' | 'show' | 'signal' | 'now'>,
): Promise<void> {
  const { kit, found } = shown;
  const plan = found.kind === 'plan' ? found.wiring : null;
  const comparison = kit.catalogue === null ? null : await compare(kit, { aim, signal });
  if (comparison !== null) {
    show({ ...shown, comparison });
    tell({ kind: 'choices', choices: toldChoices(kit, comparison, plan) });
  }
  if (plan !== null) show({ ...shown, comparison, labels: await askLabels(kit, { tell, signal, now }) });
  if (found.kind === 'impossible') await seekWays(kit, aim, { tell, signal, now });
}

/** Milliseconds for why there is no plan, and what would help. */
const wayPatience = 15_000;

async function seekWays(
  kit: Kit,
  aim: Question['aim'],
  { tell, signal, now }: Pick<Desk, 'tell' | 'signal' | 'now'>,
): Promise<void> {
  const end = now() + wayPatience;
  const found = await explain(kit, { aim, signal, remainingMs: () => end - now() });
  if (found.kind === 'impossible') tell({ kind: 'ways', ways: toldWays(kit, found) });
}

/** Milliseconds for what each label decides: beyond that it is said not to be settled. */
const labelPatience = 10_000;

/** Null where there is nothing that they could decide. */
async function askLabels(
  kit: Kit,
  { tell, signal, now }: Pick<Desk, 'tell' | 'signal' | 'now'>,
): Promise<Shown['labels']> {
  const end = now() + labelPatience;
  const found = await decisiveLabels(kit, { signal, remainingMs: () => end - now() });
  const told = toldLabels(kit, found);
  if (told !== null) tell({ kind: 'labels', labels: told });
  return found.kind === 'labels' ? found.labels : null;
}

/** Around the pins, where there are any; without a shop, what to look for where there is no plan. */
async function chosen(kit: Kit, pins: Question['pins'], options: ChooseOptions): Promise<AroundPins | Wanted> {
  const found = pins.length === 0 ? null : await chooseAround(kit, pins, options);
  const isToSeek = found === null || (found.kind === 'impossible' && kit.catalogue === null);
  return isToSeek ? chooseOrSeek(kit, options) : found;
}

/** Whether more time would change nothing. */
function isSettled(found: AroundPins | Wanted): boolean {
  switch (found.kind) {
    case 'plan':
      return found.gap === null;
    case 'wanted':
      return found.isProven;
    case 'impossible':
      return true;
    case 'held up':
      return found.letGo.length > 0;
    case 'stopped':
      return false;
  }
}

/** What a column holds is asked where the shop is shown; what no column holds may yet be in one of these. */
function isAsked({ of, key }: ToldFault, columns: ToldColumns | null): boolean {
  if (of !== 'shop' || columns === null) return false;
  const open = columns.columns.filter(({ meaning }) => meaning === null);
  return open.some(({ heading }) => heading === key) || (open.length > 0 && Object.hasOwn(columnWords, key));
}

const toldFault = ({ file, line, key, message, remedy }: InputFault, shop: HeldFile | null): ToldFault => ({
  of: file === shop?.file ? 'shop' : 'board',
  key,
  where: key === '' ? `line ${line}` : `line ${line}, ${key}`,
  message,
  remedy,
});
