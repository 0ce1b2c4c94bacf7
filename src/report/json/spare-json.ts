import type { Meter } from '../words/words.js';
import type { Board } from '../../domain/board.js';
import { feedMillivolts } from '../../domain/plan.js';
import { numberOfThousandths } from '../../domain/quantities.js';
import type { Bank } from '../../domain/supply.js';
import type { Added } from '../../planning/spare/add-pedal.js';
import type { Largest } from '../../planning/spare/largest-pedal.js';
import type { NoBasis, Room, Spare } from '../../planning/spare/spare.js';
import { inventoryOf } from '../words/inventory.js';
import { answerObject } from './json.js';
import { feedObject, findingObject, purchaseObject } from './json-objects.js';
import { safeJson } from '../words/safe-text.js';
import { leftOf, mostAlone, ownedUnits, plannedOf } from '../words/spare-units.js';
import type { OutputUse, UnitUse } from '../words/usage.js';

const printed = (object: unknown): string => `${safeJson(JSON.stringify(object, null, 2))}\n`;

/**
 * What there is to spare as one JSON object with a line break at its end. Keys and their order are a promise to programs that
 * read it: new keys come after those that are there.
 */
export function spareJson(board: Board, found: Spare | NoBasis): string {
  const head = { format: 'boardfeed/spare/1', board: board.name, currency: board.currency.code, status: found.kind };
  if (found.kind !== 'spare') return printed({ ...head, ...noBasisObject(board, found) });
  const { installed, of, whole } = found;
  const { buy } = installed.wiring;
  const inventory = inventoryOf(installed.kit);
  return printed({
    ...head,
    basis: of,
    complete: whole,
    buy: {
      supplies: buy.supplies.map((purchase) => purchaseObject(board, purchase)),
      parts: buy.parts.map((purchase) => purchaseObject(board, purchase)),
    },
    feeds: installed.wiring.feeds.map(feedObject),
    counted: { volts: 9, milliamps: numberOfThousandths(found.counted.microamps) },
    asPlugged: roomObject(found.asPlugged),
    replugged: roomObject(found.replugged),
    units: ownedUnits(installed.kit.board, inventory, installed.wiring).map((unit) =>
      unitObject(installed.kit.board, unit),
    ),
  });
}

const noBasisObject = (board: Board, found: NoBasis) => ({
  findings: found.kind === 'unsafe' ? found.findings.map((finding) => findingObject(board, finding)) : [],
});

const roomObject = ({ more, largest, quietest }: Room) => ({
  more,
  largestDigital: largestObject(largest),
  largestQuietDigital: largestObject(quietest),
});

/** Null when none fits; `answer` tells what was not settled. */
function largestObject(largest: Largest | null | 'unknown') {
  if (largest === 'unknown') return { answer: 'unknown', milliamps: null, place: null, exposes: null };
  if (largest === null) return { answer: 'none', milliamps: null, place: null, exposes: null };
  const { milliamps, feed, exposes } = largest;
  const place = {
    supply: feed.supply,
    unit: feed.unit,
    outputs: feed.outputs,
    volts: numberOfThousandths(feedMillivolts(feed)),
  };
  return { answer: 'fits', milliamps, place, exposes };
}

const meterObject = (meter: Meter) => ({
  unit: meter.unit,
  rating: numberOfThousandths(meter.limit),
  planned: numberOfThousandths(plannedOf(meter)),
  left: numberOfThousandths(leftOf(meter)),
});

function unitObject(board: Board, { supply, unit, outputs, totals }: UnitUse) {
  const taken = new Set(outputs.flatMap((use) => use.outputs));
  return {
    supply: supply.id,
    unit,
    used: outputs.map(usedObject),
    free: supply.banks.flatMap((bank) =>
      numbersOf(bank)
        .filter((output) => !taken.has(output))
        .map((output) => freeObject(board, bank, output)),
    ),
    totals: totals.map(({ bank, meter }) => ({
      of: bank === null ? 'supply' : 'bank',
      outputs: bank === null ? [] : numbersOf(bank),
      ...meterObject(meter),
    })),
  };
}

const usedObject = ({ outputs, settings, feeds, meter }: OutputUse) => ({
  outputs,
  settings: settings.map(numberOfThousandths),
  pedals: feeds.map(({ pedal }) => pedal),
  ...meterObject(meter),
});

/** `most` is what a pedal by itself may draw there, its reserve counted. */
const freeObject = (board: Board, bank: Bank, output: number) => ({
  output,
  power: bank.power,
  settings: bank.settings.map(({ millivolts, rating }) => ({
    volts: numberOfThousandths(millivolts),
    rating: numberOfThousandths(rating),
    most: numberOfThousandths(mostAlone(rating, board)),
  })),
});

const numbersOf = ({ firstOutput, outputs }: Bank): readonly number[] =>
  Array.from({ length: outputs }, (_, at) => firstOutput + at);

/** Whether one more pedal can be fed, as one JSON object with a line break at its end. */
export function addedJson(board: Board, found: Added | NoBasis): string {
  const head = { format: 'boardfeed/spare-add/1', board: board.name, currency: board.currency.code };
  if (found.kind !== 'added') return printed({ ...head, answer: found.kind, ...noBasisObject(board, found) });
  const { answer, bought, pedal, of } = found;
  const answers = { plan: 'yes', impossible: 'no', stopped: 'unknown' } as const;
  return printed({
    ...head,
    answer: answers[answer.kind],
    basis: of,
    pedal: pedal.id,
    result: answerObject(found.kit, answer),
    bought: bought === null ? null : answerObject(bought.kit, bought.answer),
  });
}
