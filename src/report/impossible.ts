import { minorUnits } from '../domain/quantities.js';
import type { Rule } from '../domain/rules.js';
import type { Reason, Refusal } from '../planning/answer.js';
import { block, type Piece } from './layout.js';
import { needsText } from './needs.js';
import { safeText } from './safe-text.js';
import { bullet, section, sentence, type Screen } from './screen.js';
import { capital, fullStop, listText, outputsText, priceText } from './words.js';

type PedalReason = Extract<Reason, { kind: 'pedal' }>;
type SetReason = Extract<Reason, { kind: 'together' }>;
type LimitReason = Extract<Reason, { kind: 'limit' }>;
type RequestReason = Extract<Reason, { kind: 'request' }>;

const indent = 2;

/** No plan exists: why, with the numbers, and what to do about it. */
export function impossibleText(screen: Screen, reasons: readonly Reason[]): string[] {
  const { board, paints, width } = screen;
  const pedals = reasons.filter((reason) => reason.kind === 'pedal');
  const sets = reasons.filter((reason) => reason.kind === 'together');
  const limits = reasons.filter((reason) => reason.kind === 'limit');
  const requests = reasons.filter((reason) => reason.kind === 'request');
  const headline = block(
    [
      { text: `${safeText(board.name)}: no plan exists`, paint: paints.title },
      {
        text: `${verdictText(screen, requests)} Nothing has been bought or plugged.`,
        paint: paints.bad,
      },
    ],
    width,
  );
  return [
    ...headline,
    ...section(screen, 'What you asked for', requestLines(screen, requests)),
    ...section(
      screen,
      'Nothing can feed these',
      pedals.flatMap((reason) => pedalLines(screen, reason)),
    ),
    ...section(screen, 'Never all of these at once', setLines(screen, sets)),
    ...section(screen, 'Beyond your limits', limitLines(screen, limits)),
    ...section(screen, 'What to do next', nextLines(screen, { pedals, sets, limits, requests })),
  ];
}

function verdictText({ board, catalogue }: Screen, requests: readonly RequestReason[]): string {
  if (requests.length > 0) return 'There is no plan with all that you asked for; without some of it there is one.';
  const sold = catalogue.supplies.length + catalogue.parts.length > 0;
  const pedals = board.pedals.length === 1 ? 'its one pedal' : `all ${board.pedals.length} pedals`;
  const gear = sold ? `What you own and what ${safeText(catalogue.name)} sells` : 'What you own';
  return `${gear} cannot power ${pedals} by the rules.`;
}

const requestLines = (screen: Screen, requests: readonly RequestReason[]): string[] =>
  block(
    requests.map(({ message }) => bullet(screen, fullStop(capital(sentence(screen, message))))),
    screen.width,
    indent,
  );

/** What to do without, where the requests of a reason have to go together. */
function giveUpText(screen: Screen, { requests, needed }: RequestReason): string {
  const texts = requests.map((request) => {
    switch (request.kind) {
      case 'keep':
        return `let ${screen.inventory.pedalName(request.pedal)} move`;
      case 'buy never':
        return 'allow purchases';
      case 'budget':
        return 'raise the budget';
    }
  });
  const takes = needed === null ? '' : `: a plan takes ${priceText(needed, screen.board)} at least`;
  return `${capital(listText(texts))}${takes}.`;
}

/** The pedal and what it needs, then every refusal, the nearest miss first. */
function pedalLines(screen: Screen, { pedal, refusals }: PedalReason): string[] {
  const { inventory, paints, width } = screen;
  const head: readonly Piece[] = [
    { text: inventory.pedalName(pedal), paint: paints.strong },
    { text: `needs ${needsText(screen, inventory.pedal(pedal))}`, hang: 2 },
  ];
  const misses = refusals.map((refusal, at) => bullet(screen, refusalText(screen, refusal, at === 0)));
  return [...block(head, width, indent), ...block(misses, width, indent + 2)];
}

function refusalText(screen: Screen, { rule, at, message }: Refusal, nearest: boolean): string {
  const place =
    at === null ? '' : ` at ${screen.inventory.supplyName(at.supply)} ${outputsText(at.outputs, screen.marks.dash)}`;
  return `${nearest ? 'nearest miss: ' : ''}${rule}${place}: ${sentence(screen, message)}`;
}

function setLines(screen: Screen, sets: readonly SetReason[]): string[] {
  const pieces = sets.map(({ pedals, smallest, message }) => {
    const names = listText(pedals.map(screen.inventory.pedalName));
    const least = smallest ? ' No smaller group fails.' : '';
    return bullet(screen, `${names}: ${fullStop(sentence(screen, message))}${least}`);
  });
  return block(pieces, screen.width, indent);
}

function limitLines(screen: Screen, limits: readonly LimitReason[]): string[] {
  const pieces = limits.map(({ limit, allowed, needed }) => {
    const form = (amount: number): string => limitAmount(screen, limit, amount);
    return bullet(
      screen,
      `${limitNames[limit]}: ${form(allowed)} allowed, but powering every pedal takes ${form(needed)} at least, ` +
        `${form(needed - allowed)} more.`,
    );
  });
  return block(pieces, screen.width, indent);
}

const limitNames: Readonly<Record<LimitReason['limit'], string>> = {
  budget: 'Budget',
  bricks: 'Supplies in use',
  sockets: 'Mains sockets',
};

const limitAmount = ({ board }: Screen, limit: LimitReason['limit'], amount: number): string =>
  limit === 'budget' ? priceText(minorUnits(amount), board) : String(amount);

type Sorted = {
  readonly pedals: readonly PedalReason[];
  readonly sets: readonly SetReason[];
  readonly limits: readonly LimitReason[];
  readonly requests: readonly RequestReason[];
};

function nextLines(screen: Screen, { pedals, sets, limits, requests }: Sorted): string[] {
  const { inventory, width } = screen;
  const remedied = pedals.flatMap(({ pedal, refusals }) => {
    const [nearest] = refusals;
    return nearest === undefined ? [] : [`For ${inventory.pedalName(pedal)}: ${remedies[nearest.rule]}.`];
  });
  const steps = [...requests.map((reason) => giveUpText(screen, reason)), ...remedied];
  if (sets.length > 0) steps.push('Leave out one pedal of each group above, or look for more supplies or leads.');
  for (const { limit, needed } of limits)
    steps.push(`Raise the limit (${limitNames[limit].toLowerCase()}) to ${limitAmount(screen, limit, needed)}.`);
  if (pedals.length > 0) steps.push("Check that pedal's label against the board file: a mistyped figure is common.");
  // Pedals that are to stay stay in a partial plan, too.
  if (!requests.some(({ requests: all }) => all.every(({ kind }) => kind === 'keep')))
    steps.push('Or ask for a partial plan: it powers as many pedals as can be and names those left out.');
  if (pedals.length > 0) steps.push('Never feed a pedal from an output that was refused here.');
  return block(
    steps.map((text) => bullet(screen, text)),
    width,
    indent,
  );
}

/** What lifts a refusal of this kind. */
const remedies: Readonly<Record<Rule, string>> = {
  power: 'find a supply of its own kind, AC for an AC pedal and DC for a DC pedal',
  voltage: 'find a supply with an output at its volts; no lead can make up for wrong volts',
  current: 'find a supply with a stronger output at its volts',
  startup: 'find a supply whose output stands the current of switching on',
  total: 'find a supply with a higher total, or spread the pedals over more supplies',
  setting: 'find a supply whose outputs are switched one by one',
  polarity: 'find a reversing lead that fits, or an output with a polarity switch',
  plug: 'find an adapter lead that ends in its inlet',
  ground: 'find a supply with an isolated output to spare',
  chain: 'find an output of its own, or a chain lead with more tails',
  join: 'find a supply whose maker allows the join, with the right lead',
  mains: 'find a supply that states your mains volts',
  stock: 'wait for stock, or look at another shop',
  limit: 'raise the limit that stands in the way',
};

/** The search ended before it found anything. */
export function stoppedText(screen: Screen): string[] {
  const { board, paints, width } = screen;
  return [
    ...block(
      [
        { text: `${safeText(board.name)}: no plan yet`, paint: paints.title },
        {
          text: 'The search stopped before any plan was found. That does not mean that none exists.',
          paint: paints.caution,
        },
      ],
      width,
    ),
    ...section(
      screen,
      'What to do next',
      block(
        [
          bullet(screen, 'Give it more time and run it again.'),
          bullet(screen, 'Or leave out pedals or supplies that do not come into question.'),
        ],
        width,
        indent,
      ),
    ),
  ];
}
