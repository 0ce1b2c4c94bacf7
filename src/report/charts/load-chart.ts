import { fitText } from '../drawing/wrap-text.js';
import { markup, type Markup } from '../page/markup.js';
import type { UnitLoad } from '../words/unit-loads.js';
import { meterText, percentOf, type Meter } from '../words/words.js';
import { chartMarkup, label, labelSize, line } from './chart.js';

/** About as wide as a phone, so that its words keep their size there. */
const width = 328;
const [left, full] = [1, 170];
const rowHeight = 34;
const thick = 9;
/** Where a bar ends that would run off the chart; its words tell the rest. */
const mostPercent = 108;

/** Loads as bars against their limits, each with its numbers in words; null for none. */
export function loadChart(loads: readonly UnitLoad[]): Markup | null {
  if (loads.length === 0) return null;
  const description = loads.map(({ name, meter }) => `${name}: ${loadText(meter)}.`).join(' ');
  const words = { id: 'load-chart', title: 'Loads against their limits', description };
  return markup`${chartMarkup(words, width, loads.length * rowHeight + 4, loads.map(barMarkup))}<p>Full: the load with \
its reserve. The frame: the limit.</p>
`;
}

function barMarkup({ name, meter }: UnitLoad, row: number): Markup {
  const y = row * rowHeight + 18;
  const figures = loadText(meter);
  const [fitted] = fitText(name, width - left, { size: labelSize, strong: true }, 1).lines;
  const long = Math.round((Math.min(percentOf(meter), mostPercent) * full) / 100);
  return markup`${label(fitted?.text ?? '', left, y - 5, 'start', 'strong')}${label(figures, width, y + thick, 'end')}\
<rect class="further" x="${left}" y="${y}" width="${full}" height="${thick}"/>
<rect class="reach" x="${left}" y="${y}" width="${long}" height="${thick}"/>
${line('here', left + full, y - 2, left + full, y + thick + 2)}`;
}

/** "216 of 400 mA, 54 %". */
export const loadText = (meter: Meter): string => `${meterText(meter)}, ${percentOf(meter)} %`;
