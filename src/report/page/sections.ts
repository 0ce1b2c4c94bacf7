import { minorUnits } from '../../domain/quantities.js';
import { drawnBoard } from '../drawing/contents.js';
import { boardDrawings } from '../drawing/drawings.js';
import { drawingKey } from '../drawing/key.js';
import type { PlanHandout, ReplugWords } from '../words/handout.js';
import { markup, type Markup } from './markup.js';
import { itemText } from '../words/purchases.js';
import { priceText } from '../words/words.js';
import { changesBody } from './changes.js';
import { list, paragraph, remarkList, tableMarkup, type Section } from './elements.js';
import { keyMarkup } from './key-markup.js';
import { feedsBody, stepsBody } from './plugging.js';
import { confirmBody, sectionsOfParts, type Part } from './whole-page.js';

/** The parts of a plan's page, in the order in which a person needs them; those with nothing to say are left out. */
export function planSections(handout: PlanHandout): readonly Section[] {
  const parts = handout.changes === null ? choosingParts(handout) : replugParts(handout, handout.changes);
  return sectionsOfParts(parts);
}

const choosingParts = (handout: PlanHandout): readonly Part[] => [
  leftOutPart(handout),
  ['buy', 'What to buy', buyBody(handout)],
  ['confirm', 'Confirm before plugging in', confirmBody(handout.confirm)],
  ['cautions', 'Cautions', remarkList(handout.cautions)],
  ['wiring', 'Wiring', wiringBody(handout)],
  ['feeds', 'Feeds', feedsBody(handout)],
  ['hook-up', 'Hooking up, step by step', stepsBody(handout)],
  ['grounds', 'Grounds and noise', remarkList(handout.grounds)],
  proofPart(handout),
];

const replugParts = (handout: PlanHandout, changes: ReplugWords): readonly Part[] => [
  leftOutPart(handout),
  ['changes', 'What changes', changesBody(changes)],
  ['buy', 'What to buy', handout.shopping.length === 0 ? null : buyBody(handout)],
  ['confirm', 'Confirm before plugging in', confirmBody(handout.confirm)],
  ['re-plug', 'Re-plugging, step by step', stepsBody(handout)],
  ['feeds', 'Feeds when it is done', feedsBody(handout)],
  ['wiring', 'Wiring when it is done', wiringBody(handout)],
  ['grounds', 'Grounds and noise', remarkList(handout.grounds)],
  ['cautions', 'Cautions', remarkList(handout.cautions)],
  proofPart(handout),
];

const leftOutPart = ({ leftOut }: PlanHandout): Part => [
  'left-out',
  'Left out',
  list(leftOut.map(({ name, why }) => markup`<b>${name}</b>: ${why}`)),
];

const proofPart = ({ evidence }: PlanHandout): Part => [
  'proof',
  'Why no plan is better',
  evidence === null ? null : paragraph(evidence),
];

function buyBody({ shopping, owned, wiring, speech: { board } }: PlanHandout): Markup {
  const own = list(owned.map(({ units, name }) => `${units} × ${name}`));
  const bought =
    shopping.length === 0
      ? paragraph('Nothing to buy.')
      : tableMarkup({
          caption: 'Shopping list',
          columns: [
            { name: 'Units', manner: 'figures' },
            { name: 'Item', manner: 'head' },
            { name: 'Each', manner: 'figures' },
            { name: 'Together', manner: 'figures' },
          ],
          rows: shopping.map(({ units, price, ...item }) => [
            String(units),
            itemText(item),
            priceText(price, board),
            priceText(minorUnits(price * units), board),
          ]),
          total: { name: 'Total', value: priceText(wiring.score.money, board) },
          cards: null,
        });
  return markup`${bought}${own === null ? null : markup`<h3>From what you own</h3>\n${own}`}`;
}

/** The board twice, of which a screen or a sheet of paper shows the one that fits. */
function wiringBody(plan: PlanHandout): Markup | null {
  const board = drawnBoard(plan);
  if (board.pedals.length === 0) return null;
  const figures = (['wide', 'narrow'] as const).flatMap((size) =>
    boardDrawings(plan, size, size).map((drawing) => markup`<figure class="${size}">${drawing}</figure>\n`),
  );
  const key = board.pedals.every(({ state }) => state === 'off')
    ? null
    : markup`<h3>How to read it</h3>\n${list(drawingKey(plan, board).map(keyMarkup))}`;
  return markup`${figures}${key}`;
}
