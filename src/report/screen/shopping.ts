import { beside, block, gap, widthOf } from './layout.js';
import type { Screen } from './screen.js';
import type { PlanHandout } from '../words/handout.js';
import { priceText } from '../words/words.js';

type Row = { readonly item: string; readonly each: string; readonly together: string };

/** What to buy with its prices, then the owned things that the plan uses. */
export function shoppingLines(screen: Screen, { shopping, owned, wiring }: PlanHandout): string[] {
  const { marks, width } = screen;
  const rows = shopping.map(({ units, text, each, together }): Row => ({
    item: `${units} ${marks.times} ${text}`,
    each: units > 1 ? `${each} each` : '',
    together,
  }));
  const own = owned.map(({ units, name }) => `${units} ${marks.times} ${name}`).join(', ');
  const use = own === '' ? [] : block([{ text: `Use what you own: ${own}.`, hang: 2 }], width, 2);
  if (rows.length === 0) return [...block([{ text: 'Nothing to buy.' }], width, 2), ...use];
  return [...table(screen, rows, priceText(wiring.score.money, screen.board)), ...use];
}

function table({ width, paints }: Screen, rows: readonly Row[], total: string): string[] {
  const each = Math.max(0, ...rows.map((row) => row.each.length));
  const together = Math.max(total.length, ...rows.map((row) => row.together.length));
  const room = width - gap - (each + gap) - (together + gap);
  const item = Math.min(room, Math.max('Total'.length, ...rows.map((row) => widthOf(row.item))));
  const line = (row: Row, paint?: (text: string) => string) =>
    beside(
      [
        { pieces: [{ text: row.item, hang: 4, ...(paint && { paint }) }], width: item },
        { pieces: [right(row.each, each)], width: each },
        { pieces: [{ ...right(row.together, together), ...(paint && { paint }) }], width: together },
      ],
      gap,
      gap,
    );
  return [...rows.flatMap((row) => line(row)), ...line({ item: 'Total', each: '', together: total }, paints.strong)];
}

const right = (text: string, width: number) => ({ text, indent: width - text.length });
