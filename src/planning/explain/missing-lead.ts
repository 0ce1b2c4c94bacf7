import { isFed } from '../../domain/inlet.js';
import { isLead, type Part, type PartRole } from '../../domain/part.js';
import { partId } from '../../domain/quantities.js';
import type { Bank } from '../../domain/supply.js';
import type { Effort } from '../../formulation/optimiser.js';
import { partOffers, supplyOffers } from '../../loadout/offers.js';
import { withGear } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import { ask } from '../asking/ask.js';
import type { Ways, WayOut } from './way-out.js';

/** How many questions are put at the most: with few connectors it takes far fewer. */
const mostQuestions = 40;

/**
 * Every kind of lead of which one piece more would do, that is sold nowhere or of which none is left. Where nothing leads from
 * one connector to another by itself, longer ways through what there is do no better than one straight adapter. All of
 * them are tried at once, then halves of those that help, until each stands by itself.
 */
export async function missingLeads(kit: Kit, effort: Effort): Promise<Ways> {
  const search: Search = { kit, effort, ways: [], asked: 0, whole: true };
  await seek(conceivableLeads(kit), search);
  const ways: WayOut[] = [];
  for (const way of search.ways) ways.push(await withFewestTails(way, search));
  return { ways: withoutNeedless(ways), whole: search.whole };
}

type LeadWay = WayOut & { readonly change: { readonly kind: 'lead'; readonly lead: Part } };

type Search = {
  readonly kit: Kit;
  readonly effort: Effort;
  readonly ways: LeadWay[];
  asked: number;
  whole: boolean;
};

async function seek(leads: readonly Part[], search: Search): Promise<void> {
  const [only] = leads;
  if (only === undefined) return;
  const way = await trial(leads, search);
  if (way === null) return;
  if (leads.length === 1) {
    search.ways.push({ ...way, change: { kind: 'lead', lead: only }, kit: withGear(search.kit, { parts: [only] }) });
    return;
  }
  const half = Math.ceil(leads.length / 2);
  await seek(leads.slice(0, half), search);
  await seek(leads.slice(half), search);
}

/** A plan with one piece more of each of these leads; null when there is none, or nobody knows. */
async function trial(leads: readonly Part[], search: Search): Promise<Omit<WayOut, 'change'> | null> {
  search.asked += 1;
  const kit = withGear(search.kit, { parts: leads });
  const solved =
    search.asked > mostQuestions ? ({ kind: 'stopped' } as const) : await ask(kit, { tiers: [] }, search.effort);
  if (solved.kind === 'stopped') search.whole = false;
  return solved.kind === 'plan' ? { kit, wiring: solved.wiring } : null;
}

/** A chain lead with no more tails than it takes. */
async function withFewestTails(way: LeadWay, search: Search): Promise<LeadWay> {
  let best = way;
  for (;;) {
    const { role } = best.change.lead;
    if (role.kind !== 'chain') return best;
    const used = best.wiring.feeds.filter(({ chain }) => chain === best.change.lead.id).length;
    const tails = Math.min(role.tails, Math.max(2, used)) - (used < role.tails ? 0 : 1);
    if (tails < 2) return best;
    const lead = { ...best.change.lead, role: { kind: 'chain', tails } as const };
    const found = await trial([lead], search);
    if (found === null) return best;
    best = { ...found, change: { kind: 'lead', lead } };
  }
}

/** A lead that swaps plus and minus needlessly, or changes plugs on a chain needlessly, says no more than the plain one. */
function withoutNeedless(ways: readonly WayOut[]): readonly WayOut[] {
  const leads = ways.flatMap(({ change }) => (change.kind === 'lead' ? [change.lead] : []));
  return ways.filter(({ change }) => {
    if (change.kind !== 'lead') return true;
    const { lead } = change;
    return !leads.some((other) => other !== lead && isPlainer(other, lead));
  });
}

function isPlainer(one: Part, other: Part): boolean {
  if (one.role.kind !== other.role.kind || one.fits !== other.fits) return false;
  if (one.role.kind === 'join' && other.role.kind === 'join' && one.role.mode !== other.role.mode) return false;
  if (one.role.kind === 'chain' && other.role.kind === 'chain' && one.role.tails > other.role.tails) return false;
  const changes = ({ fits, gives, reverses }: Part): number => Number(fits !== gives) + Number(reverses);
  return changes(one) < changes(other) && (one.gives === other.gives || one.gives === one.fits);
}

/** Every lead that the rules allow and the connectors of this board call for, but those that can be had anyway. */
export function conceivableLeads(kit: Kit): readonly Part[] {
  const { board } = kit;
  const banks = supplyOffers(kit).flatMap(({ supply }) => supply.banks);
  const inlets = distinct(board.pedals.map(({ inlet }) => inlet));
  const fed = supplyOffers(kit).flatMap(({ supply, owned, forSale }) =>
    isFed(supply) && owned + forSale > 0 ? [supply.source.inlet.plug] : [],
  );
  const heads = [...chainHeads(banks, inlets, kit), ...joinHeads(banks, inlets)];
  const exits = distinct([
    ...banks.map(({ plug }) => plug),
    ...partOffers(kit).flatMap(({ part }) => (part.role.kind === 'adapter' || !isLead(part) ? [] : [part.gives])),
  ]);
  const adapters = pairsOf(exits, distinct([...inlets, ...fed])).flatMap(({ fits, gives }) =>
    [false, true].map((reverses): Shape => ({ role: { kind: 'adapter' }, fits, gives, reverses })),
  );
  const endless = partOffers(kit).filter(({ forSale }) => forSale === Infinity);
  return [...adapters, ...heads]
    .filter(({ role, fits, gives, reverses }) => role.kind !== 'adapter' || fits !== gives || reverses)
    .filter((shape) => !endless.some(({ part }) => isAsGood(part, shape)))
    .map((shape, index) => ({
      ...shape,
      ...nothingSold,
      id: partId(`no-such-lead-${index + 1}`),
      name: 'one more lead',
    }));
}

type Shape = Pick<Part, 'role' | 'fits' | 'gives' | 'reverses'>;

const nothingSold = { price: null, stock: 0 } as const;

const distinct = <Value>(values: readonly Value[]): readonly Value[] => [...new Set(values)];

const pairsOf = (exits: readonly string[], inlets: readonly string[]) =>
  exits.flatMap((fits) => inlets.map((gives) => ({ fits, gives })));

/** With a tail for each pedal; how many it takes is seen later. */
function chainHeads(banks: readonly Bank[], inlets: readonly string[], { board }: Kit): readonly Shape[] {
  const tails = board.pedals.filter(({ power, alone }) => power === 'DC' && !alone).length;
  if (board.policy.chains === 'never' || tails < 2) return [];
  const plugs = distinct(banks.filter(({ power }) => power === 'DC').map(({ plug }) => plug));
  return headsOf({ kind: 'chain', tails }, plugs, inlets);
}

const joinHeads = (banks: readonly Bank[], inlets: readonly string[]): readonly Shape[] =>
  (['series', 'parallel'] as const).flatMap((mode) => {
    const plugs = banks.filter(({ joins, isolated }) => isolated && joins.includes(mode)).map(({ plug }) => plug);
    return headsOf({ kind: 'join', mode }, distinct(plugs), inlets);
  });

/** What a head gives is its own plug, or an inlet. */
const headsOf = (role: PartRole, plugs: readonly string[], inlets: readonly string[]): readonly Shape[] =>
  plugs.flatMap((fits) =>
    distinct([fits, ...inlets]).flatMap((gives) => [false, true].map((reverses) => ({ role, fits, gives, reverses }))),
  );

/** Whether a part does what the shape does. */
function isAsGood({ role, fits, gives, reverses }: Part, shape: Shape): boolean {
  if (fits !== shape.fits || gives !== shape.gives || reverses !== shape.reverses) return false;
  if (role.kind === 'chain' && shape.role.kind === 'chain') return role.tails >= shape.role.tails;
  if (role.kind === 'join' && shape.role.kind === 'join') return role.mode === shape.role.mode;
  return role.kind === shape.role.kind;
}
