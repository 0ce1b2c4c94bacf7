import { everyFeed } from '../../domain/plan.js';
import { list, paragraph, remarkList, tableMarkup, tick, type Section } from '../page/elements.js';
import { markup, type Markup } from '../page/markup.js';
import { billMarkup } from '../page/plan-bodies.js';
import { noiseCautions, pluggingCautions } from '../words/cautions.js';
import { glued } from '../words/glue.js';
import type { PlanHandout } from '../words/handout.js';
import type { LookAt } from '../words/read-at-home.js';
import { withCare } from '../words/remark.js';
import { standingCautions } from '../words/remarks.js';
import { digitalTogether } from '../words/shared-grounds.js';
import { shortStopText, standsOf } from '../words/stands.js';
import { batteryItems, batteryText, isKept, keptPlaces, plugChecks } from '../words/steps.js';
import { listText } from '../words/words.js';
import { boardDrawings, sizedDrawing } from '../drawing/drawings.js';
import { picture, type Block } from './paper.js';
import { leastWidth } from './print-size.js';

// The parts of a plan's sheet; null where one has nothing to say.

const part = (id: string, title: string, body: Markup | null): Section | null =>
  body === null ? null : { id, title, body };

/** Pedals without power, and why. */
export const leftOutPart = ({ leftOut }: PlanHandout): Section | null =>
  part('left-out', 'Left out', list(leftOut.map(({ name, why }) => markup`<b>${name}</b>: ${why}`)));

/** Of a plan for re-plugging, who stays, moves, is new and goes. */
export function movesPart({ changes }: PlanHandout): Section | null {
  if (changes === null) return null;
  const { stay, releads, moves, added, dropped } = changes;
  const to = (name: string, where: string): Markup => markup`<b>${name}</b>: ${glued(where)}`;
  return part(
    'changes',
    'What changes',
    list([
      ...(stay.length === 0 ? [] : [`${listText(stay)}: as today.`]),
      ...(releads.length === 0 ? [] : [`${listText(releads)}: other leads, the same output.`]),
      ...moves.map((move) => to(move.name, `from ${move.from} to ${move.to}`)),
      ...added.map((one) => to(one.name, `new, ${one.to}`)),
      ...dropped.map((name) => to(name, 'unplugged, without power')),
    ]),
  );
}

/** Of a plan for re-plugging, what is done one after the other, so that no pedal meets a plug that was not measured. */
export function orderPart({ changes, steps }: PlanHandout): Section | null {
  const items = steps.map(({ title, text, items: all, checks }) => {
    const plugs = [...new Set(checks?.map(({ mark }) => mark))];
    const measured = plugs.length === 0 ? [] : [`Lead${plugs.length === 1 ? '' : 's'} ${listText(plugs)}, as below.`];
    return markup`<li><b>${title}</b>: ${glued([text, ...all, ...measured].join(' '))}</li>\n`;
  });
  return part('order', 'In this order', changes === null || items.length === 0 ? null : markup`<ol>\n${items}</ol>\n`);
}

/** What to buy, and what of one's own is used. */
export function buyPart(plan: PlanHandout): Section | null {
  const own = plan.owned.map(({ units, name }) => `${units} × ${name}`);
  const bought = billMarkup(plan, [], ({ units, text }) => [`${units} × ${text}`]);
  return part(
    'buy',
    'What to buy',
    markup`${bought}${own.length === 0 ? null : paragraph(`From what you own: ${listText(own)}.`)}`,
  );
}

/** The board twice, of which a small screen shows the narrow one, in several pictures where they are many. */
export function wiringPicture(handout: PlanHandout, size: 'sheet' | 'dense'): Block {
  const flat = sizedDrawing(handout, size, 'sheet');
  const drawings = [flat.markup, ...boardDrawings(handout, 'narrow', 'narrow')];
  const body = handout.hookup.length === 0 ? null : markup`${drawings.map((one) => markup`${one}\n`)}`;
  return picture(part('wiring', 'Wiring', body), (leastWidth * flat.height) / flat.width);
}

/** Boxes to tick, what decides most first. */
export const readPart = ({ toRead: { groups, where } }: PlanHandout): Section | null =>
  part(
    'read',
    'Read at home, before you plug anything in',
    groups.length === 0
      ? null
      : markup`${groups.map(
          ({ title, looks }) => markup`<h3>${title}</h3>
<ul class="looks">
${looks.map(lookMarkup)}</ul>
`,
        )}${where === null ? null : markup`<p class="where">Where to look: ${where}</p>\n`}`,
  );

const lookMarkup = ({ names, text }: LookAt): Markup =>
  markup`<li>${names.map((name) => markup`${tick(name)} `)}${glued(text)}</li>\n`;

/** A row a plug, with a box to tick; then where nothing is to be plugged in yet. */
export function meterPart({ rows, wiring, speech }: PlanHandout): Section | null {
  const { inventory } = speech;
  const plugged = rows.filter(({ feed }) => !isKept(inventory, feed));
  const kept = keptPlaces(inventory, rows);
  if (rows.length === 0) return null;
  const checks = plugged.flatMap((row) =>
    plugChecks(inventory, row.mark, row.feed).map((check) => ({ ...check, row })),
  );
  const batteries = plugged.flatMap(({ feed }) => batteryItems(speech, feed));
  const table = tableMarkup({
    caption:
      'At each plug, before it is put in: the black probe on the other part; on a jack plug the centre is the tip',
    columns: [
      { name: 'Lead' },
      { name: 'From' },
      { name: 'Pedal', manner: 'head' },
      { name: 'Red probe' },
      { name: 'Must read' },
      { name: 'Right' },
    ],
    rows: checks.map(({ row, mark, pedal, range, probes, reads, note }) => [
      mark,
      fromText(row),
      pedal,
      probes === null ? 'on either' : `on the ${probes.red}`,
      markup`<b>${glued(reads)} ${range.slice(0, 2)}</b>${note === null ? null : `; ${glued(note)}`}`,
      tick('', `Lead ${mark} reads right`),
    ]),
    cards: 'checks',
  });
  return part(
    'meter',
    'What the meter must show',
    markup`${checks.length === 0 ? null : markup`${table}${paragraph(shortStopText(standsOf(inventory, everyFeed(wiring))))}`}${batteries.length === 0 ? null : paragraph(`${batteryText} ${batteries.join(' ')}`)}${remarkList(
      kept.length === 0 ? [] : [withCare(`Plug nothing in here yet: ${kept.join(' ')}`)],
    )}`,
  );
}

const fromText = ({ unit, outputs, switched, setting, polaritySwitch }: PlanHandout['rows'][number]): string =>
  [
    `${unit}, output ${outputs}`,
    ...(switched ? [`set to ${setting}`] : []),
    ...(polaritySwitch === null ? [] : [`polarity switch on ${polaritySwitch}`]),
  ].join(', ');

/** Who may hum, and what asks for care here. */
export function mindPart({ wiring, speech: { inventory } }: PlanHandout): Section | null {
  const texts = [
    ...noiseCautions(inventory, wiring),
    ...digitalTogether(inventory, wiring),
    ...pluggingCautions(inventory, wiring),
  ];
  return part('mind', 'Mind', list(texts));
}

/** What holds whatever is plugged. */
export const cautionPart = ({ speech, wiring }: PlanHandout): Section | null =>
  part(
    'cautions',
    'Always',
    paragraph(standingCautions(speech, standsOf(speech.inventory, everyFeed(wiring)), 'plan').join(' ')),
  );
