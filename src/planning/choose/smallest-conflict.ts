import type { Kit } from '../../domain/kit.js';
import type { PedalId } from '../../domain/quantities.js';
import { optimise } from '../../formulation/optimise.js';
import type { Effort } from '../../formulation/optimiser.js';
import { questionOf, type Question } from '../../formulation/question.js';
import type { Reason } from '../answer.js';
import { smallestHitting } from './smallest-hitting.js';

/** How many of each pedal class. */
type Counts = readonly number[];

/** How often a smaller set is sought before the search is content with one from which no pedal can be taken away. */
const mostGuesses = 60;

/**
 * A smallest set of pedals that cannot all be powered, whichever others are left out. First pedals are taken away one by
 * one as long as the rest is still impossible; then smaller sets are ruled out by implicit hitting sets: every largest
 * plan that leaves some pedals out shows that a conflict needs one of those, and a smallest set that meets them all
 * is either a smallest conflict or shows a further plan ("Smallest MUS extraction with minimal hitting set dualization", 2015).
 * Null when all can be powered, or when the time runs out first.
 */
export async function smallestConflict(
  kit: Kit,
  effort: Effort,
): Promise<Extract<Reason, { kind: 'together' }> | null> {
  const question = questionOf(kit, { tiers: ['unpowered'], partial: true });
  const all = question.bench.classes.map(({ members }) => members.length);
  if ((await canPower(all, question, effort)) !== false) return null;
  const irreducible = await takenApart(all, question, effort);
  if (irreducible === null) return null;
  const smaller = await smallerConflict(irreducible, question, effort);
  const counts = smaller.counts;
  const pedals = namesOf(counts, question);
  return { kind: 'together', pedals, smallest: smaller.proven, message: messageOf(pedals.length) };
}

const messageOf = (pedals: number): string =>
  pedals === 1
    ? 'this pedal can only be fed in company, and nothing on the board keeps it company'
    : `each of these ${pedals} pedals can be fed, and all but any one of them, but not all at once`;

/** True or false when that is proven, null when the time ran out. */
async function canPower(required: Counts, question: Question, effort: Effort): Promise<boolean | null> {
  const outcome = await optimise({ ...requiring(required, question), tiers: [] }, effort);
  return outcome.kind === 'stopped' ? null : outcome.kind === 'proven';
}

const requiring = (required: Counts, question: Question): Question => ({
  ...question,
  required: new Map(required.entries()),
});

/** Takes pedals away as long as the rest cannot be powered. */
async function takenApart(start: Counts, question: Question, effort: Effort): Promise<Counts | null> {
  let counts = start;
  for (const index of start.keys()) {
    while ((counts[index] ?? 0) > 0) {
      const fewer = counts.with(index, (counts[index] ?? 0) - 1);
      const possible = await canPower(fewer, question, effort);
      if (possible === null) return null;
      if (possible) break;
      counts = fewer;
    }
  }
  return counts;
}

type Conflict = { readonly counts: Counts; readonly proven: boolean };

async function smallerConflict(known: Counts, question: Question, effort: Effort): Promise<Conflict> {
  const all = question.bench.classes.map(({ members }) => members.length);
  const plans: Counts[] = [];
  for (let guess = 0; guess < mostGuesses; guess += 1) {
    const candidate = await smallestHitting(all, plans, effort);
    if (candidate === null) break;
    if (sizeOf(candidate) >= sizeOf(known)) return { counts: known, proven: true };
    const powered = await largestPlan(candidate, question, effort);
    if (powered === 'none') return { counts: candidate, proven: true };
    if (powered === 'unknown') break;
    plans.push(powered);
  }
  return { counts: known, proven: false };
}

const sizeOf = (counts: Counts): number => counts.reduce((sum, count) => sum + count, 0);

/** How many pedals of each class a plan powers that powers the required ones and as many others as can be. */
async function largestPlan(required: Counts, question: Question, effort: Effort): Promise<Counts | 'none' | 'unknown'> {
  const outcome = await optimise(requiring(required, question), effort);
  if (outcome.kind === 'impossible') return 'none';
  if (outcome.kind === 'stopped') return 'unknown';
  const powered = new Set(outcome.feeds.map(({ pedal }) => pedal));
  return question.bench.classes.map(({ members }) => members.filter(({ id }) => powered.has(id)).length);
}

function namesOf(counts: Counts, { bench, board }: Question): readonly PedalId[] {
  const chosen = new Set(bench.classes.flatMap(({ members }, index) => members.slice(0, counts[index] ?? 0)));
  return board.pedals.filter((pedal) => chosen.has(pedal)).map(({ id }) => id);
}
