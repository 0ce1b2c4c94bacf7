/** One of several answers, taken by its key. */
export type Choice<Value extends string> = {
  readonly value: Value;
  /** What is typed to take it: a letter, a number or `?`. */
  readonly key: string;
  readonly label: string;
};

export type TextOptions = {
  /** What Enter alone takes. Nothing is shown as an answer that it does not take. */
  readonly initial?: string;
  /** What is typed there already, to be changed or taken. */
  readonly typed?: string;
  /** What is wrong with an answer; null when nothing is. */
  readonly check?: (answer: string) => string | null;
};

/**
 * How a conversation is held: on a terminal, or in a test by a script. Each question throws `Cancelled` when it is broken off
 * and `Back` when the one before is to be asked again.
 */
export type Asker = {
  readonly say: (text: string) => void;
  readonly text: (question: string, options?: TextOptions) => Promise<string>;
  /** Nothing is taken before a key is typed: what bears on safety is asked in this way. */
  readonly choose: <Value extends string>(question: string, choices: readonly Choice<Value>[]) => Promise<Value>;
  /** Enter alone takes `initial`. Never for what bears on safety. */
  readonly confirm: (question: string, initial: boolean) => Promise<boolean>;
};

/** The person has broken the conversation off. */
export class Cancelled extends Error {}

/** The person wants to answer the question before once more. */
export class Back extends Error {}
