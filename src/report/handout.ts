import type { Board, Catalogue } from '../domain/board.js';
import type { Wiring } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import type { Answer } from '../planning/answer.js';
import { evidenceText } from './evidence.js';
import { feedRows, type FeedRow } from './feed-row.js';
import { headlineOf, type Headline } from './headline.js';
import { hookupOf, type UnitHookup } from './hookup.js';
import { ownedInUse, shoppingItems, type OwnedItem, type ShoppingItem } from './purchases.js';
import { impossibleLead, reasonPassages, stoppedLead, stoppedPassage, type Passage } from './reasons.js';
import type { Remark } from './remark.js';
import { cautionRemarks, confirmRemarks, groundRemarks, whyLeftOut } from './remarks.js';
import { safeText } from './safe-text.js';
import { speechOf, type Speech } from './screen.js';
import { hookupSteps, type Step } from './steps.js';
import { unitUses } from './usage.js';

/** What every report is made from. */
export type ReportInput = { readonly board: Board; readonly catalogue: Catalogue; readonly answer: Answer };

/** A plan in words, sorted for a person who buys and plugs; every report to take home is made from it. */
export type PlanHandout = {
  readonly kind: 'plan';
  readonly speech: Speech;
  readonly title: string;
  readonly headline: Headline;
  readonly proven: boolean;
  readonly wiring: Wiring;
  readonly shopping: readonly ShoppingItem[];
  readonly owned: readonly OwnedItem[];
  /** Pedals without power, with the reason. */
  readonly leftOut: readonly { readonly id: PedalId; readonly name: string; readonly why: string }[];
  readonly confirm: readonly Remark[];
  readonly hookup: readonly UnitHookup[];
  readonly rows: readonly FeedRow[];
  readonly steps: readonly Step[];
  readonly grounds: readonly Remark[];
  readonly cautions: readonly Remark[];
  /** Why no plan is better; null where that is not proven. */
  readonly evidence: string | null;
};

/** Why there is nothing to plug. */
export type NoPlanHandout = {
  readonly kind: 'none';
  readonly speech: Speech;
  readonly title: string;
  readonly lead: string;
  readonly passages: readonly Passage[];
};

export type Handout = PlanHandout | NoPlanHandout;

export function handoutOf({ board, catalogue, answer }: ReportInput): Handout {
  const speech = speechOf(board, catalogue);
  const name = safeText(board.name);
  switch (answer.kind) {
    case 'plan':
      return planHandout(speech, `${name}: how to power it`, answer);
    case 'impossible':
      return {
        kind: 'none',
        speech,
        title: `${name}: no plan exists`,
        lead: impossibleLead(speech, answer.reasons),
        passages: reasonPassages(speech, answer.reasons),
      };
    case 'stopped':
      return { kind: 'none', speech, title: `${name}: no plan yet`, lead: stoppedLead, passages: [stoppedPassage] };
  }
}

function planHandout(
  speech: Speech,
  title: string,
  { aim, wiring, gap, reasons, evidence }: Extract<Answer, { kind: 'plan' }>,
): PlanHandout {
  if (aim === 'moves') throw new RangeError('a plan for re-plugging has no report yet');
  const { board, inventory } = speech;
  const units = unitUses(board, inventory, wiring);
  const hookup = hookupOf(inventory, units);
  const rows = feedRows(speech, hookup);
  return {
    kind: 'plan',
    speech,
    title,
    headline: headlineOf(speech, aim, wiring, gap),
    proven: gap === null,
    wiring,
    shopping: shoppingItems(inventory, wiring),
    owned: ownedInUse(inventory, wiring, units),
    leftOut: wiring.unpowered.map((id) => ({
      id,
      name: inventory.pedalName(id),
      why: whyLeftOut(speech, id, reasons),
    })),
    confirm: confirmRemarks(speech, wiring),
    hookup,
    rows,
    steps: wiring.feeds.length === 0 ? [] : hookupSteps(speech, hookup, rows),
    grounds: groundRemarks(speech, wiring),
    cautions: cautionRemarks(speech, wiring),
    evidence: evidenceText(speech, aim, wiring, evidence),
  };
}
