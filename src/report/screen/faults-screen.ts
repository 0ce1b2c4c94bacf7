import picocolors from 'picocolors';

import { escapedText } from '../../domain/shown-text.js';
import {
  alikeText,
  faultHead,
  type Excerpt,
  type InputFault,
  type ReadResult,
} from '../../reading/faults/input-fault.js';
import { block, widthOf, type Paint } from './layout.js';
import type { ScreenOptions } from './screen.js';

export type Faulty = Extract<ReadResult<unknown>, { kind: 'faulty' }>;

/** What is wrong with files: each fault with the line that it stands in and how to mend it, and how many there are. */
export function faultsText(files: readonly Faulty[], options: ScreenOptions): string {
  const { bold, red, cyan } = picocolors.createColors(options.colour);
  const paints: Paints = { head: bold, mark: red, remedy: cyan };
  const lines = files.flatMap(({ faults }) => faults.flatMap((fault) => faultLines(fault, paints, options)));
  const hint = files.some(({ canSkipRows }) => canSkipRows === true) ? [{ text: skipHint }] : [];
  return [...lines, ...block([{ text: countText(files), paint: bold }, ...hint], options.width), ''].join('\n');
}

const skipHint = 'Add --skip-bad-rows to leave out the rows that have faults; each is then named.';

type Paints = { readonly head: Paint; readonly mark: Paint; readonly remedy: Paint };

function faultLines(fault: InputFault, paints: Paints, options: ScreenOptions): readonly string[] {
  const { excerpt, line, remedy } = fault;
  const alike = alikeText(fault);
  // A near spelling says it all: whoever searches a log by line finds it beside what is wrong.
  const isShort = remedy.startsWith('Did you mean');
  const head = isShort ? `${faultHead(fault)} ${escapedText(remedy)}` : faultHead(fault);
  const below = isShort ? [] : [{ text: escapedText(remedy), paint: paints.remedy }];
  return [
    ...block([{ text: head, hang: 2, paint: paints.head }], options.width),
    ...(excerpt === undefined ? [] : excerptLines(excerpt, line, paints, options)),
    ...block([...below, ...(alike === null ? [] : [{ text: alike }])], options.width, 2),
  ];
}

/** The line, and signs under what is meant in it. It is cut to the screen on the side where more is left. */
function excerptLines(
  excerpt: Excerpt,
  line: number,
  { mark }: Paints,
  { width, unicode }: ScreenOptions,
): readonly string[] {
  const gutter = `  ${String(line).padStart(4)} | `;
  const room = Math.min(width, mostWidth) - gutter.length;
  const { before, marked, after } = cut(excerpt, room, unicode === false ? '...' : '…');
  const under = `${' '.repeat(gutter.length - 2)}| ${' '.repeat(widthOf(before))}`;
  return [`${gutter}${before}${marked}${after}`.trimEnd(), `${under}${mark('^'.repeat(Math.max(1, widthOf(marked))))}`];
}

/** Longer lines are hard to read. */
const mostWidth = 132;

function cut(excerpt: Excerpt, room: number, more: string): Excerpt {
  const before = shown(excerpt.before);
  const marked = shown(excerpt.marked).slice(0, Math.max(1, room - 2 * more.length));
  const after = shown(excerpt.after);
  const spare = Math.max(0, room - marked.length);
  // What comes before says more of where one is; what comes after has a third of the line at the least, if it needs it.
  const behind = Math.min(after.length, Math.max(Math.floor(spare / 3), spare - before.length));
  const ahead = spare - behind;
  return {
    before:
      before.length <= ahead ? before : `${more}${before.slice(before.length - Math.max(0, ahead - more.length))}`,
    marked,
    after: after.length <= behind ? after : `${after.slice(0, Math.max(0, behind - more.length))}${more}`,
  };
}

/** Tabs would shift what stands below them. */
const shown = (text: string): string => escapedText(text.replaceAll('\t', ' '));

/** "3 faults in board.yaml"; of those that one cause has in several places each counts. */
function countText(files: readonly Faulty[]): string {
  const counts = new Map<string, number>();
  for (const { faults, more } of files) {
    for (const { file, alike = [] } of faults) counts.set(file, (counts.get(file) ?? 0) + 1 + alike.length);
    const last = faults.at(-1)?.file;
    if (last !== undefined && more > 0) counts.set(last, (counts.get(last) ?? 0) + more);
  }
  const told = files.reduce((sum, { more }) => sum + more, 0);
  const pieces = [...counts].map(
    ([file, count]) => `${count} ${count === 1 ? 'fault' : 'faults'} in ${escapedText(file)}`,
  );
  return `${pieces.join(', ')}${told > 0 ? `; ${told} of them not shown` : ''}.`;
}
