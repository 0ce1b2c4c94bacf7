import { minorUnits } from '../../domain/quantities.js';
import { unitDescription } from '../drawing/describe.js';
import { drawingKey, drawnUnits } from '../drawing/drawings.js';
import { leftOutScene } from '../drawing/left-out.js';
import { narrowScenes } from '../drawing/narrow.js';
import { svgOf } from '../drawing/svg.js';
import { wideScenes } from '../drawing/wide.js';
import type { PlanHandout, ReplugWords } from '../words/handout.js';
import { markup, type Markup } from './markup.js';
import { confirmLead } from '../words/remarks.js';
import { countText, priceText } from '../words/words.js';
import { changesBody, entriesBody } from './changes.js';
import { list, paragraph, remarkList, tableMarkup, type Section } from './elements.js';
import { feedsBody, stepsBody } from './plugging.js';

/** The parts of a plan's page, in the order in which a person needs them; those with nothing to say are left out. */
export function planSections(handout: PlanHandout): readonly Section[] {
  const parts = handout.changes === null ? choosingParts(handout) : replugParts(handout, handout.changes);
  return parts.flatMap(([id, title, body]) => (body === null ? [] : [{ id, title, body }]));
}

type Part = readonly [id: string, title: string, body: Markup | null];

const choosingParts = (handout: PlanHandout): readonly Part[] => [
  leftOutPart(handout),
  ['buy', 'What to buy', buyBody(handout)],
  ['confirm', 'Confirm before plugging in', confirmBody(handout)],
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
  ['confirm', 'Confirm before plugging in', confirmBody(handout)],
  ['re-plug', 'Re-plugging, step by step', stepsBody(handout)],
  ['feeds', 'Feeds when it is done', feedsBody(handout)],
  ['wiring', 'Wiring when it is done', wiringBody(handout)],
  ['entries', 'Write into the board file', entriesBody(changes)],
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
          rows: shopping.map(({ name, units, price }) => [
            String(units),
            name,
            priceText(price, board),
            priceText(minorUnits(price * units), board),
          ]),
          total: { name: 'Total', value: priceText(wiring.score.money, board) },
          cards: null,
        });
  return markup`${bought}${own === null ? null : markup`<h3>From what you own</h3>\n${own}`}`;
}

const confirmBody = ({ confirm }: PlanHandout): Markup | null =>
  confirm.length === 0 ? null : markup`${paragraph(confirmLead)}${remarkList(confirm)}`;

/** Each unit twice, of which a screen or a sheet of paper shows the one that fits. */
function wiringBody(handout: PlanHandout): Markup | null {
  const { hookup, rows, leftOut } = handout;
  const units = drawnUnits(handout);
  const wide = wideScenes(units, 'all');
  const narrow = narrowScenes(units);
  const figures = hookup.map((unit, at) => {
    const description = unitDescription(unit, rows);
    const title = `Wiring of ${unit.name}`;
    const drawn = ([name, scene]: readonly [string, (typeof wide)[number] | undefined]): Markup | null =>
      scene === undefined ? null : svgOf(scene, { id: `${name}-${at + 1}`, title, description }, name);
    return markup`<figure>
<figcaption>${unit.name} (${unit.unit.owned ? 'yours' : 'to buy'}): ${countText(unit.leads.length, 'lead')}</figcaption>
${drawn(['wide', wide[at]])}
${drawn(['narrow', narrow[at]])}
</figure>
`;
  });
  const names = leftOut.map(({ name }) => name);
  const left = leftOutScene(names, 320);
  const off =
    left === null
      ? null
      : markup`<figure>${svgOf(left, { id: 'off', title: 'Pedals without power', description: names.join(', ') }, 'off')}</figure>\n`;
  if (figures.length === 0 && off === null) return null;
  const key = figures.length === 0 ? null : markup`<h3>How to read it</h3>\n${list(drawingKey(handout))}`;
  return markup`${figures}${off}${key}`;
}
