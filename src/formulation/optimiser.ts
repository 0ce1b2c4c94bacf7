import type { Engine } from '../../solver/engines/engine.js';
import type { Timing } from '../../solver/timing.js';
import type { Criterion } from '../domain/aim.js';
import type { Feed } from '../domain/plan.js';
import type { ProofStep } from '../domain/proof.js';
import type { Loadout } from '../loadout/loadout.js';
import type { Question } from './question.js';
import type { Workings } from './workings.js';

/** What a search may use, and how it tells how far it has come. */
export type Effort = {
  /** Looks for better plans beside a search that lasts; nobody does where it is null. No proof rests on what it says. */
  readonly engine?: Engine | null;
  /** How the search pauses and waits; by web standards when left out. */
  readonly timing?: Timing | undefined;
  /** Milliseconds that are left; Infinity is no limit. */
  readonly remainingMs: () => number;
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
  /** What earlier questions have left to begin with; nothing when left out. */
  readonly workings?: Workings | undefined;
  /** Whether to give up after so many nodes, with the first tier's value of the best plan so far, or null; never when left out. */
  readonly givesUp?: ((nodes: number, value: number | null) => boolean) | undefined;
  /** Whether the proof is to be written down; that takes more time, for nothing may be passed over. */
  readonly proof?: boolean | undefined;
};

/** Whether nobody waits any more. */
export const hasEnded = ({ signal, remainingMs }: Pick<Effort, 'signal' | 'remainingMs'>): boolean =>
  signal?.aborted === true || remainingMs() <= 0;

/** The tier that is being worked on, what has been reached in it and what cannot be beaten; null is not known yet. */
export type Progress = {
  readonly tier: Criterion | null;
  readonly value: number | null;
  readonly bound: number | null;
};

/** What a proof rests on: price tags in so many cases, also on what is limited where that counts. */
export type SearchEvidence = { readonly kind: 'tags'; readonly cases: number; readonly limits: boolean };

/** The answer to a question. */
export type SearchOutcome =
  /** No plan is better in any tier; `values` are the tiers' values. */
  | {
      readonly kind: 'proven';
      readonly feeds: readonly Feed[];
      readonly values: ReadonlyMap<Criterion, number>;
      readonly evidence: SearchEvidence;
      /** What can be written down of the proof: null where the question had to be divided, or where none was asked for. */
      readonly proof: readonly ProofStep[] | null;
    }
  | { readonly kind: 'impossible' }
  /** Time ran out or nothing could confirm the answer. */
  | {
      readonly kind: 'stopped';
      /** Plans in hand; each keeps every hard rule. */
      readonly candidates: readonly (readonly Feed[])[];
      /** The values of all tiers that the last of these plans has; null where they are not known. */
      readonly reached: ReadonlyMap<Criterion, number> | null;
      /** What is proven: the values of the tiers that are settled, in order. */
      readonly settled: ReadonlyMap<Criterion, number>;
      /** The first tier that is open and what no plan can beat in it; null when nothing is known. */
      readonly open: { readonly tier: Criterion; readonly bound: number | null } | null;
      /** Where the search got stuck before its time was over; null where it did not. */
      readonly impasse: Impasse | null;
    };

/** What is counted is whole, and yet no plan: the loadouts of which parts are used, and how many cases were told apart. */
export type Impasse = { readonly parts: readonly Loadout[]; readonly cases: number };

/** Whatever answers a question: the way in which it is put as a program can be replaced behind this. */
export type Optimiser = (question: Question, effort: Effort) => Promise<SearchOutcome>;
