/**
 * The rivals. `loadouts` is the product's search as users get it, with an engine that looks for better plans beside one that
 * lasts; `loadouts-alone` is without that. `HiGHS` has the compact program with HiGHS and its twin.
 */
export const engineSetNames = ['loadouts', 'loadouts-alone', 'HiGHS'] as const;
export type EngineSetName = (typeof engineSetNames)[number];

/** Those that are measured when nothing is said. */
export const usualEngineSets: readonly EngineSetName[] = ['loadouts', 'HiGHS'];

/** The sets that are weighed in processes of their own. */
export const weighedSets: readonly EngineSetName[] = ['loadouts', 'HiGHS'];
