import type { Solve } from './measure.js';
import { shapeText } from './shapes.js';
import { exactly, type Sample } from './statistics.js';
import type { TableColumn } from './table.js';

export const left = (title: string): TableColumn => ({ title, align: 'left' });
export const right = (title: string): TableColumn => ({ title, align: 'right' });

/** A time in whole milliseconds, or tenths below ten; one that was cut off has a `>` before it. */
export function timeText({ ms, atLeast }: Sample): string {
  return `${atLeast ? '>' : ''}${ms.toFixed(ms < 10 ? 1 : 0)}`;
}

/** Memory in millions of bytes. */
export const megabytesText = (bytes: number): string => (bytes / 1e6).toFixed(0);

/** What counts for a solve: its time if it has a proof that stands, else the cap and that it would have taken longer. */
export const sampleOf = ({ verdict, elapsedMs, capMs }: Pick<Solve, 'verdict' | 'elapsedMs' | 'capMs'>): Sample =>
  verdict.kind === 'proven' ? exactly(elapsedMs) : { ms: capMs, atLeast: true };

/** How many of the solves are proven, and how many are wrong where any is. */
export function provenText(group: readonly Pick<Solve, 'verdict'>[]): string {
  const proven = group.filter(({ verdict }) => verdict.kind === 'proven').length;
  const wrong = group.filter(({ verdict }) => verdict.kind === 'wrong').length;
  return `${proven}/${group.length}${wrong > 0 ? `, ${wrong} WRONG` : ''}`;
}

/** How many of the proofs rest on tags alone. */
export const tagsText = (group: readonly Pick<Solve, 'proofBy'>[]): string =>
  String(group.filter(({ proofBy }) => proofBy === 'tags').length);

/** A ratio to a time that was cut off is an upper bound, one of a time that was cut off a lower bound. */
export function ratioText(time: Sample, reference: Sample | null): string {
  if (reference === null || (time.atLeast && reference.atLeast)) return '?';
  const ratio = time.ms / reference.ms;
  return `${time.atLeast ? '>' : ''}${reference.atLeast ? '<' : ''}${ratio.toFixed(ratio < 10 ? 2 : 0)}`;
}

/** One line for each solve without a proof that stands: what is wrong with it, or when it gave up. */
export function failuresText(solves: readonly Solve[]): string {
  const lines = solves.flatMap(({ shape, set, verdict, elapsedMs, capMs }) => {
    const who = `${shapeText(shape)}, ${set}`;
    if (verdict.kind === 'proven') return [];
    if (verdict.kind === 'wrong') return [`WRONG: ${who}: ${verdict.fault}`];
    const when = `after ${Math.round(elapsedMs)} ms${elapsedMs < capMs ? ', before its time was up' : ''}`;
    return [`not proven: ${who}: ${verdict.score === null ? 'no plan' : 'a plan without a proof'} ${when}`];
  });
  return lines.join('\n');
}

/** What the tables' words mean. */
export const searchLegend = [
  'loadouts: the search as users get it.',
  'by tags: of the proofs those that loadouts reached; the rest is the compact program’s.',
].join('\n');
export const ratioLegend =
  '× loadouts: this search’s time ÷ that of loadouts; > and < where one of the two was cut off, ? where both were.';
