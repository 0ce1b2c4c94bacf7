import { textWidth } from '../drawing/text-size.js';
import { darkColours, lightColours, type Colours } from '../page/colours.js';
import { markup, type Markup } from '../page/markup.js';

// Charts as plain shapes in units of about one pixel; what they show stands in a table, too. Nothing hangs on a colour.

export const labelSize = 11;

/** At most how wide a label is. */
export const labelWidth = (text: string, strong = false): number => textWidth(text, { size: labelSize, strong });

type Anchor = 'start' | 'middle' | 'end';

export const label = (text: string, x: number, y: number, anchor: Anchor, manner = 'plain'): Markup =>
  markup`<text class="${manner}" x="${round(x)}" y="${round(y)}" font-size="${labelSize}" text-anchor="${anchor}">${text}</text>\n`;

/** A line of this manner from one point to another. */
export const line = (manner: string, x: number, y: number, toX: number, toY: number): Markup =>
  markup`<path class="${manner}" d="M${round(x)} ${round(y)}L${round(toX)} ${round(toY)}"/>\n`;

/** A disc with a few letters in it; `empty` where it is one of many that are not named. */
export const disc = (text: string, x: number, y: number): Markup =>
  text === ''
    ? markup`<circle class="dot" cx="${round(x)}" cy="${round(y)}" r="3.5"/>\n`
    : markup`<rect class="disc" x="${round(x - discWidth(text) / 2)}" y="${round(y - 8)}" width="${round(discWidth(text))}" height="16" rx="8"/>\
${label(text, x, y + 4, 'middle', 'inverse')}`;

export const discWidth = (text: string): number => Math.max(16, labelWidth(text, true) + 8);

type ChartWords = { readonly id: string; readonly title: string; readonly description: string };

export const chartMarkup = (words: ChartWords, width: number, height: number, shapes: readonly Markup[]): Markup =>
  markup`<svg class="chart" role="img" aria-labelledby="${words.id}-title" aria-describedby="${words.id}-text" \
viewBox="0 0 ${round(width)} ${round(height)}" width="${round(width)}" height="${round(height)}">
<title id="${words.id}-title">${words.title}</title>
<desc id="${words.id}-text">${words.description}</desc>
${shapes}</svg>
`;

const round = (value: number): number => Math.round(value * 10) / 10;

/** Round amounts from 0 up to `most` at least, six at the most, so far apart that each has a short name. */
export function ticksTo(most: number): readonly number[] {
  const least = Math.max(1, most / 5);
  const power = 10 ** Math.floor(Math.log10(least));
  const step = ([1, 2, 5, 10].find((times) => times * power >= least) ?? 10) * power;
  return Array.from({ length: Math.ceil(most / step) + 1 }, (_, at) => at * step);
}

const coloursOf = ({ ink, soft, paper, line: hair, full }: Colours): string => `.chart text{fill:${ink}}
.chart .faint{fill:${soft}}
.chart .inverse{fill:${paper};font-weight:700}
.chart .disc{fill:${ink};stroke:${paper}}
.chart .dot{fill:${paper};stroke:${ink}}
.chart .hair{stroke:${hair}}
.chart .stem,.chart .axis{stroke:${soft}}
.chart .limit{stroke:${ink}}
.chart .reach{fill:${full}}
.chart .further{stroke:${ink};fill:${paper}}
.chart .here{stroke:${ink}}
`;

/** The style of all charts. */
export const chartStyle = `svg.chart{display:block;max-width:100%;height:auto}
.chart text{font-family:system-ui,"Segoe UI",Roboto,"Helvetica Neue",Arial,sans-serif}
.chart .strong{font-weight:700}
.chart path{fill:none}
.chart .limit{stroke-dasharray:5 4;stroke-width:1.5}
.chart .dot,.chart .here{stroke-width:1.5}
.chart .stem{stroke-dasharray:1 3}
${coloursOf(lightColours)}@media screen and (prefers-color-scheme:dark){
${coloursOf(darkColours)}}
`;
