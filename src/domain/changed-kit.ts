import type { Board, Policy } from './board.js';
import { kitOf, type Kit } from './kit.js';
import type { Part } from './part.js';
import type { PedalId } from './quantities.js';
import type { Supply } from './supply.js';

/** The kit with another board. */
export const withBoard = ({ catalogue }: Kit, board: Board): Kit => kitOf(board, catalogue);

/** The kit with some of the policy changed. */
export const withPolicy = (kit: Kit, changed: Partial<Policy>): Kit =>
  withBoard(kit, { ...kit.board, policy: { ...kit.board.policy, ...changed } });

/** The kit without some pedals, on the board and in its wiring. */
export const withoutPedals = (pedals: readonly PedalId[], kit: Kit): Kit =>
  withBoard(kit, {
    ...kit.board,
    pedals: kit.board.pedals.filter(({ id }) => !pedals.includes(id)),
    wiring: kit.board.wiring.filter(({ pedal }) => !pedals.includes(pedal)),
  });

/** The kit with every supply and every part changed, gear and catalogue alike; those that come back null are left out. */
export function withThings(
  { board, catalogue }: Kit,
  supply: (supply: Supply) => Supply | null,
  part: (part: Part) => Part | null = (each) => each,
): Kit {
  const changed = ({ supplies, parts }: { readonly supplies: readonly Supply[]; readonly parts: readonly Part[] }) => ({
    supplies: supplies.flatMap((each) => supply(each) ?? []),
    parts: parts.flatMap((each) => part(each) ?? []),
  });
  const shop = catalogue === null ? null : { ...catalogue, ...changed(catalogue) };
  return kitOf({ ...board, gear: changed(board.gear) }, shop);
}

/** The kit in which these are owned besides, one of each or so many of each part, and none of them is for sale. */
export function withGear(
  kit: Kit,
  { supplies = [], parts = [] }: { readonly supplies?: readonly Supply[]; readonly parts?: readonly Part[] },
  piecesOfPart = 1,
): Kit {
  const { gear, owned } = kit.board;
  return withBoard(kit, {
    ...kit.board,
    gear: { supplies: [...gear.supplies, ...supplies], parts: [...gear.parts, ...parts] },
    owned: {
      supplies: new Map([...owned.supplies, ...supplies.map(({ id }) => [id, 1] as const)]),
      parts: new Map([...owned.parts, ...parts.map(({ id }) => [id, piecesOfPart] as const)]),
    },
  });
}

/** The kit with nothing for sale. */
export const withNothingForSale = (kit: Kit): Kit => withThings(kit, unsold, unsold);

/** A thing that is described, and not for sale. */
export const unsold = <Thing extends Supply | Part>(thing: Thing): Thing => ({ ...thing, price: null, stock: 0 });
