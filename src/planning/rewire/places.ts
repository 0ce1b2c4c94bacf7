import { feedMillivolts, type Feed } from '../../domain/plan.js';

type Spot = Pick<Feed, 'supply' | 'unit' | 'outputs'>;

/** Whether both are the same unit of the same supply. */
export const isSameUnit = (one: Pick<Spot, 'supply' | 'unit'>, other: Pick<Spot, 'supply' | 'unit'>): boolean =>
  one.supply === other.supply && one.unit === other.unit;

/** Whether both are the same output, or the same joined ones. */
export const isSameOutlet = (one: Spot, other: Spot): boolean =>
  isSameUnit(one, other) && one.outputs.join() === other.outputs.join();

/** Whether both take some output. */
export const meet = (one: Spot, other: Spot): boolean =>
  isSameUnit(one, other) && one.outputs.some((output) => other.outputs.includes(output));

/** Whether a pedal that goes from one feed to the other is not moved: the same outputs at the same volts. */
export const isSamePlace = (one: Feed, other: Feed): boolean =>
  isSameOutlet(one, other) && feedMillivolts(one) === feedMillivolts(other);

/** Whether nothing at all changes for the pedal. */
export const isSameFeed = (one: Feed, other: Feed): boolean =>
  isSameOutlet(one, other) &&
  one.settings.join() === other.settings.join() &&
  one.polarity === other.polarity &&
  one.chain === other.chain &&
  one.join?.mode === other.join?.mode &&
  one.join?.part === other.join?.part &&
  JSON.stringify(one.adapters) === JSON.stringify(other.adapters);
