import { isSameUnit, type DrawnBoard, type DrawnStrip } from './drawn-board.js';
import { leadsFrom, leadTo } from './drawn-leads.js';
import { stripsInOrder } from './placed-columns.js';

/**
 * The board in parts of about so many pedals at most, for a sheet of paper or a small screen: no supply is parted from what hangs
 * on it, and in each part pedals keep the order of the board. Those without power or on a battery are in the last one.
 */
export function partsOf(board: DrawnBoard, most: number): readonly DrawnBoard[] {
  if (board.pedals.length <= most) return [board];
  const groups = groupsOf(board, most);
  return groups.map((strips, at): DrawnBoard => {
    const leads = board.leads.filter(({ outputs: [first] }) =>
      strips.some(({ id }) => first !== undefined && isSameUnit(first, id)),
    );
    const fed = new Set(leads.flatMap(({ ends }) => ends.map(({ pedal }) => pedal)));
    const isLast = at === groups.length - 1;
    return {
      strips,
      leads,
      pedals: board.pedals.filter(({ id }) => fed.has(id) || (isLast && leadTo(board, id) === undefined)),
    };
  });
}

/** Supplies that are drawn together: a new group begins where it keeps all of them about equally full. */
function groupsOf(board: DrawnBoard, most: number): readonly (readonly DrawnStrip[])[] {
  const fair = board.pedals.length / Math.ceil(board.pedals.length / most);
  const groups: DrawnStrip[][] = [[]];
  let count = 0;
  for (const strip of stripsInOrder(board)) {
    const more = leadsFrom(board, strip.id).reduce((sum, { ends }) => sum + ends.length, 0);
    if (count > 0 && count + more / 2 > fair) {
      groups.push([]);
      count = 0;
    }
    groups.at(-1)?.push(strip);
    count += more;
  }
  return groups;
}
