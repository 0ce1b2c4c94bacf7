import type { InstanceShape } from './instances.js';
import type { Options } from './options.js';
import { sizeText } from './sizes.js';

/** An instance and how long one solve of it may take. */
export type CappedShape = { readonly shape: InstanceShape; readonly capMs: number };

/** Every instance that is asked for. */
export const shapesOf = ({ sizes, chains }: Pick<Options, 'sizes' | 'chains'>): readonly CappedShape[] =>
  sizes.flatMap(({ pedals, supplies, seeds, capMs }) =>
    chains.flatMap((profile) => seeds.map((seed) => ({ shape: { pedals, supplies, chains: profile, seed }, capMs }))),
  );

export const shapeText = (shape: InstanceShape): string =>
  `${sizeText(shape)}, chains ${shape.chains}, seed ${shape.seed}`;

/** What a profile of chains is called outside of tables. */
export const chainsText = (chains: InstanceShape['chains']): string =>
  ({ none: 'no chains', adapters: 'chains on adapters', all: 'chains everywhere' })[chains];
