import type { Comparison } from '../../planning/compare/comparison.js';
import { beside, block } from './layout.js';
import { optionStandings } from '../words/option-standings.js';
import { bullet, type Screen } from './screen.js';
import type { NoiseWords } from '../words/comparison-handout.js';
import type { UnbeatenWords } from '../words/unbeaten-words.js';

const indent = 2;
const gap = 2;

/** What a cut of the price would do, and why those that fail do. */
export const standingLines = (screen: Screen, comparison: Comparison): string[] =>
  block(
    optionStandings(screen, comparison).map(({ text, tone }) =>
      tone === 'plain' ? bullet(screen, text) : bullet(screen, text, screen.paints[tone]),
    ),
    screen.width,
    indent,
  );

/** Who may hum with which option. */
export const noiseLines = (screen: Screen, { lead, lines }: NoiseWords): string[] =>
  block(
    [{ text: lead, paint: screen.paints.faint }, ...lines.map((line) => bullet(screen, line, screen.paints.caution))],
    screen.width,
    indent,
  );

/** What else nothing beats: one line each, with all that is bought. */
export function unbeatenLines(screen: Screen, { lead, rows }: UnbeatenWords): string[] {
  const { paints, width } = screen;
  const columns = (['price', 'exposed', 'supplies'] as const).map((key) => ({
    key,
    width: Math.max(...rows.map((row) => row[key].length)),
  }));
  const taken = columns.reduce((sum, column) => sum + column.width + gap, indent);
  const lines = rows.flatMap((row) =>
    beside(
      [
        ...columns.map((column) => ({
          pieces: [{ text: row[column.key], indent: column.key === 'price' ? column.width - row.price.length : 0 }],
          width: column.width,
        })),
        { pieces: [{ text: row.purchase }], width: width - taken },
      ],
      indent,
      gap,
    ),
  );
  return [...block([{ text: lead, paint: paints.faint }], width, indent), ...lines];
}
