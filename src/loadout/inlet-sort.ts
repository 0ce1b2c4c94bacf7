import type { Inlet } from '../domain/source.js';
import type { Supply } from '../domain/supply.js';

/** Inlets that are alike in everything that bears on what they may hang on: each stands for any other of its sort. */
export type InletSort = string;

/** The sort of a supply's inlet; null for one that has none. */
export const inletSortOf = ({ source }: Supply): InletSort | null =>
  source.kind === 'fed' ? sortOf(source.inlet) : null;

const sortOf = ({ power, plug, polarity, accepts, microamps, startup }: Inlet): InletSort =>
  JSON.stringify([power, plug, polarity, accepts, microamps, startup]);
