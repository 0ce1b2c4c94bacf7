import { documentText } from '../page/document.js';
import { paragraph } from '../page/elements.js';
import { markup } from '../page/markup.js';
import { passageSection } from '../page/passages.js';
import type { Handout, NoPlanHandout, Occasion, PlanHandout } from '../words/handout.js';
import { footBlock, notesBlock, pair, picture, sheetHead, sideMarkup, whole, type Side } from './paper.js';
import { buyPart, cautionPart, leftOutPart, meterPart, mindPart, movesPart, readPart, wiringPart } from './parts.js';
import { printSize } from './print-size.js';
import { sheetStyle } from './style.js';

/**
 * The handout as one sheet of paper, A4 or Letter, to take from the counter to the board: one side, or two where the pedals are
 * many. The drawing takes the room that the words leave.
 */
export const sheetText = (handout: Handout, occasion: Occasion): string =>
  paperText(handout.title, handout.kind === 'plan' ? planSides(handout, occasion) : [noPlanSide(handout, occasion)]);

/** These sides as a page of their own. */
export const paperText = (title: string, sides: readonly Side[]): string =>
  documentText(
    title,
    sheetStyle,
    markup`<main class="${printSize(sides)}">
${sides.map(sideMarkup)}</main>`,
  );

/** Up to so many pedals have all that is said of them on one side. */
const mostOnOneSide = 10;
/** How high a drawing is at least, in millimetres, beside all the words and on a side of its own. */
const leastDrawing = { oneSide: 70, twoSides: 120 } as const;

function planSides(handout: PlanHandout, occasion: Occasion): readonly Side[] {
  const { cost, counts, standing } = handout.headline;
  const head = sheetHead(handout, occasion, markup`<p><b>${cost}</b> ${counts} ${standing}</p>\n`);
  const buy = [leftOutPart(handout), movesPart(handout), buyPart(handout)];
  const [mind, read, drawn] = [mindPart(handout), readPart(handout), wiringPart(handout)];
  const plugged = whole(meterPart(handout), cautionPart(handout));
  return handout.speech.board.pedals.length <= mostOnOneSide
    ? [[head, pair([...buy, mind], [read]), picture(drawn, leastDrawing.oneSide), plugged, notesBlock, footBlock]]
    : [
        [head, pair(buy, [mind]), picture(drawn, leastDrawing.twoSides), notesBlock],
        [whole(read), plugged, footBlock],
      ];
}

function noPlanSide(handout: NoPlanHandout, occasion: Occasion): Side {
  const head = sheetHead(handout, occasion, paragraph(handout.lead));
  return [head, whole(...handout.passages.map(passageSection)), notesBlock, footBlock];
}
