import type { Kit } from '../../domain/kit.js';
import type { Check } from '../../planning/check/check.js';
import { pluggingCautions } from '../words/cautions.js';
import { pedalsInOrder } from '../words/usage.js';
import { confirmEntries } from '../words/confirm.js';
import { inventoryOf } from '../words/inventory.js';
import { feedObject, findingObject, loadObject, placeObject } from './json-objects.js';
import { safeJson } from '../words/safe-text.js';
import { standingCautions } from '../words/remarks.js';
import { softObject } from './soft-object.js';

/**
 * What came of checking a wiring as one JSON object with a line break at its end. Keys and their order are a promise to
 * programs that read it: new keys come after those that are there.
 */
export const checkJson = (kit: Kit, check: Check): string =>
  `${safeJson(JSON.stringify(checkObject(kit, check), null, 2))}\n`;

function checkObject(kit: Kit, check: Check) {
  const { board } = kit;
  const inventory = inventoryOf(kit);
  const { status, findings, soft, wiring } = check;
  const inOrder = pedalsInOrder(check);
  const sound = { ...wiring, feeds: wiring.feeds.filter(({ pedal }) => inOrder.has(pedal)) };
  return {
    format: 'boardfeed/check/1',
    board: board.name,
    status,
    findings: findings.map((finding) => findingObject(board, finding)),
    soft: soft.map((finding) => softObject(board, inventory, check, finding)),
    feeds: wiring.feeds.map(feedObject),
    confirm: confirmEntries(board, inventory, wiring.feeds),
    cautions: [...pluggingCautions(inventory, sound), ...standingCautions(board, 'check')],
    unpowered: wiring.unpowered,
    exposed: wiring.exposed,
    outputs: wiring.outlets.map(({ place, pedals, current, startup }) => ({
      ...placeObject(place),
      pedals,
      current: current === null ? null : loadObject(current),
      startup: startup === null ? null : loadObject(startup),
    })),
    totals: wiring.totals.map(({ of, place, pedals, numbers }) => ({
      of,
      ...placeObject(place),
      pedals,
      ...loadObject(numbers),
    })),
  };
}
