import type { Board } from '../../domain/board.js';
import type { LoadNumbers } from '../../domain/load-numbers.js';
import { stepsUp, type Exact } from '../../domain/load.js';
import { moneyText } from '../../domain/money.js';
import type { AcceptedVolts } from '../../domain/pedal.js';
import { feedMillivolts, type Feed, type Place, type Purchase } from '../../domain/plan.js';
import { factorText, numberOfThousandths } from '../../domain/quantities.js';
import type { Numbers, Violation } from '../../domain/violation.js';
import { meterOf, percentOf } from '../words/words.js';

/** Something to buy; `price` is one unit's. */
export const purchaseObject = <Id>({ currency }: Board, { id, units, price }: Purchase<Id>) => ({
  id,
  units,
  price: moneyText(price, currency),
});

/** A feed as every result prints it. */
export const feedObject = (feed: Feed) => ({
  pedal: feed.pedal,
  supply: feed.supply,
  unit: feed.unit,
  outputs: feed.outputs,
  volts: numberOfThousandths(feedMillivolts(feed)),
  polarity: feed.polarity,
  join: feed.join === null ? null : { mode: feed.join.mode, part: feed.join.part },
  chain: feed.chain,
  parts: feed.adapters,
  settings: feed.settings.map(numberOfThousandths),
});

/** Null and no outputs where it is no single place. */
export const placeObject = (place: Place | null) => ({
  supply: place?.supply ?? null,
  unit: place?.unit ?? null,
  outputs: place?.outputs ?? [],
});

/** A broken rule. */
export const findingObject = (board: Board, { rule, pedals, place, message, numbers }: Violation) => ({
  rule,
  pedals,
  ...placeObject(place),
  message,
  numbers: numbers === null ? null : numbersObject(board, numbers),
});

function numbersObject({ currency }: Board, numbers: Numbers) {
  const { kind } = numbers;
  switch (kind) {
    case 'load':
      return { kind, ...loadObject(numbers) };
    case 'volts':
      return {
        kind,
        given: numberOfThousandths(numbers.given),
        openCircuit: numbers.openCircuit === null ? null : numberOfThousandths(numbers.openCircuit),
        accepted: acceptedObject(numbers.accepted),
        survives: numbers.survives === null ? null : numberOfThousandths(numbers.survives),
      };
    case 'mains':
      return {
        kind,
        venue: numberOfThousandths(numbers.venue),
        accepted: numbers.accepted === null ? null : rangeObject(numbers.accepted),
      };
    case 'count':
      return { kind, used: numbers.used, allowed: numbers.allowed };
    case 'money':
      return { kind, needed: moneyText(numbers.needed, currency), allowed: moneyText(numbers.allowed, currency) };
  }
}

/** In mA or W with three decimals at most, rounded up where there would be more; `rating` is a total's limit, too. */
export const loadObject = (numbers: LoadNumbers) => ({
  unit: numbers.unit,
  load: roundedUp(numbers.load),
  factor: Number(factorText(numbers.factor)),
  planned: roundedUp(numbers.planned),
  rating: numberOfThousandths(numbers.limit),
  percent: percentOf(meterOf(numbers)),
});

const roundedUp = (value: Exact): number => numberOfThousandths(stepsUp(value, 1));

/** A list of volts, or a range, as board files write them. */
const acceptedObject = (accepted: AcceptedVolts) =>
  accepted.kind === 'range' ? rangeObject(accepted) : accepted.millivolts.map(numberOfThousandths);

const rangeObject = ({ from, to }: { readonly from: number; readonly to: number }) => ({
  from: numberOfThousandths(from),
  to: numberOfThousandths(to),
});
