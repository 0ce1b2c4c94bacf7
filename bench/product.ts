/**
 * The compiled product, as it is installed: what is timed and weighed is the code that users run, not a translation that is
 * made while it runs.
 */
import type * as library from '../src/index.js';
import type * as search from '../src/formulation/loadout-search.js';
import type * as questions from '../src/formulation/question.js';
import type * as judges from '../src/audit/audit.js';

const compiled = async (path: string): Promise<unknown> =>
  import(new URL(`../dist/src/${path}`, import.meta.url).href) as Promise<unknown>;

export const { choose, compare, startEngines, closeEngines } = (await compiled('index.js')) as typeof library;

/** Rooms of the product that the library does not open, for the search by loadouts without its partner. */
export const { loadoutSearch } = (await compiled('formulation/loadout-search.js')) as typeof search;
export const { questionOf } = (await compiled('formulation/question.js')) as typeof questions;
export const { audit } = (await compiled('audit/audit.js')) as typeof judges;
