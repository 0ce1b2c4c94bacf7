import { engineSetNames, type EngineSetName } from '../set-names.js';
import { element } from './svg.js';

/** How a set is drawn: told apart by shape and dashes, with colour on top. */
type Mark = { readonly shape: (x: number, y: number) => string; readonly filled: boolean; readonly dashes: string };

const RADIUS = 4.5;

const coordinate = (pixels: number): string => String(Math.round(pixels * 10) / 10);

const disc = (x: number, y: number): string =>
  `M${coordinate(x - RADIUS)} ${coordinate(y)}a${RADIUS} ${RADIUS} 0 1 0 ${2 * RADIUS} 0a${RADIUS} ${RADIUS} 0 1 0 ${-2 * RADIUS} 0Z`;
const square = (x: number, y: number): string =>
  `M${coordinate(x - RADIUS)} ${coordinate(y - RADIUS)}h${2 * RADIUS}v${2 * RADIUS}h${-2 * RADIUS}Z`;

const marks: Readonly<Record<EngineSetName, Mark>> = {
  loadouts: { shape: disc, filled: true, dashes: '' },
  'loadouts-alone': { shape: disc, filled: false, dashes: '1 4' },
  HiGHS: { shape: square, filled: false, dashes: '7 4' },
};

/** The class that gives everything of a set its colour. */
export const classOf = (set: EngineSetName): string => `set-${engineSetNames.indexOf(set)}`;

/** The mark of a set at a point. */
export function markAt(set: EngineSetName, x: number, y: number): string {
  const { shape, filled } = marks[set];
  return element('path', { class: `${classOf(set)} mark ${filled ? 'filled' : 'hollow'}`, d: shape(x, y) });
}

/** A straight line in a set's dashes. */
export function lineBetween(
  set: EngineSetName,
  start: readonly [number, number],
  end: readonly [number, number],
): string {
  const [[x1, y1], [x2, y2]] = [start, end];
  const { dashes } = marks[set];
  const broken = dashes === '' ? {} : { 'stroke-dasharray': dashes };
  return element('line', { class: `${classOf(set)} fit`, x1, y1, x2, y2, ...broken });
}

/** An arrow that rises from a mark: the true value lies higher. */
export const arrowAbove = (set: EngineSetName, x: number, y: number): string =>
  element('path', {
    class: `${classOf(set)} fit arrow`,
    d: `M${coordinate(x)} ${coordinate(y - 7)}v-14m-4 5l4 -5l4 5`,
  });

/** Colours for light and dark surroundings; each has a contrast of at least 4.5 to its ground. */
export const styles = `
text { font: 13px system-ui, sans-serif; fill: #1f2328; }
.heading { font-weight: 600; font-size: 15px; }
.subheading { font-weight: 600; }
.ground { fill: #ffffff; }
.grid { stroke: #d1d9e0; stroke-width: 1; }
.frame { stroke: #59636e; stroke-width: 1; fill: none; }
.fit { stroke-width: 1.8; fill: none; }
.arrow { stroke-linecap: round; }
.mark { stroke-width: 1.8; }
.hollow { fill: #ffffff; }
${coloursText(['#0550ae', '#0550ae', '#953800'])}
@media (prefers-color-scheme: dark) {
text { fill: #e6edf3; }
.ground { fill: #0d1117; }
.grid { stroke: #30363d; }
.frame { stroke: #9198a1; }
.hollow { fill: #0d1117; }
${coloursText(['#79c0ff', '#79c0ff', '#ffa657'])}
}`;

function coloursText(colours: readonly string[]): string {
  return colours
    .map((colour, index) => `.set-${index} { stroke: ${colour}; } .set-${index}.filled { fill: ${colour}; }`)
    .join('\n');
}
