/**
 * The rivals. `loadouts` is the product's search as users get it, with an engine that looks for better plans beside one that
 * lasts; `loadouts-alone` is without that. The others have the compact program: `both` with HiGHS, its twin and
 * javascript-lp-solver; `HiGHS` with HiGHS and its twin; `HiGHS-one-thread` asks HiGHS twice, one question after the other;
 * and javascript-lp-solver in the same way.
 */
export const engineSetNames = [
  'loadouts',
  'loadouts-alone',
  'both',
  'HiGHS',
  'HiGHS-one-thread',
  'javascript-lp-solver',
] as const;
export type EngineSetName = (typeof engineSetNames)[number];
export type RivalName = Exclude<EngineSetName, 'loadouts' | 'loadouts-alone'>;

/** Those that are measured when nothing is said. */
export const usualEngineSets: readonly EngineSetName[] = ['loadouts', 'HiGHS'];

/** Alone, javascript-lp-solver seldom gets this far within a minute: larger shops are not tried with it. */
export const MOST_SUPPLIES_FOR_JAVASCRIPT = 40;

/** Whether the set is tried on a shop with so many supply models. */
export const takesOn = (name: EngineSetName, supplies: number): boolean =>
  name !== 'javascript-lp-solver' || supplies <= MOST_SUPPLIES_FOR_JAVASCRIPT;

/** The sets that are weighed in processes of their own. */
export const weighedSets: readonly EngineSetName[] = ['loadouts', 'both', 'HiGHS'];
