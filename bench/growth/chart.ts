import { arrowAbove, lineBetween, markAt, styles } from './chart-marks.js';
import { timeText } from '../cells.js';
import type { GrowthLine, GrowthPanel } from './lines.js';
import { seriesText } from './series.js';
import { decadesAround, durationText, positionOn, spacedApart, type LogAxis } from './log-axis.js';
import { exponentText, fittedMs } from './power-fit.js';
import { chainsText } from '../shapes.js';
import { element, escaped, textElement } from './svg.js';

/** In pixels; two panels stand side by side. */
const panel = { width: 450, left: 66, right: 18, top: 64, plot: 270, bottom: 50 };
const keyLine = 19;
const header = 34;
const footer = 34;

/**
 * The panels as an SVG document: logarithmic axes, the same times on all of them; marks are medians, lines the fits.
 * `note` says what the medians are of. @throws RangeError without a panel that has lines.
 */
export function growthChart(panels: readonly GrowthPanel[], note: string): string {
  const decades = decadesAround(panels.flatMap(({ lines }) => lines.flatMap(timesOf)));
  const columns = Math.min(2, panels.length);
  const keys = Math.max(...panels.map(({ lines }) => lines.length));
  const panelHeight = panel.top + keys * keyLine + panel.plot + panel.bottom;
  const width = columns * panel.width;
  const height = header + Math.ceil(panels.length / columns) * panelHeight + footer;
  const placed = panels.map((each, index) => {
    const [x, y] = [(index % columns) * panel.width, header + Math.floor(index / columns) * panelHeight];
    return element('g', { transform: `translate(${x} ${y})` }, panelParts(each, decades, keys));
  });
  const frame = { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${width} ${height}`, width, height };
  return `${element('svg', { ...frame, role: 'img', 'aria-labelledby': 'chart-title chart-desc' }, [
    textElement('title', { id: 'chart-title' }, title),
    textElement('desc', { id: 'chart-desc' }, `${note} ${panels.map(panelText).join(' ')}`),
    `<style>${styles}\n</style>`,
    element('rect', { class: 'ground', width, height }),
    textElement('text', { class: 'heading', x: 16, y: 26 }, title),
    ...placed,
    textElement('text', { x: 16, y: height - 14 }, note),
  ])}\n`;
}

const title = 'Time until the best plan is proven';

/** The times that the axis has to hold: medians, with room for an arrow, and both ends of the fit. */
const timesOf = ({ points, fit }: GrowthLine): readonly number[] =>
  points.flatMap(({ count, spread: { median } }) => [median.ms * (median.atLeast ? 1.6 : 1), fittedMs(fit, count)]);

/** A panel in words, for those who do not see it. */
const panelText = ({ series, chains, lines }: GrowthPanel): string =>
  `Growth with ${seriesText(series)}, ${chainsText(chains)}: ${lines.map((line) => lineText(line, series.varies)).join('; ')}.`;

const lineText = ({ set, points, fit }: GrowthLine, varies: GrowthPanel['series']['varies']): string => {
  const times = points.map(({ count, spread }) => `${count}: ${timeText(spread.median)}`).join(', ');
  return `${set} takes about ${varies} to the power ${exponentText(fit)} (milliseconds at ${times})`;
};

function panelParts(
  { series, chains, lines }: GrowthPanel,
  decades: readonly number[],
  keys: number,
): readonly string[] {
  const top = panel.top + keys * keyLine - 18;
  const counts = series.sizes.map((size) => size[series.varies]);
  const across: LogAxis = {
    least: Math.min(...counts) / 1.15,
    most: Math.max(...counts) * 1.15,
    from: panel.left,
    to: panel.width - panel.right,
  };
  const up: LogAxis = { least: Math.min(...decades), most: Math.max(...decades), from: top + panel.plot, to: top };
  const noun = series.varies === 'pedals' ? 'pedals' : 'supply models';
  return [
    textElement('text', { class: 'subheading', x: 16, y: 22 }, `By ${seriesText(series)}; ${chainsText(chains)}`),
    ...lines.flatMap((line, index) => keyOf(line, noun, 42 + index * keyLine)),
    ...gridOf(across, up, counts, decades),
    textElement('text', { x: (across.from + across.to) / 2, y: up.from + 42, 'text-anchor': 'middle' }, noun),
    ...lines.flatMap((line) => plotOf(line, across, up)),
  ];
}

function keyOf({ set, fit }: GrowthLine, noun: string, y: number): readonly string[] {
  const text = `${set}: grows with ${noun} ^ ${exponentText(fit)}`;
  return [lineBetween(set, [18, y], [58, y]), markAt(set, 38, y), textElement('text', { x: 66, y: y + 4.5 }, text)];
}

function gridOf(
  across: LogAxis,
  up: LogAxis,
  counts: readonly number[],
  decades: readonly number[],
): readonly string[] {
  const frame = { x: across.from, y: up.to, width: across.to - across.from, height: up.from - up.to };
  const rows = decades.flatMap((ms) => {
    const y = positionOn(up, ms);
    const label = { x: across.from - 8, y: y + 4.5, 'text-anchor': 'end' };
    return [
      element('line', { class: 'grid', x1: across.from, x2: across.to, y1: y, y2: y }),
      textElement('text', label, durationText(ms)),
    ];
  });
  const columns = spacedApart(across, counts, 26).flatMap((count) => {
    const x = positionOn(across, count);
    return [
      element('line', { class: 'grid', x1: x, x2: x, y1: up.from, y2: up.to }),
      textElement('text', { x, y: up.from + 20, 'text-anchor': 'middle' }, String(count)),
    ];
  });
  return [...rows, ...columns, element('rect', { class: 'frame', ...frame })];
}

/** The fit across the sizes, and a mark with what it stands for at each median. */
function plotOf({ set, points, fit }: GrowthLine, across: LogAxis, up: LogAxis): readonly string[] {
  const at = (count: number, ms: number): readonly [number, number] => [positionOn(across, count), positionOn(up, ms)];
  const counts = points.map(({ count }) => count);
  const [first, last] = [Math.min(...counts), Math.max(...counts)];
  const marks = points.map(({ count, spread: { median } }) => {
    const [x, y] = at(count, median.ms);
    const name = `<title>${escaped(`${set} at ${count}: ${timeText(median)} ms`)}</title>`;
    return element('g', {}, [name, ...(median.atLeast ? [arrowAbove(set, x, y)] : []), markAt(set, x, y)]);
  });
  return [lineBetween(set, at(first, fittedMs(fit, first)), at(last, fittedMs(fit, last))), ...marks];
}
