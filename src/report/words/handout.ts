import type { Kit } from '../../domain/kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { AskedLabel } from '../../planning/ask/decisive-labels.js';
import type { Answer } from '../../planning/answer.js';
import type { Changes } from '../../planning/rewire/changes.js';
import type { Wanted } from '../../planning/wanted/wanted.js';
import { boardEntries, type BoardEntries } from './board-entries.js';
import { changeWords, type ChangeWords } from './change-words.js';
import { evidenceText } from './evidence.js';
import { feedRows, type FeedRow } from './feed-row.js';
import { headlineOf, type Headline } from './headline.js';
import { hookupOf, type UnitHookup } from './hookup.js';
import { readAtHome, type ReadAtHome } from './read-at-home.js';
import { ownedInUse, shoppingItems, type OwnedItem, type ShoppingItem } from './purchases.js';
import {
  impossibleLead,
  impossibleTitle,
  reasonPassages,
  stoppedLead,
  stoppedPassage,
  type Passage,
} from './reasons.js';
import type { Remark } from './remark.js';
import { cautionRemarks, confirmRemarks, groundRemarks, whyLeftOut } from './remarks.js';
import { replugSteps } from './replug-steps.js';
import { rewireEvidence, rewireHeadline } from './rewire-headline.js';
import { safeText } from './safe-text.js';
import { speechOf, type Speech } from './speech.js';
import { hookupSteps, type HookupStep } from './steps.js';
import { unitUses } from './usage.js';
import { wantedItems, wantedLead, wantedPassages, wantedStanding, type WantedItem } from './wanted.js';

/** What every report is made from. */
export type ReportInput = {
  readonly kit: Kit;
  readonly answer: Answer | Wanted;
  /** Which labels decide, the most decisive first; where that was not asked, a sheet has them all alike. */
  readonly labels?: readonly AskedLabel[];
  /** For whom and when a sheet is made; nothing is said of it where this is left out. */
  readonly occasion?: Occasion;
};

/** What a sheet of paper says of itself. */
export type Occasion = {
  /** Who hands it out; null is who sells. */
  readonly shop: string | null;
  /** In words; null to leave it out. */
  readonly date: string | null;
};

/** A plan in words, sorted for a person who buys and plugs; every report to take home is made from it. */
export type PlanHandout = {
  readonly kind: 'plan';
  readonly speech: Speech;
  readonly title: string;
  readonly headline: Headline;
  readonly proven: boolean;
  readonly wiring: JudgedPlan;
  readonly shopping: readonly ShoppingItem[];
  readonly owned: readonly OwnedItem[];
  /** Pedals without power, with the reason. */
  readonly leftOut: readonly { readonly id: PedalId; readonly name: string; readonly why: string }[];
  readonly confirm: readonly Remark[];
  /** What nobody has read off a label yet, what decides most first. */
  readonly toRead: ReadAtHome;
  /** What it changes of how the board is plugged today; null of a plan that knows nothing of that. */
  readonly changes: ReplugWords | null;
  readonly hookup: readonly UnitHookup[];
  readonly rows: readonly FeedRow[];
  readonly steps: readonly HookupStep[];
  readonly grounds: readonly Remark[];
  readonly cautions: readonly Remark[];
  /** Why no plan is better; null where that is not proven. */
  readonly evidence: string | null;
};

/** A plan as a difference against today. */
export type ReplugWords = ChangeWords & {
  /** What these words are of. */
  readonly of: Changes;
  /** What to write into the board file afterwards; null where it is true as it is. */
  readonly entries: BoardEntries | null;
};

/** Why there is nothing to plug. */
export type NoPlanHandout = {
  readonly kind: 'none';
  readonly speech: Speech;
  readonly title: string;
  readonly lead: string;
  /** Whether the lead is no bad news: a proven list of what to look for. */
  readonly proven: boolean;
  readonly passages: readonly Passage[];
  /** What to look for in its place, where that is known. */
  readonly wanted: readonly WantedItem[];
};

export type Handout = PlanHandout | NoPlanHandout;

export function handoutOf({ kit, answer, labels }: ReportInput): Handout {
  const speech = speechOf(kit);
  const name = safeText(kit.board.name);
  switch (answer.kind) {
    case 'plan':
      return planHandout(speech, answer, labels);
    case 'impossible':
      return {
        kind: 'none',
        speech,
        title: `${name}: ${impossibleTitle(speech, answer.reasons)}`,
        lead: impossibleLead(speech, answer.reasons),
        proven: false,
        passages: reasonPassages(speech, answer.reasons),
        wanted: [],
      };
    case 'stopped':
      return {
        kind: 'none',
        speech,
        title: `${name}: no plan yet`,
        lead: stoppedLead,
        proven: false,
        passages: [stoppedPassage],
        wanted: [],
      };
    case 'wanted':
      return wantedHandout(answer);
  }
}

function wantedHandout(wanted: Wanted): NoPlanHandout {
  const speech = speechOf(wanted.kit);
  return {
    kind: 'none',
    speech,
    title: `${safeText(wanted.kit.board.name)}: what to look for`,
    lead: `${wantedLead(speech, wanted)} ${wantedStanding(wanted)}`,
    proven: wanted.isProven,
    passages: wantedPassages(speech, wanted),
    wanted: wantedItems(wanted),
  };
}

type Plan = Extract<Answer, { kind: 'plan' }>;

/** A plan in words, with the signs of this speech. */
export function planHandout(speech: Speech, plan: Plan, labels: readonly AskedLabel[] | null = null): PlanHandout {
  const { wiring, gap, reasons } = plan;
  const { board, inventory } = speech;
  const units = unitUses(board, inventory, wiring);
  const hookup = hookupOf(speech, units);
  const rows = feedRows(speech, hookup);
  return {
    kind: 'plan',
    speech,
    proven: gap === null,
    wiring,
    shopping: shoppingItems(speech, wiring),
    owned: ownedInUse(inventory, wiring, units),
    leftOut: wiring.unpowered.map((id) => ({
      id,
      name: inventory.pedalName(id),
      why: whyLeftOut(speech, id, reasons),
    })),
    confirm: confirmRemarks(speech, wiring),
    toRead: readAtHome(speech, wiring, labels),
    hookup,
    rows,
    grounds: groundRemarks(speech, wiring),
    cautions: cautionRemarks(speech, wiring),
    ...ownWords(speech, plan, { hookup, rows }),
  };
}

type OwnWords = Pick<PlanHandout, 'title' | 'headline' | 'changes' | 'steps' | 'evidence'>;

/** What is said of a plan to buy in one way, and of a plan to re-plug in another. */
function ownWords(speech: Speech, plan: Plan, plugs: Pick<PlanHandout, 'hookup' | 'rows'>): OwnWords {
  const { aim, wiring, gap, evidence, changes } = plan;
  const name = safeText(speech.board.name);
  if (aim !== 'moves')
    return {
      title: `${name}: how to power it`,
      headline: headlineOf(speech, aim, wiring, gap),
      changes: null,
      steps: wiring.feeds.length === 0 ? [] : hookupSteps(speech, plugs.hookup, plugs.rows),
      evidence: evidenceText(speech, aim, wiring, evidence),
    };
  if (changes === undefined) throw new RangeError('a plan for re-plugging says what it changes');
  return {
    title: `${name}: how to re-plug it`,
    headline: rewireHeadline(speech, plan, changes),
    changes: { ...changeWords(speech, wiring, changes), of: changes, entries: boardEntries(speech, wiring, changes) },
    steps: replugSteps(speech, wiring, changes, plugs.hookup),
    evidence: rewireEvidence(speech, plan),
  };
}
