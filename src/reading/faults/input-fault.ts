import type { Path } from '../../domain/finding.js';
import { escapedText } from '../../domain/shown-text.js';

/** One thing that is wrong with an input file. */
export type InputFault = {
  /** The file as it was named by whoever asked for it. */
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 units. */
  readonly column: number;
  /** The keys and list indices from the root, such as `pedals[2].volts`; empty for the file as a whole. */
  readonly key: string;
  /** What was found and what is allowed. Text from the file is escaped. */
  readonly message: string;
  /** How to mend it. */
  readonly remedy: string;
};

/** What was read, or what is wrong with it. */
export type ReadResult<Value> =
  | { readonly kind: 'read'; readonly value: Value }
  | {
      readonly kind: 'faulty';
      /** By file and position; at least one and at most 20. */
      readonly faults: readonly InputFault[];
      /** How many more there are. */
      readonly more: number;
    };

/** A fault as one line for a terminal: `board.yaml:12:5 pedals[2].volts is "9V"; … Write 9.` */
export function faultText(fault: InputFault): string {
  const place = `${fault.file}:${fault.line}:${fault.column}`;
  const subject = fault.key === '' ? '' : ` ${fault.key}`;
  return escapedText(`${place}${subject}: ${fault.message} ${fault.remedy}`);
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
