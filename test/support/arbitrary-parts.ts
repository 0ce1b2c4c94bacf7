import fc from 'fast-check';

import type { Part } from '../../src/domain/part.js';
import { partId } from '../../src/domain/quantities.js';
import { percent, weighted } from './arbitrary-choices.js';
import { euros } from './builders.js';

/** What a part does, whatever it costs. */
export type Shape = Pick<Part, 'fits' | 'gives' | 'reverses' | 'role'>;

/** How a part comes to the board. */
export type PartTerms = {
  readonly price: number;
  readonly stock: number | null;
  readonly owned: number;
  /** Listed by the board only, not for sale. */
  readonly gear: boolean;
};

export type PartDraft = { readonly shape: Shape; readonly terms: PartTerms };

export const adapterShape = (fits: string, gives: string, reverses = false): Shape => ({
  fits,
  gives,
  reverses,
  role: { kind: 'adapter' },
});

const chainShape = (tails: number, more: Partial<Shape> = {}): Shape => ({
  fits: 'barrel-2.1',
  gives: 'barrel-2.1',
  reverses: false,
  role: { kind: 'chain', tails },
  ...more,
});

const joinShape = (mode: 'series' | 'parallel', more: Partial<Shape> = {}): Shape => ({
  fits: 'barrel-2.1',
  gives: 'barrel-2.1',
  reverses: false,
  role: { kind: 'join', mode },
  ...more,
});

export const partTerms: fc.Arbitrary<PartTerms> = fc
  .record({
    price: weighted([3, 4], [2, 5], [2, 8], [1, 2.5]),
    stock: weighted<number | null>([6, null], [2, 1], [1, 2]),
    owned: weighted([7, 0], [2, 1], [1, 2]),
    gear: percent(10),
  })
  .map((terms) => (terms.gear ? { ...terms, owned: Math.max(1, terms.owned) } : terms));

/** Chain leads most of all, since other leads come with the pedals that need them. */
export const partDrafts: fc.Arbitrary<PartDraft> = fc.record({
  shape: weighted(
    [7, chainShape(3)],
    [12, chainShape(2)],
    [2, chainShape(5)],
    [7, chainShape(4, { reverses: true })],
    [6, chainShape(3, { gives: 'jack-3.5' })],
    [2, chainShape(2, { fits: 'jack-3.5' })],
    [2, adapterShape('barrel-2.1', 'barrel-2.1', true)],
    [2, adapterShape('barrel-2.1', 'jack-3.5')],
    [1, adapterShape('barrel-2.1', 'jack-3.5', true)],
    [1, adapterShape('barrel-2.1', 'barrel-2.5')],
    [1, adapterShape('barrel-2.5', 'jack-3.5', true)],
    [1, adapterShape('jack-3.5', 'barrel-2.1')],
    [1, joinShape('series')],
    [1, joinShape('parallel')],
    [1, joinShape('series', { gives: 'jack-3.5' })],
    [1, joinShape('parallel', { reverses: true })],
  ),
  terms: partTerms,
});

/** Puts the draft at its place, which makes its id. */
export function partFrom({ shape, terms }: PartDraft, index: number): Part {
  const id = `part-${index + 1}`;
  const sale = terms.gear ? { price: null, stock: 0 } : { price: euros(terms.price), stock: terms.stock };
  return { id: partId(id), name: id, ...sale, ...shape };
}
