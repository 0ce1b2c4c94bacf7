import type { CoverNode } from './tree.js';

/** What a search for the least cost of a covering program comes to. */
export type CoverOutcome<Content> =
  | {
      readonly kind: 'optimal';
      readonly value: number;
      readonly contents: readonly Content[];
      readonly proof: CoverProof;
    }
  /** Every solution costs more than the greatest value worth looking at: there is none. */
  | { readonly kind: 'infeasible'; readonly proof: CoverProof }
  | {
      readonly kind: 'stopped';
      readonly best: { readonly value: number; readonly contents: readonly Content[] } | null;
      /** No solution is worth less. */
      readonly bound: number;
    }
  | {
      /** Every number that can be branched on is whole, and yet no solution can be read from them. */
      readonly kind: 'stuck';
      /** The groups of which different columns share units. */
      readonly mixed: readonly number[];
      /** The columns of which parts are used, or whole ones. */
      readonly used: readonly Content[];
      /** How many cases were told apart. */
      readonly cases: number;
      readonly best: { readonly value: number; readonly contents: readonly Content[] } | null;
      readonly bound: number;
    };

export type CoverProof = { readonly scale: number; readonly tree: CoverNode };
