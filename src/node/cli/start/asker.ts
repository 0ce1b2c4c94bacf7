/** One of several answers. */
export type Choice<Value extends string> = { readonly value: Value; readonly label: string; readonly hint?: string };

export type TextOptions = {
  /** Shown where the answer goes, until something is typed. */
  readonly example?: string;
  /** What is there already, to be taken or changed. */
  readonly initial?: string;
  /** What is wrong with an answer; null when nothing is. */
  readonly check?: (answer: string) => string | null;
};

/** How a conversation is held: on a terminal, or in a test by a script. Each question throws `Cancelled` when it is broken off. */
export type Asker = {
  readonly say: (text: string) => void;
  readonly text: (question: string, options?: TextOptions) => Promise<string>;
  readonly choose: <Value extends string>(question: string, choices: readonly Choice<Value>[]) => Promise<Value>;
  readonly confirm: (question: string, initial: boolean) => Promise<boolean>;
};

/** The person has broken the conversation off. */
export class Cancelled extends Error {}
