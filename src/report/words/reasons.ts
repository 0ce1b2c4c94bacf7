import type { Feed } from '../../domain/plan.js';
import { minorUnits } from '../../domain/quantities.js';
import type { Reason, Refusal } from '../../planning/answer.js';
import type { UnownedReason } from '../../planning/choose/unowned.js';
import { describedOnlyTexts } from './described-only.js';
import { needsText } from './needs.js';
import { shoppingItems } from './purchases.js';
import { ruleWords } from './rule-words.js';
import { sentence, type Speech } from './speech.js';
import { allText, capital, fullStop, listText, outputsText, priceText } from './words.js';

type PedalReason = Extract<Reason, { kind: 'pedal' }>;
type SetReason = Extract<Reason, { kind: 'together' }>;
type LimitReason = Extract<Reason, { kind: 'limit' }>;
type RequestReason = Extract<Reason, { kind: 'request' }>;

type Sorted = {
  readonly pedals: readonly PedalReason[];
  readonly sets: readonly SetReason[];
  readonly limits: readonly LimitReason[];
  readonly requests: readonly RequestReason[];
  readonly unowned: readonly UnownedReason[];
};

/** One entry of a passage: a sentence, or something that is named first, with more below it. */
export type PassageEntry = {
  /** Stands before the text and apart from it; null where there is nothing to name. */
  readonly name: string | null;
  readonly text: string;
  readonly below: readonly string[];
};

/** A heading with entries; at least one. */
export type Passage = { readonly title: string; readonly entries: readonly PassageEntry[] };

/** What an answer without a plan is called. */
export const impossibleTitle = (speech: Speech, reasons: readonly Reason[]): string =>
  isByRequest(reasons) ? 'no plan with all that you asked for' : unpoweredTitle(speech, cheapestOf(reasons));

/** The same by the cheapest plan, where nothing but the budget is in its way. */
export const unpoweredTitle = ({ board }: Speech, cheapest: number | null): string =>
  cheapest !== null && board.policy.budget !== null ? 'no plan is within the budget' : 'no plan exists';

/** Whether without some of what was asked for there is a plan. */
const isByRequest = (reasons: readonly Reason[]): boolean => reasons.some(({ kind }) => kind === 'request');

/** What is said first when no plan exists. */
export const impossibleLead = (speech: Speech, reasons: readonly Reason[]): string =>
  `${verdictText(speech, reasons)} Nothing has been bought or plugged.`;

function verdictText(speech: Speech, reasons: readonly Reason[]): string {
  if (isByRequest(reasons)) return 'There is no plan with all that you asked for; without some of it there is one.';
  return unpoweredText(speech, cheapestOf(reasons));
}

/** What the cheapest plan costs where nothing but the budget is in its way; else null. */
function cheapestOf(reasons: readonly Reason[]): number | null {
  if (reasons.some(({ kind }) => kind === 'pedal')) return null;
  const [cheapest = null] = reasons.flatMap((reason) =>
    reason.kind === 'limit' ? (reason.cheapest?.score.money ?? []) : [],
  );
  return cheapest;
}

/** That no plan powers the board, or by how much the cheapest one is over the budget where nothing else is in the way. */
export function unpoweredText({ board, shop }: Speech, cheapest: number | null): string {
  const pedals = allText(board.pedals.length, 'pedal');
  const { budget } = board.policy;
  if (cheapest !== null && budget !== null) {
    const price = (amount: number): string => priceText(minorUnits(amount), board);
    return `${price(cheapest - budget)} over the budget: the cheapest plan for ${pedals} costs ${price(cheapest)}.`;
  }
  const gear = shop === null ? 'What you own' : `What you own and what ${shop} sells`;
  return `${gear} cannot power ${pedals} by the rules.`;
}

/** Of what no plan exists: a board, which may be asked about by a command, or one that is asked whether one more pedal fits. */
export type Asked = 'board' | 'board by command' | 'one more pedal';

/** Why no plan exists, with the numbers, and what to do about it. */
export function reasonPassages(speech: Speech, reasons: readonly Reason[], asked: Asked = 'board'): readonly Passage[] {
  const pedals = reasons.filter((reason) => reason.kind === 'pedal');
  const sets = reasons.filter((reason) => reason.kind === 'together');
  const limits = reasons.filter((reason) => reason.kind === 'limit');
  const requests = reasons.filter((reason) => reason.kind === 'request');
  const unowned = reasons.filter((reason) => reason.kind === 'unowned');
  const passages: readonly Passage[] = [
    { title: 'What you asked for', entries: requests.map((reason) => just(messageText(speech, reason))) },
    ...unowned.map((reason) => unownedPassage(speech, reason)),
    { title: 'Nothing can feed these', entries: pedals.map((reason) => pedalEntry(speech, reason)) },
    { title: 'Never all of these at once', entries: sets.map((reason) => just(setText(speech, reason))) },
    { title: 'Beyond your limits', entries: limits.map((reason) => limitEntry(speech, reason)) },
    {
      title: 'What to do next',
      entries: nextSteps(speech, { pedals, sets, limits, requests, unowned }, asked).map(just),
    },
  ];
  return passages.filter(({ entries }) => entries.length > 0);
}

/** What is said when the search ended before it found anything. */
export const stoppedLead = 'The search stopped before any plan was found. That does not mean that none exists.';

export const stoppedPassage: Passage = {
  title: 'What to do next',
  entries: ['Give it more time and ask again.', 'Or leave out pedals or supplies that do not come into question.'].map(
    (text) => ({ name: null, text, below: [] }),
  ),
};

const just = (text: string): PassageEntry => ({ name: null, text, below: [] });

const messageText = (speech: Speech, { message }: RequestReason | UnownedReason): string =>
  fullStop(capital(sentence(speech, message)));

/** That what is plugged would do, were it owned. */
export const unownedPassage = (speech: Speech, reason: UnownedReason): Passage => ({
  title: 'Not among what you own',
  entries: [just(messageText(speech, reason))],
});

/** What to do where it is there. */
export const ownText = ({ inventory }: Speech, { parts }: UnownedReason): string =>
  `If you have it: add ${listText(parts.map(inventory.partName))} to what you own, as often as it is plugged.`;

/** What to do without, where the requests of a reason have to go together. */
function giveUpText({ board, inventory }: Speech, { requests, needed }: RequestReason): string {
  const texts = requests.map((request) => {
    switch (request.kind) {
      case 'keep':
        return `let ${inventory.pedalName(request.pedal)} move`;
      case 'buy never':
        return 'allow purchases';
      case 'budget':
        return 'raise the budget';
    }
  });
  const takes = needed === null ? '' : `: a plan takes ${priceText(needed, board)} at least`;
  return `${capital(listText(texts))}${takes}.`;
}

/** The pedal and what it needs, then every refusal, the nearest miss first. */
const pedalEntry = (speech: Speech, { pedal, refusals }: PedalReason): PassageEntry => ({
  name: speech.inventory.pedalName(pedal),
  text: `needs ${needsText(speech, speech.inventory.pedal(pedal))}`,
  below: refusals.map((refusal, at) => refusalText(speech, refusal, at === 0)),
});

function refusalText(speech: Speech, { rule, at, message }: Refusal, nearest: boolean): string {
  const place =
    at === null ? '' : ` at ${speech.inventory.supplyName(at.supply)} ${outputsText(at.outputs, speech.marks.dash)}`;
  return `${nearest ? 'nearest miss: ' : ''}${rule}${place}: ${sentence(speech, message)}`;
}

function setText(speech: Speech, { pedals, smallest, message }: SetReason): string {
  const names = listText(pedals.map(speech.inventory.pedalName));
  const least = smallest ? ' No smaller group fails.' : '';
  return `${names}: ${fullStop(sentence(speech, message))}${least}`;
}

/** What is over the budget is named with its prices, and what it is for. */
function limitEntry(speech: Speech, { limit, allowed, needed, cheapest }: LimitReason): PassageEntry {
  const form = (amount: number): string => limitAmount(speech, limit, amount);
  const text =
    `${limitNames[limit]}: ${form(allowed)} allowed, but powering every pedal takes ${form(needed)} at least, ` +
    `${form(needed - allowed)} more.`;
  if (cheapest === undefined) return just(text);
  const bought = shoppingItems(speech, cheapest).map((item) => `${item.units} × ${item.text}: ${item.together}`);
  return { name: null, text, below: [...bought, poweredText(speech, cheapest.feeds)] };
}

/** "That powers Echo, and keeps a place for Tuner (label unread)." */
function poweredText({ inventory }: Speech, feeds: readonly Feed[]): string {
  const isKept = ({ pedal }: Feed): boolean => inventory.pedal(pedal).kept !== null;
  const names = (of: readonly Feed[]): string => listText(of.map(({ pedal }) => inventory.pedalName(pedal)));
  const kept = feeds.filter(isKept);
  const powered = feeds.filter((feed) => !isKept(feed));
  const does = [
    ...(powered.length === 0 ? [] : [`powers ${names(powered)}`]),
    ...(kept.length === 0 ? [] : [`keeps ${kept.length === 1 ? 'a place' : 'places'} for ${names(kept)}`]),
  ];
  return `That ${does.join(', and ')}.`;
}

const limitNames: Readonly<Record<LimitReason['limit'], string>> = {
  budget: 'Budget',
  bricks: 'Supplies in use',
  sockets: 'Mains sockets',
};

/** After "raise the". */
const limitWords: Readonly<Record<LimitReason['limit'], string>> = {
  budget: 'budget',
  bricks: 'number of supplies in use',
  sockets: 'number of mains sockets',
};

const limitAmount = ({ board }: Speech, limit: LimitReason['limit'], amount: number): string =>
  limit === 'budget' ? priceText(minorUnits(amount), board) : String(amount);

const mistypedText = (asked: Asked): string =>
  `Check that pedal's label against ${asked === 'one more pedal' ? 'what you typed' : 'the figures given'}: a mistyped figure is common.`;

/** Only a command gives a plan that leaves pedals out. */
const leaveOutTexts: Readonly<Record<Asked, readonly string[]>> = {
  board: ['Or take pedals off the board: there may be a plan for the others.'],
  'board by command': ['Or ask for a partial plan: it powers as many pedals as can be and names those left out.'],
  'one more pedal': [],
};

/** Without a shop there is no stock to wait for. */
const lookText = ({ shop }: Speech, { rule, at }: Refusal): string =>
  shop === null && rule === 'stock' && at === null ? 'find something that can feed it' : ruleWords[rule].look;

/** What else may be said of the board where sockets are limited, and nobody has said for how long a power bank must last. */
function sourcelessTexts({ shop, board: { policy } }: Speech, pedals: readonly PedalReason[]): readonly string[] {
  if (shop !== null || policy.sockets === null || policy.runtime !== null || pedals.length === 0) return [];
  return [
    'If mains sockets are what is short: say for how many hours a power bank has to last, and what to look for is told.',
  ];
}

function nextSteps(
  speech: Speech,
  { pedals, sets, limits, requests, unowned }: Sorted,
  asked: Asked,
): readonly string[] {
  const remedied = pedals.flatMap(({ pedal, refusals }) => {
    const [nearest] = refusals;
    return nearest === undefined ? [] : [`For ${speech.inventory.pedalName(pedal)}: ${lookText(speech, nearest)}.`];
  });
  const steps = [
    ...requests.map((reason) => giveUpText(speech, reason)),
    ...unowned.map((reason) => ownText(speech, reason)),
    ...describedOnlyTexts(speech),
    ...remedied,
    ...sourcelessTexts(speech, pedals),
  ];
  if (sets.length > 0) steps.push('Leave out one pedal of each group above, or look for more supplies or leads.');
  for (const { limit, needed } of limits)
    steps.push(`Raise the ${limitWords[limit]} to ${limitAmount(speech, limit, needed)}.`);
  if (pedals.length > 0) steps.push(mistypedText(asked));
  // Pedals that are to stay stay in a partial plan, too; and a plan without the new pedal is there already.
  if (!requests.some(({ requests: all }) => all.every(({ kind }) => kind === 'keep')))
    steps.push(...leaveOutTexts[asked]);
  if (pedals.length > 0) steps.push('Never feed a pedal from an output that was refused here.');
  return steps;
}
