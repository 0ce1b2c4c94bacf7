import type { MinorUnits, PartId } from './quantities.js';
import type { JoinMode } from './supply.js';

/** An adapter changes plug or polarity, a chain lead feeds several pedals, a join lead joins two outputs. */
export type PartRole =
  | { readonly kind: 'adapter' }
  | { readonly kind: 'chain'; readonly tails: number }
  | { readonly kind: 'join'; readonly mode: JoinMode };

export type Part = {
  readonly id: PartId;
  readonly name: string;
  /** The price of one; null for gear that is not for sale. */
  readonly price: MinorUnits | null;
  /** How many can be bought; null is no limit. Gear has 0. */
  readonly stock: number | null;
  /** The plug that goes into it. */
  readonly fits: string;
  /** The plug that it offers. */
  readonly gives: string;
  /** It swaps plus and minus. */
  readonly reverses: boolean;
  readonly role: PartRole;
};
