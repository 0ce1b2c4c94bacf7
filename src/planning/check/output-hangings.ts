import { isOwn, type Kit } from '../../domain/kit.js';
import type { WiredFeed } from '../../domain/board.js';
import type { Part } from '../../domain/part.js';
import type { Pedal } from '../../domain/pedal.js';
import type { Millivolts, PartId } from '../../domain/quantities.js';
import { addBills, adapterShapes, availabilityOf, compareBills, noBill, piecesOf, type Bill } from './lead-pieces.js';
import { cheapestWays, type OutputExit } from './lead-ways.js';
import type { OutputQuestion, OutputSetup } from './output-setup.js';
import { behind } from '../today/wired-polarities.js';

/** One way to hang the pedal on the output, with what hangs there already, and what its leads cost. */
export type Hanging = { readonly wired: readonly WiredFeed[]; readonly bill: Bill };

/** The output as it is set, and what it offers at its plug. */
type SetOutput = { readonly millivolts: Millivolts; readonly exit: OutputExit };

/**
 * The ways worth trying, at least one. By itself the pedal takes the cheapest leads. In company all pedals of the output share
 * a chain lead: the one that is there, with nothing else changed, or the cheapest of every kind.
 */
export function hangingsOn(
  setup: OutputSetup,
  question: OutputQuestion,
  output: SetOutput,
  kit: Kit,
): readonly Hanging[] {
  const { company, others } = setup;
  const newcomer = pedalsOf(setup, [question.pedal]);
  const everyone = pedalsOf(setup, [question.pedal, ...company.map(({ pedal }) => pedal)]);
  const hang = (head: Part | null, pedals: readonly Pedal[], kept: readonly WiredFeed[]): Hanging => {
    const available = availabilityOf(setup.board.owned, [...others, ...kept]);
    const shapes = adapterShapes(kit, available, 2 * pedals.length);
    const exit = { plug: head?.gives ?? output.exit.plug, polarity: behind(output.exit.polarity, idsOf(head), kit) };
    const ways = cheapestWays(exit, pedals, shapes);
    const hung = pedals.map(({ id }, at) => wiredOn(question, output, id, head, ways.adapters[at] ?? []));
    const moved = kept.map((wired) => ({ ...wired, millivolts: output.millivolts }));
    const [piece] = head === null || kept.length > 0 ? [] : piecesOf(head, available(head), 1);
    return { wired: [...hung, ...moved], bill: addBills(piece?.bill ?? noBill, ways.bill) };
  };
  // What a pedal came with goes in as it is.
  if (isOwn(kit, question.supply))
    return [{ wired: [...company, wiredOn(question, output, question.pedal, null, [])], bill: noBill }];
  if (company.length === 0) return [hang(null, newcomer, [])];
  const present = presentHead(company, kit);
  return [
    ...(present === null ? [] : [hang(present, newcomer, company)]),
    ...chainHeads(setup, everyone.length, output.exit, kit).map((head) => hang(head, everyone, [])),
  ];
}

const idsOf = (head: Part | null): readonly PartId[] => (head === null ? [] : [head.id]);

const pedalsOf = ({ board }: OutputSetup, ids: readonly Pedal['id'][]): readonly Pedal[] =>
  board.pedals.filter(({ id }) => ids.includes(id));

const wiredOn = (
  { supply, unit, output }: OutputQuestion,
  { millivolts }: SetOutput,
  pedal: Pedal['id'],
  head: Part | null,
  adapters: readonly PartId[],
): WiredFeed => ({
  pedal,
  supply,
  unit,
  outputs: [output],
  millivolts,
  join: null,
  chain: head?.id ?? null,
  adapters,
});

/** The chain lead that all pedals on the output share already; null when there is none. */
function presentHead(company: readonly WiredFeed[], { parts }: Kit): Part | null {
  const [chain, ...others] = new Set(company.map((wired) => wired.chain));
  return chain === null || chain === undefined || others.length > 0 ? null : (parts.get(chain) ?? null);
}

/** The cheapest chain lead of every kind that fits and has a tail for each pedal; where there is none, the best miss. */
function chainHeads(
  { board, others }: OutputSetup,
  pedals: number,
  { plug }: OutputExit,
  { parts }: Kit,
): readonly (Part | null)[] {
  const available = availabilityOf(board.owned, others);
  const fitting = [...parts.values()].flatMap((part) => {
    const { role } = part;
    const [piece] = piecesOf(part, available(part), 1);
    return role.kind === 'chain' && part.fits === plug && piece !== undefined
      ? [{ part, tails: role.tails, bill: piece.bill }]
      : [];
  });
  const cheapest = new Map<string, (typeof fitting)[number]>();
  for (const head of fitting.filter(({ tails }) => tails >= pedals)) {
    const kind = JSON.stringify([head.part.gives, head.part.reverses]);
    const known = cheapest.get(kind);
    if (known === undefined || compareBills(head.bill, known.bill) < 0) cheapest.set(kind, head);
  }
  if (cheapest.size > 0) return [...cheapest.values()].map(({ part }) => part);
  const most = fitting.reduce<(typeof fitting)[number] | null>(
    (best, head) => (best === null || head.tails > best.tails ? head : best),
    null,
  );
  return [most?.part ?? null];
}
