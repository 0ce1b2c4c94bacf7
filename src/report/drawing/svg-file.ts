import type { Handout, NoPlanHandout, PlanHandout } from '../words/handout.js';
import { markup } from '../page/markup.js';
import { linesHeight, linesOf } from './box.js';
import { unitDescription } from './describe.js';
import { drawingKey, drawnUnits } from './drawings.js';
import { leftOutScene } from './left-out.js';
import { stacked, type Scene, type TextLine } from './scene.js';
import { drawingStyle } from './style.js';
import { svgOf } from './svg.js';
import { wideScenes } from './wide.js';

const gap = 26;
const margin = 24;
const titleSize = 20;
/** Without a plan there are no columns to be as wide as. */
const textWidth = 640;

/** The wiring as an SVG file of its own: what it is, every unit, and how to read it; without a plan, the reasons. */
export function svgFile(handout: Handout): string {
  const scene = handout.kind === 'plan' ? planScene(handout) : noPlanScene(handout);
  const description =
    handout.kind === 'plan'
      ? [
          ...handout.hookup.map((unit) => unitDescription(unit, handout.rows)),
          ...handout.leftOut.map(({ name, why }) => `${name} is without power: ${why}.`),
        ].join(' ')
      : handout.lead;
  // Wherever it is shown, on paper or on a dark page, it stands on a ground of its own.
  const ground = markup`<style>${{ markup: drawingStyle }}</style>
<rect class="ground" x="${-margin}" y="${-margin}" width="100%" height="100%"/>
`;
  const words = { id: 'wiring', title: handout.title, description };
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svgOf(scene, words, 'wiring', { inside: ground, margin }).markup}\n`;
}

function planScene(handout: PlanHandout): Scene {
  const units = wideScenes(drawnUnits(handout), 'first');
  const width = units[0]?.width ?? textWidth;
  const { headline, leftOut, title } = handout;
  const left = leftOutScene(
    leftOut.map(({ name }) => name),
    width,
  );
  const head = [paragraph(title, { strong: true, size: titleSize }), ...[headline.cost, headline.counts].map(plain)];
  return stacked(
    [
      textScene(head, width),
      ...units,
      ...(left === null ? [] : [left]),
      ...(units.length === 0 ? [] : [textScene(drawingKey(handout).map(plain), width)]),
    ],
    gap,
  );
}

function noPlanScene({ title, lead, passages, speech, wanted }: NoPlanHandout): Scene {
  const { board, inventory } = speech;
  // With what is looked for every pedal has power.
  const unfed = wanted.length > 0 ? [] : board.pedals.map(({ id }) => inventory.pedalName(id));
  const off = leftOutScene(unfed, textWidth);
  const reasons = passages.map((passage) =>
    textScene(
      [
        paragraph(passage.title, { strong: true }),
        ...passage.entries.flatMap(({ name, text, below }) =>
          [name === null ? text : `${name} ${text}`, ...below].map(plain),
        ),
      ],
      textWidth,
    ),
  );
  const head = textScene([paragraph(title, { strong: true, size: titleSize }), plain(lead)], textWidth);
  return stacked([head, ...reasons, ...(off === null ? [] : [off])], gap);
}

type Paragraph = { readonly text: string; readonly strong?: boolean; readonly size?: number };

const paragraph = (text: string, manner: Omit<Paragraph, 'text'>): Paragraph => ({ text, ...manner });
const plain = (text: string): Paragraph => ({ text });

/** Text of any length, one paragraph under the other. */
function textScene(paragraphs: readonly Paragraph[], width: number): Scene {
  const notes: TextLine[] = [];
  let y = 0;
  for (const one of paragraphs) {
    const lines = linesOf({ ...one, mostLines: Infinity }, { x: 0, y, width });
    notes.push(...lines);
    y += linesHeight(lines) + 3;
  }
  return { width, height: y, notes, boxes: [], wires: [], frames: [] };
}
