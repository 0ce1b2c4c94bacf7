import { drawnBoard } from '../drawing/contents.js';
import { boardDrawings } from '../drawing/drawings.js';
import { drawingKey } from '../drawing/key.js';
import type { FeedRow } from '../words/feed-row.js';
import { glued } from '../words/glue.js';
import type { PlanHandout, ReplugWords } from '../words/handout.js';
import type { ShoppingItem } from '../words/purchases.js';
import { plainly, withCare } from '../words/remark.js';
import type { CheckRow } from '../words/steps.js';
import { listText, priceText } from '../words/words.js';
import { list, paragraph, remarkList, tableMarkup, tick, tickList, type TableColumn } from './elements.js';
import { keyMarkup } from './key-markup.js';
import { markup, type Markup } from './markup.js';

// The parts of a plan's page that are more than words.

/** What to buy with its prices, and what is there already. */
export function buyBody(plan: PlanHandout): Markup {
  const own = list(plan.owned.map(({ units, name }) => `${units} × ${name}`));
  const bought = billMarkup(plan, [{ name: 'Units', manner: 'figures' }], ({ units, text }) => [String(units), text]);
  return markup`${bought}${own === null ? null : markup`<h3>From what you own</h3>\n${own}`}`;
}

/** Prices that add up to the sum below them; columns before that of the item are handed in. */
export const billMarkup = (
  { shopping, wiring, speech: { board } }: PlanHandout,
  before: readonly TableColumn[],
  itemOf: (item: ShoppingItem) => readonly string[],
): Markup =>
  shopping.length === 0
    ? paragraph('Nothing to buy.')
    : tableMarkup({
        caption: 'Shopping list',
        columns: [
          ...before,
          { name: 'Item', manner: 'head' },
          { name: 'Each', manner: 'figures' },
          { name: 'Together', manner: 'figures' },
        ],
        rows: shopping.map((item) => [...itemOf(item), item.each, item.together]),
        total: { name: 'Total', value: priceText(wiring.score.money, board) },
        cards: null,
      });

/** The board twice, of which a screen or a sheet of paper shows the one that fits. */
export function wiringBody(plan: PlanHandout): Markup | null {
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

/** What changes of today's wiring: who stays, who moves from where to where and why, who is new, who is off. */
export function changesBody({ stay, releads, moves, added, dropped, unlisted }: ReplugWords): Markup {
  const stays = [
    ...(stay.length === 0 ? [] : [plainly(`${listText(stay)}.`)]),
    ...(releads.length === 0 ? [] : [plainly(`With other leads: ${listText(releads)}.`)]),
  ];
  const off = dropped.map((name) => withCare(`${name} is unplugged and left without power.`));
  return markup`${part('Stay', remarkList(stays))}${part('Move', moves.length === 0 ? null : movesTable(moves))}\
${part('New', list(added.map(({ name, to }) => markup`<b>${name}</b>: ${glued(to)}`)))}${part('Off', remarkList(off))}\
${part('Not listed as yours', remarkList(unlisted.map(withCare)))}`;
}

const part = (title: string, body: Markup | null): Markup | null =>
  body === null ? null : markup`<h3>${title}</h3>\n${body}`;

const movesTable = (moves: ReplugWords['moves']): Markup =>
  tableMarkup({
    caption: 'What moves, in the order of the board',
    columns: [{ name: 'Pedal', manner: 'head' }, { name: 'Today' }, { name: 'Then' }, { name: 'Why' }],
    rows: moves.map(({ name, from, to, why }) => [name, from, to, why]),
    cards: 'moves',
  });

/** Every pedal with its way and its load; null where none has power. */
export const feedsBody = ({ rows }: PlanHandout): Markup | null => (rows.length === 0 ? null : feedsTable(rows));

const feedsTable = (rows: readonly FeedRow[]): Markup =>
  tableMarkup({
    caption: 'Every pedal, in the order of hooking up',
    columns: [
      { name: 'Lead' },
      { name: 'Pedal', manner: 'head' },
      { name: 'From' },
      { name: 'At the pedal' },
      { name: 'By way of' },
      { name: 'Load of the output' },
    ],
    rows: rows.map((row) => [
      row.mark,
      row.pedal,
      row.outputs === ''
        ? row.unit
        : `${row.unit}, output ${row.outputs}${row.switched ? `, set to ${row.setting}` : ''}, ${row.ground}`,
      plugMarkup(row),
      row.polaritySwitch === null ? row.way : `${row.way}; polarity switch on ${row.polaritySwitch}`,
      row.peak === null ? row.load : `${row.load}; ${row.peak}`,
    ]),
    cards: 'feeds',
  });

/** What belongs together stays on one line, as far as it is short. */
const plugMarkup = ({ volts, polarity, plug }: FeedRow): Markup =>
  plug === ''
    ? markup`${volts}`
    : markup`${[volts, polarity].map((words) => (words === null ? null : markup`<span class="whole">${words},</span> `))}${
        plug.length <= shortPlug ? markup`<span class="whole">${plug}</span>` : plug
      }`;

const shortPlug = 16;

/** What to do in which order, with boxes to tick; null where there is nothing to do. */
export const stepsBody = ({ steps }: PlanHandout): Markup | null =>
  steps.length === 0
    ? null
    : markup`<ol class="steps">\n${steps.map(
        ({ title, text, items, checks }) => markup`<li>
<h3>${title}</h3>
${paragraph(text)}${tickList(items)}${checks === null ? null : checksTable(checks)}</li>
`,
      )}</ol>\n`;

const checksTable = (checks: readonly CheckRow[]): Markup =>
  tableMarkup({
    caption: 'What the meter must show at each plug; on a jack plug the centre is the tip',
    columns: [
      { name: 'Lead' },
      { name: 'Pedal', manner: 'head' },
      { name: 'Meter on' },
      { name: 'Probes' },
      { name: 'Must read' },
      { name: 'Result' },
    ],
    rows: checks.map(({ mark, pedal, range, probes, reads, note }) => [
      mark,
      pedal,
      markup`<span class="whole">${range}</span>`,
      probes === null ? 'either way round' : `black to ${probes.black}, red to ${probes.red}`,
      markup`<b>${glued(reads)}</b>${note === null ? null : `; ${glued(note)}`}`,
      tick('reads right', `Lead ${mark}`),
    ]),
    cards: 'checks',
  });
