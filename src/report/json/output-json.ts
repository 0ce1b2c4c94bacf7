import type { Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import { moneyText } from '../../domain/money.js';
import { numberOfThousandths } from '../../domain/quantities.js';
import type { OutputAnswer, OutputTrial } from '../../planning/check/check-output.js';
import { pluggingCautions } from '../words/cautions.js';
import { confirmEntries } from '../words/confirm.js';
import { inventoryOf } from '../words/inventory.js';
import { feedObject, findingObject, loadObject, placeObject, purchaseObject } from './json-objects.js';
import { safeJson } from '../words/safe-text.js';
import { standingCautions } from '../words/remarks.js';

/**
 * Whether a pedal can go on an output, as one JSON object with a line break at its end. Keys and their order are a promise to
 * programs that read it: new keys come after those that are there.
 */
export const outputAnswerJson = (kit: Kit, answer: OutputAnswer): string =>
  `${safeJson(JSON.stringify(answerObject(kit, answer), null, 2))}\n`;

function answerObject(kit: Kit, answer: OutputAnswer) {
  const { board } = kit;
  const inventory = inventoryOf(kit);
  const { question, fits, inPlace, company, trials } = answer;
  const feeds = trials.slice(0, 1).flatMap((trial) => [trial.feed, ...trial.company]);
  const asked = { ...board, pedals: board.pedals.filter(({ id }) => id === question.pedal) };
  return {
    format: 'boardfeed/check-output/1',
    board: board.name,
    currency: board.currency.code,
    pedal: question.pedal,
    supply: question.supply,
    unit: question.unit,
    output: question.output,
    answer: fits ? 'yes' : 'no',
    inPlace,
    company,
    trials: trials.map((trial) => trialObject(board, trial)),
    confirm: confirmEntries(asked, inventory, feeds),
    cautions: [...(fits ? pluggingCautions(inventory, { feeds }) : []), ...standingCautions(board, 'check')],
  };
}

const trialObject = (board: Board, trial: OutputTrial) => ({
  volts: numberOfThousandths(trial.millivolts),
  switch: trial.position,
  answer: trial.findings.length === 0 ? 'yes' : 'no',
  feed: feedObject(trial.feed),
  changed: trial.changed.map(feedObject),
  buy: {
    supplies: trial.buy.supplies.map((purchase) => purchaseObject(board, purchase)),
    parts: trial.buy.parts.map((purchase) => purchaseObject(board, purchase)),
  },
  money: moneyText(trial.money, board.currency),
  current: trial.outlet?.current ? loadObject(trial.outlet.current) : null,
  startup: trial.outlet?.startup ? loadObject(trial.outlet.startup) : null,
  totals: trial.totals.map(({ of, place, pedals, numbers }) => ({
    of,
    ...placeObject(place),
    pedals,
    ...loadObject(numbers),
  })),
  exposed: trial.exposures.map(({ pedal, by }) => ({ pedal, by })),
  findings: trial.findings.map((finding) => findingObject(board, finding)),
});
