import { moneyText, type Currency } from '../../domain/money.js';
import type { Policy } from '../../domain/board.js';
import type { Kit } from '../../domain/kit.js';
import { factorText, minorUnits, type Factor, type PedalId } from '../../domain/quantities.js';
import type { Explanation } from '../../planning/explain/explain.js';
import type { LimitName } from '../../planning/limit-names.js';
import type { Change, WayOut } from '../../planning/explain/way-out.js';
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

export type ToldWay = {
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

function editsFor({ board: { policy, currency } }: Kit, change: Change): readonly WayEdit[] {
  switch (change.kind) {
    case 'budget':
    case 'bricks':
    case 'sockets':
      return [limitEdit(change.kind, change, currency)];
    case 'limits':
      return (['budget', 'bricks', 'sockets'] as const).flatMap((limit) => {
        const raised = change[limit];
        return raised === null ? [] : [limitEdit(limit, raised, currency)];
      });
    case 'factor':
      return [change.factor === 'guess' ? setting('guess', numberOf(change.to)) : headroomEdit(policy, change)];
    case 'chains':
      return [setting('chains', 'allow')];
    case 'pedal':
    case 'pedals':
      return change.pedals.map((pedal) => ({ kind: 'without', pedal }));
    case 'stock':
    case 'lead':
    case 'supply':
      return [];
  }
}

const setting = (key: string, value: unknown): WayEdit => ({ kind: 'set', path: ['policy', key], value });

/** A budget is in minor units; the others are counts. */
const limitEdit = (limit: LimitName, { to }: { readonly to: number }, currency: Currency): WayEdit =>
  setting(limit, limit === 'budget' ? Number(moneyText(minorUnits(to), currency)) : to);

/** The file states all three factors together. */
function headroomEdit({ headroom }: Policy, { factor, to }: Extract<Change, { kind: 'factor' }>): WayEdit {
  const as = (name: keyof typeof headroom): number => numberOf(name === factor ? to : headroom[name]);
  return setting('headroom', { alone: as('alone'), chained: as('chained'), supply: as('supply') });
}

const numberOf = (factor: Factor): number => Number(factorText(factor));
