import { moneyText } from '../../domain/money.js';
import { minorUnits } from '../../domain/quantities.js';
import { csvText } from './csv.js';
import type { Handout } from '../words/handout.js';

const columns = ['Kind', 'Item', 'Id', 'Units', 'Unit price', 'Price', 'Currency'] as const;

/**
 * The shopping list as a table, a row an item; only the names of the columns when there is nothing to buy. What is to be looked
 * for has neither an id nor a price.
 */
export function buyCsv(handout: Handout): string {
  const { currency } = handout.speech.board;
  if (handout.kind === 'none')
    return csvText(
      columns,
      handout.wanted.map(({ kind, name, units }) => [kind, name, '', units, '', '', '']),
    );
  return csvText(
    columns,
    handout.shopping.map(({ kind, name, id, units, price }) => [
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
