import { documentText } from '../page/document.js';
import { paragraph } from '../page/elements.js';
import { markup } from '../page/markup.js';
import { passageSection } from '../page/passages.js';
import type { Handout, NoPlanHandout, Occasion, PlanHandout } from '../words/handout.js';
import { columns, footBlock, notesBlock, sheetHead, sideMarkup, whole, type Side } from './paper.js';
import { buyPart, cautionPart, leftOutPart, meterPart, mindPart, movesPart, readPart, wiringPicture } from './parts.js';
import { printed } from './print-size.js';
import { sheetStyle } from './style.js';

/**
 * The handout as one sheet of paper, A4 or Letter, to take from the counter to the board: one side, or two where the pedals are
 * many. The drawing takes the room that the words leave.
 */
export const sheetText = (handout: Handout, occasion: Occasion): string =>
  paperText(
    handout.title,
    handout.kind === 'plan' ? planLayouts(handout, occasion) : [[noPlanSide(handout, occasion)]],
  );

/** The first of these ways to lay it out that fits, as a page of its own. */
export function paperText(title: string, layouts: readonly (readonly Side[])[]): string {
  const { sides, size } = printed(layouts);
  return documentText(
    title,
    sheetStyle,
    markup`<main class="${size}">
${sides.map(sideMarkup)}</main>`,
  );
}

/** Up to so many pedals have all that is said of them on one side. */
const mostOnOneSide = 10;

/** All on one side; what is read before plugging, and what while plugging; the drawing with as little beside it as may be. */
function planLayouts(handout: PlanHandout, occasion: Occasion): readonly (readonly Side[])[] {
  const { cost, counts, standing } = handout.headline;
  const head = sheetHead(handout, occasion, markup`<p><b>${cost}</b> ${counts} ${standing}</p>\n`);
  const [leftOut, moves, buy] = [leftOutPart(handout), movesPart(handout), buyPart(handout)];
  const [mind, read] = [mindPart(handout), readPart(handout)];
  const [drawn, low] = [wiringPicture(handout, 'sheet'), wiringPicture(handout, 'dense')];
  const plugged = whole(meterPart(handout), cautionPart(handout));
  const oneSide = [drawn, low].map((picture) => [
    [head, columns(leftOut, moves, buy, mind, read), picture, plugged, notesBlock, footBlock],
  ]);
  const twoSides = [drawn, low].flatMap((picture) => [
    [
      [head, columns(leftOut, moves, buy, mind), picture, notesBlock],
      [columns(read), plugged, footBlock],
    ],
    [
      [head, columns(leftOut, moves, buy), picture],
      [columns(read, mind), plugged, notesBlock, footBlock],
    ],
    [
      [head, columns(leftOut, moves), picture],
      [columns(read, buy, mind), plugged, notesBlock, footBlock],
    ],
  ]);
  return handout.speech.board.pedals.length <= mostOnOneSide ? [...oneSide, ...twoSides] : twoSides;
}

function noPlanSide(handout: NoPlanHandout, occasion: Occasion): Side {
  const head = sheetHead(handout, occasion, paragraph(handout.lead));
  return [head, whole(...handout.passages.map(passageSection)), notesBlock, footBlock];
}
