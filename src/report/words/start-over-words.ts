import type { JudgedPlan } from '../../domain/judged-plan.js';
import { minorUnits } from '../../domain/quantities.js';
import { exposedText } from './shared-grounds.js';
import type { Speech } from './speech.js';
import { countText, listText, priceText } from './words.js';

/** What a plan from nothing comes to, and what it saves and costs against one that re-plugs the board. */
export function startOverText({ board, inventory }: Speech, over: JudgedPlan, rewired: JudgedPlan): string {
  const { score } = over;
  const money = score.money === 0 ? 'nothing to buy' : `${priceText(score.money, board)} to spend`;
  const supplies = countText(score.bricks, 'supply', 'supplies');
  const differences = [
    { by: rewired.score.money - score.money, text: (by: number) => priceText(minorUnits(by), board) },
    { by: rewired.score.bricks - score.bricks, text: (by: number) => countText(by, 'supply', 'supplies') },
    { by: rewired.score.exposed - score.exposed, text: (by: number) => `the noise on ${countText(by, 'pedal')}` },
  ];
  const saved = differences.flatMap(({ by, text }) => (by > 0 ? [text(by)] : []));
  const lost = differences.flatMap(({ by, text }) => (by < 0 ? [text(-by)] : []));
  const against = lost.length === 0 ? '' : `, and costs ${listText(lost)} more`;
  return (
    `Planned from nothing: ${money}, ${supplies}, ${exposedText(inventory, over)}, and every pedal plugged anew. ` +
    `That saves ${saved.length === 0 ? 'nothing' : listText(saved)}${against}.`
  );
}
