import { groupBy } from '../domain/group-by.js';
import type { Board } from '../domain/board.js';
import type { Feed } from '../domain/plan.js';
import type { PedalId, SupplyId } from '../domain/quantities.js';

/** A unit that stands for nothing that can be had, since the one before it is missing. */
type UnitGap = {
  readonly supply: SupplyId;
  readonly unit: number;
  /** The first number that is passed over. */
  readonly missing: number;
  readonly pedals: readonly PedalId[];
};

/**
 * Units are numbered from 1 without gaps, the owned ones first: an owned one may stand idle, but whatever is bought takes
 * the next number.
 */
export function unitGaps({ owned }: Board, feeds: readonly Feed[]): readonly UnitGap[] {
  return groupBy(feeds, ({ supply }) => supply).flatMap((group) => {
    const [{ supply }] = group;
    const units = [...new Set(group.map(({ unit }) => unit))].sort((one, other) => one - other);
    let last = owned.supplies.get(supply) ?? 0;
    for (const unit of units.filter((each) => each > last)) {
      if (unit > last + 1)
        return [
          { supply, unit, missing: last + 1, pedals: group.flatMap((feed) => (feed.unit === unit ? feed.pedal : [])) },
        ];
      last = unit;
    }
    return [];
  });
}
