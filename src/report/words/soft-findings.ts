import type { Board } from '../../domain/board.js';
import type { Place } from '../../domain/plan.js';
import type { Check, SoftFinding } from '../../planning/check/check.js';
import { noiseText } from './cautions.js';
import type { Inventory } from './inventory.js';
import { placeText } from './places.js';
import { listText, meterOf, meterText, outputsText, percentOf, priceText, voltsText } from './words.js';

/** A soft finding as a sentence. */
export function softText(board: Board, inventory: Inventory, { wiring }: Check, finding: SoftFinding): string {
  const at = (place: Place): string => placeText(inventory, wiring.feeds, place);
  switch (finding.kind) {
    case 'exposed':
      return noiseText(inventory, finding);
    case 'tight': {
      const meter = meterOf(finding.numbers);
      const what = finding.of === 'bank' ? ' together' : finding.of === 'supply' ? ' as a whole' : '';
      const several = finding.place.outputs.length > 1;
      const full = `${several ? 'are' : 'is'} nearly full`;
      return `${at(finding.place)}${what} ${full}: ${meterText(meter)} with the reserve, ${percentOf(meter)} %.`;
    }
    case 'open setting': {
      const { outputs } = finding.place;
      const set = finding.settings.map(
        (one, index) => `${voltsText(one)} from ${outputsText(outputs.slice(index, index + 1))}`,
      );
      return (
        `Nothing says how ${at(finding.place)} are set for ${inventory.pedalName(finding.pedal)}; ` +
        `counted as ${listText(set)}. Look at the switches.`
      );
    }
    case 'off preferred': {
      const { pedal, prefers, gets, place } = finding;
      return `${inventory.pedalName(pedal)} prefers ${voltsText(prefers)}; it gets ${voltsText(gets)} from ${at(place)}.`;
    }
    case 'not owned': {
      return notOwnedText(board, inventory, [finding]);
    }
    case 'unfed':
      return `${inventory.pedalName(finding.pedal)} has no feed.`;
  }
}

type NotOwned = Extract<SoftFinding, { kind: 'not owned' }>;

/** What is in use beyond the owned things, in one sentence. */
export function notOwnedText(board: Board, inventory: Inventory, findings: readonly NotOwned[]): string {
  const things = findings.map(({ thing, purchase }) => {
    const name = thing === 'supply' ? inventory.supplyName(purchase.id) : inventory.partName(purchase.id);
    return `${purchase.units} × ${name} (${priceText(purchase.price, board)} each)`;
  });
  return `In use, but not listed as owned: ${listText(things)}.`;
}
