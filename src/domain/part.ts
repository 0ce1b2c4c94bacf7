import type { MicroampHours, Millivolts, MinorUnits, PartId } from './quantities.js';
import type { JoinMode } from './supply.js';

/**
 * An adapter changes plug or polarity, a chain lead feeds several pedals, a join lead joins two outputs. A battery is bought
 * by the piece as leads are, and is none: it has no plugs, for which its id stands.
 */
export type PartRole =
  | { readonly kind: 'adapter' }
  | { readonly kind: 'chain'; readonly tails: number }
  | { readonly kind: 'join'; readonly mode: JoinMode }
  | {
      readonly kind: 'battery';
      readonly type: string;
      readonly millivolts: Millivolts;
      readonly microampHours: MicroampHours;
    };

/** Whether it is a lead, which batteries are not. */
export const isLead = ({ role }: Pick<Part, 'role'>): boolean => role.kind !== 'battery';

/** The plugs that stand in the gear without anybody having looked at them. */
export type AssumedOfPart = { readonly fits?: string; readonly gives?: string };

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
  /** Nothing where it is left out. */
  readonly assumed?: AssumedOfPart;
};
