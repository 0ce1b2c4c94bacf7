import type { FeedRow } from '../words/feed-row.js';
import { glued } from '../words/glue.js';
import type { PlanHandout } from '../words/handout.js';
import { markup, type Markup } from './markup.js';
import type { CheckRow } from '../words/steps.js';
import { paragraph, tableMarkup, tick } from './elements.js';

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
