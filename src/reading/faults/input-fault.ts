import type { Path } from '../../domain/finding.js';
import { escapedText } from '../../domain/shown-text.js';

/** One thing that is wrong with an input file, or one cause of several. */
export type InputFault = {
  /** The file as it was named by whoever asked for it. */
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 units. */
  readonly column: number;
  /**
   * The keys and list indices from the root, such as `pedals[2].volts`; in a table the name of the row and the heading, such
   * as `Echo, Voltage`, and the heading alone where several rows have the same fault. Empty for the file as a whole.
   */
  readonly key: string;
  /** What was found and what is allowed. Text from the file is escaped. */
  readonly message: string;
  /** How to mend it. */
  readonly remedy: string;
  /** Where else the same is wrong, in the order of the file; absent when nowhere. */
  readonly alike?: readonly FaultPlace[];
  /** The line that it stands in; absent where it concerns a file of which no line is at hand. */
  readonly excerpt?: Excerpt;
};

/** A further place of a fault. */
type FaultPlace = {
  /** From 1. */
  readonly line: number;
  /** As `key` of a fault that stands alone. */
  readonly key: string;
  /** What the row of a table calls itself; null where there is no such name. */
  readonly name: string | null;
};

/** A piece of a line, in three: what is meant, and what stands on both sides of it. Cut where the line is long. */
export type Excerpt = { readonly before: string; readonly marked: string; readonly after: string };

/** What was read, or what is wrong with it. */
export type ReadResult<Value> =
  | {
      readonly kind: 'read';
      readonly value: Value;
      /** A sentence for each thing that was left aside on the way; absent when nothing was. */
      readonly notes?: readonly string[];
    }
  | {
      readonly kind: 'faulty';
      /** By file and position; at least one and at most 20. */
      readonly faults: readonly InputFault[];
      /** How many more there are. */
      readonly more: number;
      /** Present when a table would be of use without its rows that have faults. */
      readonly canSkipRows?: true;
    };

/** A fault as one line for a terminal: `board.yaml:12:5 pedals[2].volts: found "9V"; … Write 9.` */
export function faultText(fault: InputFault): string {
  const alike = alikeText(fault);
  return escapedText(`${faultHead(fault)} ${fault.remedy}${alike === null ? '' : ` ${alike}`}`);
}

/** Where it is and what it is, without how to mend it. */
export function faultHead({ file, line, column, key, message }: InputFault): string {
  return escapedText(`${file}:${line}:${column}${key === '' ? '' : ` ${key}`}: ${message}`);
}

/** The most places that a message lists. */
const mostListed = 12;

/** How often and where the same is wrong: `The same on 3 more lines: 5, 7, 9.` Null when nowhere. */
export function alikeText({ line, alike = [] }: InputFault): string | null {
  if (alike.length === 0) return null;
  const [what, places] = placesOf(line, alike);
  const shown = places.slice(0, mostListed);
  const rest = places.length - shown.length;
  const list = rest > 0 ? `${shown.join(', ')} and ${rest} more` : shown.join(', ');
  return escapedText(`The same ${what}${places.length > 1 ? 's' : ''}: ${list}.`);
}

/** Rows by their names, else lines, else keys where several stand on one line. */
function placesOf(first: number, alike: readonly FaultPlace[]): readonly [string, readonly string[]] {
  const count = alike.length;
  if (alike.some(({ name }) => name !== null))
    return [`in ${count} more row`, alike.map(({ line, name }) => `${name ?? 'one without a name'} (line ${line})`)];
  const lines = new Set([first, ...alike.map(({ line }) => line)]);
  return lines.size === count + 1
    ? [`on ${count} more line`, alike.map(({ line }) => String(line))]
    : [`in ${count} more place`, alike.map(({ key }) => key)];
}

/** A path as it is read: `pedals[2].volts`; a key that is no plain word is quoted, as in `milliamps["9 V"]`. */
export function keyText(path: Path): string {
  let text = '';
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else if (/^[\p{L}\p{N}_-]{1,60}$/u.test(step)) text += text === '' ? step : `.${step}`;
    else text += `["${escapedText(step.slice(0, 60))}"]`;
  }
  return text;
}
