import { mapOf, type Data } from '../text/data.js';
import { plainData, type LocatedMap, type LocatedNode } from '../text/located-tree.js';
import { entryOf } from './table.js';

const keys = ['power', 'polarity', 'inlet', 'ground'] as const;

/** What is left open by what is said of a pedal, with what its board assumes. AC has no polarity. */
export const unsaidOf = (said: Data): readonly string[] =>
  keys.filter((key) => said[key] === undefined && !(key === 'polarity' && said['power'] === 'AC'));

/** The board in which what neither a pedal nor `assume` says stands as not known. */
export function withUnsaid(board: LocatedMap): LocatedMap {
  const pedals = board.entries.get('pedals');
  if (pedals?.value.kind !== 'list') return board;
  const assume = board.entries.get('assume');
  const assumed = assume === undefined ? {} : mapOf(plainData(assume.value));
  const items = pedals.value.items.map((pedal) => withOpen(pedal, assumed));
  const open = entryOf(pedals.keyOffset, { ...pedals.value, items });
  return { ...board, entries: new Map([...board.entries, ['pedals', open]]) };
}

function withOpen(pedal: LocatedNode, assumed: Data): LocatedNode {
  if (pedal.kind !== 'map') return pedal;
  const open = unsaidOf({ ...assumed, ...mapOf(plainData(pedal)) }).map((key) => {
    const offset = pedal.gaps?.get(key) ?? pedal.offset;
    return [key, entryOf(offset, { kind: 'scalar', offset, value: 'unknown', written: 'unknown' })] as const;
  });
  return { ...pedal, entries: new Map([...pedal.entries, ...open]) };
}
