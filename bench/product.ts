/**
 * The compiled product, as it is installed: what is timed and weighed is the code that users run, not a translation that is
 * made while it runs.
 */
import type * as library from '../src/index.js';
import type * as rivals from './rival/choose-compact.js';
import type * as rivalEngines from './rival/engines/start-engines.js';
import type * as search from '../src/formulation/optimise.js';
import type * as questions from '../src/formulation/question.js';
import type * as judges from '../src/audit/audit.js';

const compiled = async (path: string): Promise<unknown> =>
  import(new URL(`../dist/${path}`, import.meta.url).href) as Promise<unknown>;

export const { choose, compare, startEngine } = (await compiled('src/index.js')) as typeof library;

/** Rooms of the product that the library does not open, for the search by loadouts without its partner. */
export const { optimise } = (await compiled('src/formulation/optimise.js')) as typeof search;
export const { questionOf } = (await compiled('src/formulation/question.js')) as typeof questions;
export const { audit } = (await compiled('src/audit/audit.js')) as typeof judges;

/** The rival: the compact program, compiled likewise, and its engines. */
export const { chooseCompact } = (await compiled('bench/rival/choose-compact.js')) as typeof rivals;
export const { startEngines } = (await compiled('bench/rival/engines/start-engines.js')) as typeof rivalEngines;
