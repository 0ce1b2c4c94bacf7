import type { Board } from '../../domain/board.js';
import { isOfOnePedal } from '../../domain/source.js';
import { safeText } from './safe-text.js';
import { listText } from './words.js';

/** That things which the board describes are not owned, so that no plan counts on them; nothing where all of them are. */
export function describedOnlyTexts({ board: { gear, owned } }: { readonly board: Board }): readonly string[] {
  const supplies = gear.supplies.filter(({ id, source }) => !isOfOnePedal(source) && !owned.supplies.has(id));
  const parts = gear.parts.filter(({ id }) => !owned.parts.has(id));
  const names = [...supplies, ...parts].map(({ name }) => safeText(name));
  if (names.length === 0) return [];
  const them = names.length === 1 ? 'it' : 'them';
  return [
    `${listText(names)}: described, but not among what you own, so no plan counts on ${them}. If you have ${them}, add ${them} to what you own.`,
  ];
}
