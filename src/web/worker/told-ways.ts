import { moneyText, type Currency } from '../../domain/money.js';
import type { Policy } from '../../domain/board.js';
import type { Kit } from '../../domain/kit.js';
import { isLead } from '../../domain/part.js';
import { factorText, minorUnits, type Factor, type PedalId } from '../../domain/quantities.js';
import type { Explanation } from '../../planning/explain/explain.js';
import { limitNames, type LimitName } from '../../planning/limit-names.js';
import type { Change, UnownedPart, WayOut } from '../../planning/explain/way-out.js';
import type { KeyPath } from '../../reading/drafts/set-value.js';
import { alikeArguments } from '../../report/words/explain-alike.js';
import { argumentTexts } from '../../report/words/explain-argument.js';
import { changeText, planText } from '../../report/words/explain-ways.js';
import { sentence, speechOf, type Speech } from '../../report/words/speech.js';

/** Why there is no plan, and what would help. */
export type ToldWays = {
  /** Each conflict in sentences, the conclusion last. */
  readonly conflicts: readonly (readonly string[])[];
  readonly ways: readonly ToldWay[];
};

type ToldWay = {
  /** What to change, in a sentence. */
  readonly change: string;
  /** What the plan then comes to. */
  readonly plan: string;
  /** How the board is changed; none where it takes a thing that is not there. */
  readonly edits: readonly WayEdit[];
};

export type WayEdit =
  | { readonly kind: 'set'; readonly path: KeyPath; readonly value: unknown }
  | { readonly kind: 'without'; readonly pedal: PedalId };

export function toldWays(kit: Kit, { conflicts, ways }: Extract<Explanation, { kind: 'impossible' }>): ToldWays {
  const speech = speechOf(kit);
  const spoken = (text: string): string => sentence(speech, text);
  return {
    conflicts: alikeArguments(conflicts).map(({ argument }) => argumentTexts(speech, argument).map(spoken)),
    ways: ways.flatMap((way) => eachPedal(way)).map((way) => toldWay(speech, kit, way)),
  };
}

/** Any one of several pedals may be left out: each is a way of its own. */
const eachPedal = (way: WayOut): readonly WayOut[] =>
  way.change.kind === 'pedal'
    ? way.change.pedals.map((pedal) => ({ ...way, change: { kind: 'pedal', pedals: [pedal] } }))
    : [way];

const toldWay = (speech: Speech, kit: Kit, way: WayOut): ToldWay => ({
  change: sentence(speech, changeText(speech, way.change)),
  plan: sentence(speech, planText(speech, way)),
  edits: editsFor(kit, way.change),
});

const editsFor = (kit: Kit, change: Change): readonly WayEdit[] =>
  (edits[change.kind] as (kit: Kit, change: Change) => readonly WayEdit[])(kit, change);

type Edits<Kind extends Change['kind']> = (
  kit: Kit,
  change: Extract<Change, { readonly kind: Kind }>,
) => readonly WayEdit[];

const whatIsNotThere = (): readonly WayEdit[] => [];

const edits: { readonly [Kind in Change['kind']]: Edits<Kind> } = {
  budget: ({ board }, change) => [limitEdit('budget', change, board.currency)],
  bricks: ({ board }, change) => [limitEdit('bricks', change, board.currency)],
  sockets: ({ board }, change) => [limitEdit('sockets', change, board.currency)],
  limits: ({ board }, change) =>
    limitNames.flatMap((limit) => {
      const raised = change[limit];
      return raised === null ? [] : [limitEdit(limit, raised, board.currency)];
    }),
  factor: ({ board }, change) => [
    change.factor === 'guess' ? setting('guess', numberOf(change.to)) : headroomEdit(board.policy, change),
  ],
  hours: ({ board }, change) => [hoursEdit(board.policy, change)],
  chains: () => [setting('chains', 'allow')],
  pedal: (_, { pedals }) => pedals.map((pedal) => ({ kind: 'without', pedal })),
  pedals: (_, { pedals }) => pedals.map((pedal) => ({ kind: 'without', pedal })),
  unowned: (kit, { parts }) => [
    { kind: 'set', path: ['owned', 'parts'], value: { ...ownedLeads(kit), ...unitsById(parts) } },
  ],
  stock: whatIsNotThere,
  lead: whatIsNotThere,
  supply: whatIsNotThere,
  inlet: whatIsNotThere,
  battery: whatIsNotThere,
};

const unitsById = (parts: readonly UnownedPart[]) => Object.fromEntries(parts.map(({ id, units }) => [id, units]));

/** Owned batteries stand in a list of their own. */
const ownedLeads = ({ board: { owned }, parts }: Kit) =>
  unitsById(
    [...owned.parts].flatMap(([id, units]) => {
      const part = parts.get(id);
      return part !== undefined && isLead(part) ? [{ id, units }] : [];
    }),
  );

const setting = (key: string, value: unknown): WayEdit => ({ kind: 'set', path: ['policy', key], value });

/** A budget is in minor units; the others are counts. */
const limitEdit = (limit: LimitName, { to }: { readonly to: number }, currency: Currency): WayEdit =>
  setting(limit, limit === 'budget' ? Number(moneyText(minorUnits(to), currency)) : to);

/** The file states all three factors together. */
function headroomEdit({ headroom }: Policy, { factor, to }: Extract<Change, { kind: 'factor' }>): WayEdit {
  const as = (name: keyof typeof headroom): number => numberOf(name === factor ? to : headroom[name]);
  return setting('headroom', { alone: as('alone'), chained: as('chained'), supply: as('supply') });
}

function hoursEdit({ runtime, batteries }: Policy, { of, to }: Extract<Change, { kind: 'hours' }>): WayEdit {
  if (of === 'bank')
    return setting('runtime', { hours: numberOf(to), ...(runtime !== null && { usable: numberOf(runtime.usable) }) });
  return setting('batteries', { change: numberOf(to), ...(batteries !== null && { pay: numberOf(batteries.pay) }) });
}

const numberOf = (factor: Factor): number => Number(factorText(factor));
