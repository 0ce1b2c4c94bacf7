import { gathered } from '../../solver/gathered.js';
import type { Supply } from '../domain/supply.js';
import type { UnitGroup } from './loadout-groups.js';

/** So many thresholds divide the groups into about equal parts by what a unit has of something. */
const mostThresholds = 11;

/**
 * Sets of groups whose units are alike in something that matters to what they carry: how many of them a plan has is worth
 * knowing where it is open which of many supplies that are nearly alike it takes. Each set once, by the places of its
 * groups; whoever holds a set holds all units of its supplies, or all of them that are owned, or bought. None of them holds
 * all groups or a single one.
 */
export function unitSets(groups: readonly UnitGroup[]): readonly (readonly number[])[] {
  const settings = gathered(groups, ({ uses }) => gathered(uses.supply.banks, (bank) => bank.settings));
  const volts = new Set(settings.map(({ millivolts }) => millivolts));
  const isIn: readonly ((group: UnitGroup) => boolean)[] = [
    ...atLeast(groups, ({ uses }) => outputsOf(uses.supply)),
    ...atLeast(groups, ({ price }) => price),
    ...atLeast(groups, ({ uses }) => currentOf(uses.supply)),
    ({ uses }) => uses.supply.banks.some(({ isolated }) => !isolated),
    ({ uses }) => uses.supply.banks.every(({ isolated }) => isolated),
    ({ uses: { supply } }) => [supply, ...supply.banks].some(({ total }) => total !== null),
    ...[...volts].map(
      (wanted) =>
        ({ uses }: UnitGroup) =>
          uses.supply.banks.some((bank) => bank.settings.some(({ millivolts }) => millivolts === wanted)),
    ),
    ({ owned }) => owned,
  ];
  const sets = isIn.map((belongs) => gathered(groups, (group, index) => (belongs(group) ? [index] : [])));
  const telling = sets.filter(({ length }) => length > 1 && length < groups.length);
  return [...new Map(telling.map((set) => [set.join(), set])).values()];
}

/** Whether a unit has at least so much of something, for some thresholds. */
function atLeast(groups: readonly UnitGroup[], amountOf: (group: UnitGroup) => number) {
  const amounts = groups.map(amountOf).sort((a, b) => a - b);
  const thresholds = Array.from(
    { length: mostThresholds },
    (_, index) => amounts[Math.floor(((index + 1) * amounts.length) / (mostThresholds + 1))] ?? 0,
  );
  return [...new Set(thresholds)].map((least) => (group: UnitGroup) => amountOf(group) >= least);
}

const outputsOf = ({ banks }: Supply): number => banks.reduce((sum, { outputs }) => sum + outputs, 0);

/** What all outputs give together, in microamps, if no total limits them. */
const currentOf = ({ banks }: Supply): number =>
  banks.reduce((sum, { outputs, settings }) => sum + outputs * Math.max(...settings.map(({ rating }) => rating)), 0);
