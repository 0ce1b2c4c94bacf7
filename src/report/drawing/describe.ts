import type { PlanHandout } from '../words/handout.js';
import { feedHazards, hazardWords } from '../words/hazards.js';
import { standText, withOwnership, type UnitHookup } from '../words/hookup.js';
import { isFedByOwn } from '../words/inventory.js';
import { capital } from '../words/words.js';
import { isOnBattery, isSameUnit, type DrawnBoard } from './drawn-board.js';

/** What a drawing of the board, or of a part of it, shows, in sentences. */
export const boardDescription = (plan: PlanHandout, { strips, pedals }: DrawnBoard): string =>
  [
    ...plan.hookup
      .filter(({ unit }) => strips.some(({ id }) => isSameUnit(id, { supply: unit.supply.id, unit: unit.unit })))
      .map((unit) => unitDescription(plan, unit)),
    ...pedals
      .filter(isOnBattery)
      .flatMap(({ name, parts }) => parts.map((part) => `${name} runs on ${part.name} in it.`)),
    ...plan.leftOut
      .filter((left) => pedals.some(({ id }) => id === left.id))
      .map(({ name, why }) => `${name} is without power: ${why}.`),
  ].join(' ');

function unitDescription({ rows, speech, wiring }: PlanHandout, hookup: UnitHookup): string {
  const { name, unit } = hookup;
  const feeds = rows
    .filter(({ feed }) => feed.supply === unit.supply.id && feed.unit === unit.unit)
    .map((row) => {
      const hazards = feedHazards(speech, wiring, row.feed).map((hazard) => hazardWords[hazard]);
      const marks = hazards.length === 0 ? '' : `; marked ${hazards.join(', ')}`;
      if (isFedByOwn(speech.inventory, row.feed)) return `Lead ${row.mark}: ${row.way} to ${row.pedal}${marks}.`;
      const gets = [row.volts, ...(row.polarity === null ? [] : [row.polarity])].join(', ');
      const outputs = row.feed.outputs.length > 1 ? `outputs ${row.outputs}` : `output ${row.outputs}`;
      return `Lead ${row.mark}: ${outputs} (${row.ground}, ${row.load}) by ${row.way} to ${row.pedal}, ${gets}${marks}.`;
    });
  return [`${capital(standText(hookup))} feeds ${withOwnership(name, unit.owned)}.`, ...feeds].join(' ');
}
