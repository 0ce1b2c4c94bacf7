import { minorUnits } from '../../domain/quantities.js';
import { unitDescription } from '../drawing/describe.js';
import { drawingKey, drawnUnits } from '../drawing/drawings.js';
import { leftOutScene } from '../drawing/left-out.js';
import { narrowScenes } from '../drawing/narrow.js';
import { svgOf } from '../drawing/svg.js';
import { wideScenes } from '../drawing/wide.js';
import type { FeedRow } from '../feed-row.js';
import { glued } from '../glue.js';
import type { PlanHandout } from '../handout.js';
import { markup, type Markup } from '../markup.js';
import { confirmLead } from '../remarks.js';
import type { CheckRow, Step } from '../steps.js';
import { countText, priceText } from '../words.js';
import { list, paragraph, remarkList, tableMarkup, tick, type Section } from './elements.js';

/** The parts of a plan's page, in the order in which a person needs them; those with nothing to say are left out. */
export function planSections(handout: PlanHandout): readonly Section[] {
  const { rows, steps, leftOut, evidence } = handout;
  const parts: readonly (readonly [string, string, Markup | null])[] = [
    ['left-out', 'Left out', list(leftOut.map(({ name, why }) => markup`<b>${name}</b>: ${why}`))],
    ['buy', 'What to buy', buyBody(handout)],
    ['confirm', 'Confirm before plugging in', confirmBody(handout)],
    ['cautions', 'Cautions', remarkList(handout.cautions)],
    ['wiring', 'Wiring', wiringBody(handout)],
    ['feeds', 'Feeds', rows.length === 0 ? null : feedsBody(rows)],
    ['hook-up', 'Hooking up, step by step', steps.length === 0 ? null : stepsBody(steps)],
    ['grounds', 'Grounds and noise', remarkList(handout.grounds)],
    ['proof', 'Why no plan is better', evidence === null ? null : paragraph(evidence)],
  ];
  return parts.flatMap(([id, title, body]) => (body === null ? [] : [{ id, title, body }]));
}

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

const feedsBody = (rows: readonly FeedRow[]): Markup =>
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
      `${row.unit}, output ${row.outputs}${row.switched ? `, set to ${row.setting}` : ''}, ${row.ground}`,
      plugMarkup(row),
      row.polaritySwitch === null ? row.way : `${row.way}; polarity switch on ${row.polaritySwitch}`,
      row.peak === null ? row.load : `${row.load}; ${row.peak}`,
    ]),
    cards: 'feeds',
  });

/** What belongs together stays on one line, as far as it is short. */
const plugMarkup = ({ volts, polarity, plug }: FeedRow): Markup =>
  markup`${[volts, polarity].map((words) => (words === null ? null : markup`<span class="whole">${words},</span> `))}${
    plug.length <= shortPlug ? markup`<span class="whole">${plug}</span>` : plug
  }`;

const shortPlug = 16;

const stepsBody = (steps: readonly Step[]): Markup =>
  markup`<ol class="steps">\n${steps.map(
    ({ title, text, items, checks }) => markup`<li>
<h3>${title}</h3>
${paragraph(text)}${items.length === 0 ? null : markup`<ul class="ticks">\n${items.map((item) => markup`<li>${tick(item)}</li>\n`)}</ul>\n`}\
${checks === null ? null : checksTable(checks)}</li>
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
