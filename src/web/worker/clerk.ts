import type { Catalogue } from '../../domain/board.js';
import type { Kit } from '../../domain/kit.js';
import { everyFeed } from '../../domain/plan.js';
import { decisiveLabels } from '../../planning/ask/decisive-labels.js';
import type { ChooseOptions } from '../../planning/choose/choose.js';
import { resolvePurchases } from '../../planning/compare/asked-supplies.js';
import { compare, type BoughtUnits } from '../../planning/compare/compare.js';
import { chooseAround, pinsInPlan, type AroundPins } from '../../planning/choose/choose-around.js';
import { explain } from '../../planning/explain/explain.js';
import { chooseOrSeek, type Wanted } from '../../planning/wanted/wanted.js';
import { webTiming } from '../../../solver/timing.js';
import { createReader, type ReadInputs } from './input-reader.js';
import type { Inquiry, News, Question, SheetOrder, ToWorker } from './messages.js';
import { keptToday, overText, rePlugged } from './re-plugging.js';
import { recorded, type Answered } from './recorded.js';
import { toldAnswer } from './told-answer.js';
import { toldFaults } from './told-faults.js';
import { toldLabels } from './told-labels.js';
import { toldChoices, wiredAsAnswered } from './told-choices.js';
import { toldPlaces } from './told-places.js';
import { toldSheet, type Shown } from './told-sheet.js';
import { toldStart } from './told-start.js';
import { toldWays } from './told-ways.js';
import { toldWhy, type Seen } from './told-why.js';
import { remarksIn, toldColumns, toldThings } from './told-shelf.js';

/** Milliseconds after which the best plan so far is told, each time from the beginning; then the search goes on to its end. */
const patience = [500, 3_000, Infinity];

type ClerkPlace = {
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
  let shown: Answered | null = null;
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
        if (!signal.aborted) shown = { question, ...one };
      };
      if (!signal.aborted) await answer(question, { tell, lay, show, readInputs, signal, now });
      tell({ kind: 'done' });
    } catch (error) {
      tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  }

  async function inquire({ about, asked: what, pedal }: Inquiry): Promise<void> {
    if (basis?.about !== about || !everyFeed(basis.plan).some((feed) => feed.pedal === pedal)) return;
    if (what === 'places') {
      post({ about, kind: 'places', pedal, places: toldPlaces(basis.kit, basis.plan, pedal) });
      return;
    }
    const { signal } = (inquired = new AbortController());
    const end = now() + whyMs;
    const texts = await toldWhy(basis, pedal, { signal, remainingMs: () => end - now() });
    if (!signal.aborted) post({ about, kind: 'why', pedal, texts });
  }

  function sheet({ about, ...order }: SheetOrder): void {
    const page = shown?.question.about === about ? toldSheet(shown, order) : null;
    if (page !== null) post({ about, kind: 'sheet', page });
  }

  return async (message) => {
    if (message.kind !== 'order' && message.kind !== 'record') inquired.abort();
    switch (message.kind) {
      case 'ask':
        return take(message.question);
      case 'inquire':
        return inquire(message.inquiry);
      case 'order':
        sheet(message.order);
        return;
      case 'record':
        if (shown?.question.about === message.shown.about) post(recorded(shown, message.shown.chosen, readInputs));
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
  const { board, shop, aim, meanings, approach } = question;
  const columns = toldColumns(shop, meanings);
  tell({ kind: 'columns', columns });
  const read = readInputs(board, shop, meanings);
  if (read.kind === 'faulty') {
    tell({ kind: 'faulty', ...toldFaults(read, shop, columns) });
    return;
  }
  const kit = read.value;
  const start = toldStart(kit.board, approach);
  tell({ kind: 'read', notes: read.notes ?? [], things: toldThings(kit, remarksIn(shop, meanings)), start });
  const isRePlug = start.approach === 'as plugged';
  const asked = question.pins.map((pin) => ({ ...pin, asked: pin.pedal }));
  const pins = isRePlug ? keptToday(kit, asked) : pinsInPlan(kit, asked);
  const search = isRePlug ? rePlugged : chosen;
  for (const limitMs of patience) {
    const end = now() + limitMs;
    const found = await search(kit, pins, { aim, signal, remainingMs: () => end - now() });
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
    await (isRePlug ? tellOver : tellMore)(shown, { aim, asked: question.asked, tell, show, signal, now });
    return;
  }
}

type Beside = Pick<Question, 'aim' | 'asked'> & Pick<Desk, 'tell' | 'show' | 'signal' | 'now'>;

/** What there is beside a final answer of how to re-plug: what planning from nothing would come to, or ways out where there is no plan. */
async function tellOver({ kit, found, pins }: Shown, { aim, tell, signal, now }: Beside): Promise<void> {
  if (found.kind === 'impossible' && pins.length === 0) await seekWays(kit, aim, { tell, signal, now });
  if (found.kind !== 'plan') return;
  const text = await overText(kit, found.wiring, { aim, signal });
  if (text !== null) tell({ kind: 'over', text });
}

/** What there is beside a final answer, where nothing is held in its place: what else could be bought, which labels decide, and ways out where there is no plan. */
async function tellMore(shown: Shown, { aim, asked, tell, show, signal, now }: Beside): Promise<void> {
  const { kit, found, pins } = shown;
  if (pins.length > 0 && found.kind !== 'impossible') return;
  const plan = found.kind === 'plan' ? found.wiring : null;
  const compared =
    kit.catalogue === null ? null : await compare(kit, { aim, signal, asked: soldOf(asked, kit.catalogue) });
  const comparison = compared === null || plan === null ? compared : wiredAsAnswered(kit, compared, plan);
  if (comparison !== null) {
    show({ ...shown, comparison });
    tell({ kind: 'choices', choices: toldChoices(kit, comparison, plan) });
  }
  if (plan !== null) show({ ...shown, comparison, labels: await askLabels(kit, { tell, signal, now }) });
  if (found.kind === 'impossible') await seekWays(kit, aim, { tell, signal, now });
}

/** What is asked for and still sold: the shop may be another one by now. */
const soldOf = (asked: Question['asked'], catalogue: Catalogue): readonly BoughtUnits[] =>
  asked.flatMap((purchase) => {
    const resolved = resolvePurchases([purchase], catalogue);
    return resolved.kind === 'purchases' ? resolved.purchases : [];
  });

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
