import { markup, type Markup } from '../page/markup.js';
import type { Area, Bar, Box, Frame, Scene, TextLine, Wire } from './scene.js';
import { isGuessed } from './text-size.js';

/** What a drawing says to those who do not see it. */
export type DrawingWords = {
  /** Different for each drawing of a page. */
  readonly id: string;
  readonly title: string;
  /** All that it shows, in sentences. */
  readonly description: string;
};

export type DrawingManner = {
  /** What comes before the shapes; nothing when left out. */
  readonly inside?: Markup;
  /** Room on all four sides; as much as strokes at the edge need when left out. */
  readonly margin?: number;
};

const strokeRoom = 2;

/** The scene as an SVG element. Its colours come from the style sheet around it, or from one inside. */
export function svgOf(scene: Scene, words: DrawingWords, className: string, manner: DrawingManner = {}): Markup {
  const { id, title, description } = words;
  const { inside = null, margin = strokeRoom } = manner;
  const [width, height] = [round(scene.width + 2 * margin), round(scene.height + 2 * margin)];
  return markup`<svg xmlns="http://www.w3.org/2000/svg" class="${className}" role="img" \
aria-labelledby="${id}-title" aria-describedby="${id}-text" viewBox="${-margin} ${-margin} ${width} ${height}" \
width="${width}" height="${height}">
<title id="${id}-title">${title}</title>
<desc id="${id}-text">${description}</desc>
${inside}${shapesOf(scene)}
</svg>`;
}

/** Wires lie below boxes, so that a label covers its wire. */
const shapesOf = ({ frames, wires, boxes, notes }: Scene): Markup =>
  markup`${frames.map(frameOf)}${wires.map(wireOf)}${boxes.map(boxMarkup)}${notes.map((line) => textOf(line, line.strong ? 'note name' : 'note'))}`;

const frameOf = ({ label, ...area }: Frame): Markup =>
  markup`<rect class="frame" ${areaOf(area)} rx="6"/>${label.map((line) => textOf(line, 'note'))}\n`;

const wireOf = ({ points }: Wire): Markup =>
  markup`<path class="wire" d="M${points.map(({ x, y }) => `${round(x)} ${round(y)}`).join('L')}"/>\n`;

function boxMarkup(box: Box): Markup {
  const { kind, lines, bars, partings, ...area } = box;
  const corner = kind === 'mark' ? area.height / 2 : kind === 'pedal' ? 8 : 3;
  const parted = partings.map(
    (y) => markup`<path class="parting" d="M${round(area.x)} ${round(y)}H${round(area.x + area.width)}"/>`,
  );
  const texts = lines.map((line) => textOf(line, line.strong ? 'name' : 'plain'));
  return markup`<g class="box ${kind}"><rect ${areaOf(area)} rx="${corner}"/>${parted}${bars.map(barOf)}${texts}</g>\n`;
}

/** What is over full must not run over the edge. */
function barOf({ percent, ...area }: Bar): Markup {
  const full = { ...area, width: (area.width * Math.min(100, percent)) / 100 };
  return markup`<rect class="bar" ${areaOf(area)}/><rect class="full" ${areaOf(full)}/>`;
}

function textOf({ text, full, x, y, size, width }: TextLine, className: string): Markup {
  const fitted = isGuessed(text) ? markup` textLength="${round(width)}" lengthAdjust="spacingAndGlyphs"` : null;
  const title = full === null ? null : markup`<title>${full}</title>`;
  return markup`<text class="${className}" x="${round(x)}" y="${round(y)}" font-size="${size}"${fitted}>${title}${text}</text>`;
}

const areaOf = ({ x, y, width, height }: Area): Markup =>
  markup`x="${round(x)}" y="${round(y)}" width="${round(width)}" height="${round(height)}"`;

const round = (value: number): number => Math.round(value * 10) / 10;
