import { moneyText } from '../../domain/money.js';
import { minorUnits } from '../../domain/quantities.js';
import { csvText } from './csv.js';
import type { Handout } from '../words/handout.js';

const columns = ['Kind', 'Item', 'Id', 'Units', 'Unit price', 'Price', 'Currency'] as const;

/** The shopping list as a table, a row an item; only the names of the columns when there is nothing to buy. */
export function buyCsv(handout: Handout): string {
  const { currency } = handout.speech.board;
  const items = handout.kind === 'plan' ? handout.shopping : [];
  return csvText(
    columns,
    items.map(({ kind, name, id, units, price }) => [
      kind,
      name,
      id,
      units,
      moneyText(price, currency),
      moneyText(minorUnits(price * units), currency),
      currency.code,
    ]),
  );
}
