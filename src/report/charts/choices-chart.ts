import { minorUnits } from '../../domain/quantities.js';
import type { Comparison, PlannedOption } from '../../planning/compare/comparison.js';
import { markup, type Markup } from '../page/markup.js';
import { optionWords } from '../words/option-words.js';
import type { Speech } from '../words/speech.js';
import { countText, priceText } from '../words/words.js';
import { chartMarkup, disc, discWidth, label, labelWidth, line, ticksTo } from './chart.js';

/** No wider than a phone shows without making it too small to read. */
const width = 420;
/** Beside the money: room for the scales, and for half an amount. */
const [left, right] = [30, 24];
/** Above a panel, for its name. */
const panelHead = 16;
const nameRow = 16;
const step = 20;
const panelGap = 10;
const names = { exposed: 'Exposed pedals', bricks: 'Supplies in use' } as const;
type Figure = keyof typeof names;

/** What stands in the chart: a choice with its number and name, or with neither what else nothing beats. */
type Point = { readonly money: number; readonly mark: string; readonly name: string } & Readonly<
  Record<Figure, number>
>;

/**
 * Money from left to right; above one another how many pedals are exposed and how many supplies are in use. Each choice has its
 * number in both, below its name. Null where there is nothing to compare.
 */
export function choicesChart(speech: Speech, comparison: Comparison): Markup | null {
  const points = pointsOf(speech, comparison);
  if (points.length < 2) return null;
  const { budget } = speech.board.policy;
  const ticks = ticksTo(Math.max(...points.map(({ money }) => money), budget ?? 0));
  const most = ticks.at(-1) ?? 1;
  const at = (money: number): number => left + ((width - left - right) * money) / most;
  const named = namesOf(points, at);
  const top = (Math.max(...named.map(({ row }) => row)) + 1) * nameRow + 4;
  const exposed = panel(points, 'exposed', top, at);
  const bricks = panel(points, 'bricks', exposed.bottom + panelGap, at);
  const { bottom } = bricks;
  const heads = [exposed.head, bricks.head];
  const shapes = [
    ...ticks.flatMap((tick) => [
      ...upright('hair', at(tick), { from: top, to: bottom }, heads),
      label(amountText(tick, speech), at(tick), bottom + 16, 'middle', 'faint'),
    ]),
    ...(budget === null ? [] : upright('limit', at(budget), { from: top - 2, to: bottom }, heads)),
    ...named.flatMap(({ point, x, row }) => [
      ...upright('stem', at(point.money), { from: (row + 1) * nameRow, to: bottom }, heads),
      label(point.name, x, row * nameRow + 12, 'start', 'strong'),
    ]),
    ...exposed.shapes,
    ...bricks.shapes,
  ];
  const words = {
    id: 'choices-chart',
    title: 'Money against exposed pedals and supplies',
    description: described(speech, points),
  };
  const note = noteOf(speech, points);
  return markup`${chartMarkup(words, width, bottom + 22, shapes)}<p class="note">${note}</p>\n`;
}

function noteOf(speech: Speech, points: readonly Point[]): string {
  const { budget } = speech.board.policy;
  return [
    'Further left costs less, further down is quieter and takes fewer sockets.',
    ...(budget === null ? [] : [`The dashed line is the budget of ${priceText(budget, speech.board)}.`]),
    ...(points.some(({ mark }) => mark === '') ? ['Open dots: what else nothing beats.'] : []),
  ].join(' ');
}

const described = (speech: Speech, points: readonly Point[]): string =>
  points
    .map(
      ({ name, money, exposed, bricks }) =>
        `${name === '' ? 'Also unbeaten' : name}: ${priceText(minorUnits(money), speech.board)}, ${exposed} exposed, ${countText(bricks, 'supply', 'supplies')}.`,
    )
    .join(' ');

const amountText = (tick: number, { board }: Speech): string =>
  priceText(minorUnits(tick), board).replace(/\.0+(?=\D)/, '');

/** The choices, then what else nothing beats. */
function pointsOf(speech: Speech, { options, unbeaten }: Comparison): readonly Point[] {
  const shown = options.filter((option): option is PlannedOption => option.kind === 'plan');
  const choices = shown.map((option): Point => {
    const { mark, label: name } = optionWords(speech, option);
    const { money, exposed, bricks } = option.score;
    return { money, exposed, bricks, mark, name: `${mark} ${name}` };
  });
  const others = unbeaten.points
    .filter((point) =>
      choices.every(
        ({ money, exposed, bricks }) => money !== point.money || exposed !== point.exposed || bricks !== point.bricks,
      ),
    )
    .map(({ money, exposed, bricks }): Point => ({ money, exposed, bricks, mark: '', name: '' }));
  return [...choices, ...others];
}

/** Each name where its choice is, as far as it fits, in the first row in which it lies on no other. */
function namesOf(points: readonly Point[], at: (money: number) => number) {
  const ends: number[] = [];
  return [...points]
    .filter(({ name }) => name !== '')
    .sort((one, other) => one.money - other.money)
    .map((point) => {
      const wide = labelWidth(point.name, true);
      const x = Math.max(0, Math.min(at(point.money) - 8, width - wide));
      const found = ends.findIndex((end) => end + 10 <= x);
      const row = found < 0 ? ends.length : found;
      ends[row] = x + wide;
      return { point, x, row };
    });
}

type Stretch = { readonly from: number; readonly to: number };

/** A line from above to below that leaves out the names of panels which it would run through. */
function upright(
  manner: string,
  x: number,
  { from, to }: Stretch,
  heads: readonly (Stretch & { readonly wide: number })[],
): readonly Markup[] {
  const inTheWay = heads.filter(({ wide }) => x <= wide + 2);
  const ends = [...inTheWay.map((head) => head.from), to];
  return [from, ...inTheWay.map((head) => head.to)].flatMap((start, at) => {
    const end = ends[at] ?? to;
    return start < end ? [line(manner, x, start, x, end)] : [];
  });
}

/** One figure of all points, the least at the bottom. */
function panel(points: readonly Point[], figure: Figure, top: number, at: (money: number) => number) {
  const amounts = points.map((point) => point[figure]);
  const [least, most] = [Math.min(...amounts), Math.max(...amounts)];
  const rise = Math.min(step, 100 / Math.max(1, most - least));
  const every = Math.ceil(14 / rise);
  const bottom = top + panelHead + 24 + (most - least) * rise;
  const y = (amount: number): number => bottom - 12 - (amount - least) * rise;
  const scale = Array.from({ length: Math.floor((most - least) / every) + 1 }, (_, index) => least + index * every);
  const shapes = [
    line('axis', left, bottom, width - right, bottom),
    label(names[figure], 0, top + 10, 'start', 'plain'),
    ...scale.map((amount) => label(String(amount), left - 14, y(amount) + 4, 'end', 'faint')),
    ...together(points, figure).map(({ mark, x, amount }) => disc(mark, x, y(amount))),
  ];
  return { bottom, shapes, head: { from: top, to: top + panelHead - 2, wide: labelWidth(names[figure]) } };

  /** Marks that would lie on one another share a disc. */
  function together(all: readonly Point[], of: Figure) {
    const placed: { readonly amount: number; x: number; mark: string }[] = [];
    for (const point of [...all].sort((one, other) => one.money - other.money)) {
      const x = at(point.money);
      const near = placed.find(
        (one) => one.amount === point[of] && Math.abs(one.x - x) < (discWidth(one.mark) + discWidth(point.mark)) / 2,
      );
      if (near === undefined) placed.push({ amount: point[of], x, mark: point.mark });
      else near.mark = [near.mark, point.mark].filter((mark) => mark !== '').join(', ');
    }
    return placed;
  }
}
