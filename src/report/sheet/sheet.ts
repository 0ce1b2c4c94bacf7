import { documentText } from '../page/document.js';
import { paragraph } from '../page/elements.js';
import { markup } from '../page/markup.js';
import { passageSection } from '../page/passages.js';
import type { Handout, NoPlanHandout, Occasion, PlanHandout } from '../words/handout.js';
import { columns, footBlock, notesBlock, sheetHead, sideMarkup, whole, type Block, type Side } from './paper.js';
import {
  buyPart,
  cautionPart,
  leftOutPart,
  meterPart,
  mindPart,
  movesPart,
  orderPart,
  readPart,
  wiringPicture,
} from './parts.js';
import { printed, type Arrangement } from './print-size.js';
import { sheetStyle } from './style.js';

/**
 * The handout as one sheet of paper, A4 or Letter, to take from the counter to the board: one side, or two where the pedals are
 * many. The drawing takes the room that the words leave.
 */
export const sheetText = (handout: Handout, occasion: Occasion): string =>
  paperText(
    handout.title,
    handout.kind === 'plan' ? arrangementsOf(handout, occasion) : [() => [[noPlanSide(handout, occasion)]]],
  );

/** The first of these arrangements that fits, as a page of its own. */
export function paperText(title: string, arrangements: readonly Arrangement[]): string {
  const { sides, size } = printed(arrangements);
  return documentText(
    title,
    sheetStyle,
    markup`<main class="${size}">
${sides.map(sideMarkup)}</main>`,
  );
}

/** All on one side; what is read before plugging, and what while plugging; the drawing with as little beside it as may be. */
function arrangementsOf(handout: PlanHandout, occasion: Occasion): readonly Arrangement[] {
  const { cost, counts, standing } = handout.headline;
  const head = sheetHead(handout, occasion, markup`<p><b>${cost}</b> ${counts} ${standing}</p>\n`);
  const [leftOut, moves, buy] = [leftOutPart(handout), movesPart(handout), buyPart(handout)];
  const [mind, read] = [mindPart(handout), readPart(handout)];
  const pictures = (['sheet', 'dense'] as const).map((size) => wiringPicture(handout, size));
  const plugged = whole(orderPart(handout), meterPart(handout), cautionPart(handout));
  const end = [plugged, notesBlock, footBlock];
  const sidesWith: readonly ((picture: Block) => readonly Side[])[] = [
    (picture) => [[head, columns(leftOut, moves, buy, mind, read), picture, ...end]],
    (picture) => [
      [head, columns(leftOut, moves, buy, mind), picture, notesBlock],
      [columns(read), plugged, footBlock],
    ],
    (picture) => [
      [head, columns(leftOut, moves, buy), picture],
      [columns(read, mind), ...end],
    ],
    (picture) => [
      [head, columns(leftOut, moves), picture],
      [columns(read, buy, mind), ...end],
    ],
  ];
  return sidesWith.map((sidesOf) => () => pictures.map(sidesOf));
}

function noPlanSide(handout: NoPlanHandout, occasion: Occasion): Side {
  const head = sheetHead(handout, occasion, paragraph(handout.lead));
  return [head, whole(...handout.passages.map(passageSection)), notesBlock, footBlock];
}
