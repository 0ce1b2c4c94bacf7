import { markup, type Markup } from '../page/markup.js';
import { hazardShapes, hazardShapeSize } from '../signs/hazard-shape.js';
import { signShape, signSize } from '../signs/sign.js';
import type { OutputId, UnitId } from './drawn-board.js';
import type {
  Area,
  Bar,
  CapShape,
  Face,
  LeadShape,
  OutputShape,
  PedalShape,
  PlacedMark,
  PlacedSign,
  Point,
  RunShape,
  Scene,
  StripShape,
  TagShape,
  TextLine,
} from './scene.js';
import { isGuessed } from './text-size.js';

/** What a drawing says to those who do not see it. */
type DrawingWords = {
  /** Different for each drawing of a page. */
  readonly id: string;
  readonly title: string;
  /** All that it shows, in sentences. */
  readonly description: string;
};

const strokeRoom = 2;

/**
 * The scene as an SVG element. Its colours come from the style sheet around it. Groups say what they show: `data-unit`,
 * `data-output`, `data-pedal`, `data-lead`.
 */
export const svgOf = (scene: Scene, words: DrawingWords, className: string): Markup =>
  svgElement({ ...scene, margin: strokeRoom }, words, className, sceneMarkup(scene));

/** An SVG element of this size, with room on all four sides of what is in it. */
export function svgElement(
  size: { readonly width: number; readonly height: number; readonly margin: number },
  { id, title, description }: DrawingWords,
  className: string,
  inside: Markup,
): Markup {
  const { margin } = size;
  const [width, height] = [round(size.width + 2 * margin), round(size.height + 2 * margin)];
  return markup`<svg xmlns="http://www.w3.org/2000/svg" class="${className}" role="img" \
aria-labelledby="${id}-title" aria-describedby="${id}-text" viewBox="${-margin} ${-margin} ${width} ${height}" \
width="${width}" height="${height}">
<title id="${id}-title">${title}</title>
<desc id="${id}-text">${description}</desc>
${inside}
</svg>`;
}

/** Leads lie below all boxes, which they only touch; their numbers lie on top. */
export const sceneMarkup = ({ strips, pedals, leads }: Scene): Markup =>
  markup`${leads.map(leadMarkup)}${strips.map(stripMarkup)}${pedals.map(pedalMarkup)}\
${leads.map(({ number, tags }) => markup`<g data-lead="${number}">${tags.map(tagMarkup)}</g>\n`)}`;

const stripMarkup = (strip: StripShape): Markup =>
  markup`<g class="box strip" data-unit="${unitText(strip.id)}"><rect ${areaOf(strip)} rx="7"/>${faceMarkup(strip.face, strip)}</g>
${strip.runs.map(runMarkup)}`;

const runMarkup = (run: RunShape): Markup => {
  const rail = run.isIsolated ? null : markup`<path class="rail" d="${railOf(run)}"/>`;
  return markup`<g class="run">${rail}${faceMarkup(run.face, run)}</g>\n${run.outputs.map(outputMarkup)}`;
};

/** One line past all outputs of a stretch, with a branch to each that is nothing to the right of another one. */
function railOf({ x, outputs }: RunShape): string {
  const [first, last] = [outputs[0], outputs.at(-1)];
  if (first === undefined || last === undefined) return '';
  const left = round(x + 4.5);
  const atRail = outputs.filter((output) => output.x === first.x);
  const branches = atRail.map((output) => `M${left} ${round(output.socket.y)}H${round(output.x)}`);
  return `M${left} ${round(first.socket.y)}V${round(last.socket.y)}${branches.join('')}`;
}

const outputMarkup = (output: OutputShape): Markup =>
  markup`<g class="box output ${output.state}" data-output="${outputText(output.id)}"><rect ${areaOf(output)} rx="3"/>\
${faceMarkup(output.face, output)}${capMarkup(output.cap)}<circle cx="${round(output.socket.x)}" cy="${round(output.socket.y)}" r="3.5"/></g>\n`;

const pedalMarkup = (pedal: PedalShape): Markup =>
  markup`<g class="box pedal ${pedal.state}" data-pedal="${pedal.id}"><rect ${areaOf(pedal)} rx="8"/>\
${faceMarkup(pedal.face, pedal)}${capMarkup(pedal.cap)}</g>\n`;

const capMarkup = (cap: CapShape | null): Markup | null =>
  cap === null ? null : markup`<g class="box cap"><rect ${areaOf(cap)} rx="3"/>${faceMarkup(cap.face, cap)}</g>`;

const leadMarkup = ({ number, isKept, tone, lines, joints }: LeadShape): Markup => {
  const path = lines.map(pathOf).join('');
  const dots = joints.map(({ x, y }) => markup`<circle cx="${round(x)}" cy="${round(y)}" r="2.6"/>`);
  return markup`<g class="lead tone-${tone}${isKept ? ' kept' : ''}" data-lead="${number}"><path class="gap" d="${path}"/>\
<path class="wire" d="${path}"/>${dots}</g>\n`;
};

const cornerRadius = 4;

/** The line with its corners rounded, as far as there is room. */
function pathOf(points: readonly Point[]): string {
  const [start, ...rest] = points;
  if (start === undefined) return '';
  const pieces = [`M${pointText(start)}`];
  for (const [at, corner] of rest.entries()) {
    const before = points[at] ?? corner;
    const after = points[at + 2];
    if (after === undefined) pieces.push(`L${pointText(corner)}`);
    else {
      const radius = Math.min(cornerRadius, distance(before, corner) / 2, distance(corner, after) / 2);
      pieces.push(
        `L${pointText(towards(corner, before, radius))}Q${pointText(corner)} ${pointText(towards(corner, after, radius))}`,
      );
    }
  }
  return pieces.join('');
}

const distance = (one: Point, other: Point): number => Math.abs(one.x - other.x) + Math.abs(one.y - other.y);
const towards = (from: Point, to: Point, by: number): Point => ({
  x: from.x + Math.sign(to.x - from.x) * by,
  y: from.y + Math.sign(to.y - from.y) * by,
});

const tagMarkup = ({ text, ...area }: TagShape): Markup =>
  markup`<g class="box tag"><rect ${areaOf(area)} rx="${round(area.height / 2)}"/>${textMarkup(text)}</g>`;

/** What stands in an area. */
export const faceMarkup = (
  { texts, bars, marks, signs, partings }: Face,
  { x, width }: Pick<Area, 'x' | 'width'>,
): Markup => {
  const parted = partings.map((y) => markup`<path class="parting" d="M${round(x)} ${round(y)}H${round(x + width)}"/>`);
  return markup`${parted}${bars.map(barMarkup)}${signs.map(signMarkup)}${texts.map(textMarkup)}${marks.map(markMarkup)}`;
};

/** What is over full must not run over the edge. */
function barMarkup({ percent, ...area }: Bar): Markup {
  const full = { ...area, width: (area.width * Math.min(100, percent)) / 100 };
  return markup`<rect class="bar" ${areaOf(area)}/><rect class="full" ${areaOf(full)}/>`;
}

const markMarkup = ({ hazard, words, x, y, width }: PlacedMark): Markup =>
  markup`<path class="mark" transform="translate(${round(x)} ${round(y)}) scale(${scaleText(width / hazardShapeSize)})" \
d="${hazardShapes[hazard]}"/>${words.map(textMarkup)}`;

const signMarkup = ({ sign, x, y, width }: PlacedSign): Markup =>
  markup`<g class="sign" transform="translate(${round(x)} ${round(y)}) scale(${scaleText(width / signSize(sign).width)})">\
${signShape(sign)}</g>`;

const scaleText = (scale: number): number => Math.round(scale * 1000) / 1000;

const anchors = { start: null, middle: markup` text-anchor="middle"`, end: markup` text-anchor="end"` } as const;

function textMarkup({ text, full, x, y, size, width, anchor, strong, soft }: TextLine): Markup {
  const fitted = isGuessed(text) ? markup` textLength="${round(width)}" lengthAdjust="spacingAndGlyphs"` : null;
  const title = full === null ? null : markup`<title>${full}</title>`;
  const className = `${strong ? 'name' : 'plain'}${soft ? ' soft' : ''}`;
  return markup`<text class="${className}" x="${round(x)}" y="${round(y)}" font-size="${size}"${anchors[anchor]}${fitted}>${title}${text}</text>`;
}

const unitText = ({ supply, unit }: UnitId): string => `${supply} ${unit}`;
const outputText = (id: OutputId): string => `${unitText(id)} ${id.output}`;

const areaOf = ({ x, y, width, height }: Area): Markup =>
  markup`x="${round(x)}" y="${round(y)}" width="${round(width)}" height="${round(height)}"`;

const pointText = ({ x, y }: Point): string => `${round(x)} ${round(y)}`;
const round = (value: number): number => Math.round(value * 10) / 10;
