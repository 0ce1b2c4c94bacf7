import type { Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import { inTrade } from './connector-words.js';
import { inventoryOf, type Inventory } from './inventory.js';
import { safeText } from './safe-text.js';

/** Signs that have an ASCII stand-in of the same meaning. */
export type Marks = {
  readonly arrow: string;
  readonly times: string;
  readonly dash: string;
  readonly bullet: string;
  readonly rule: string;
  readonly full: string;
  readonly empty: string;
};

/** What is spoken of, and with which signs; all that a sentence needs, wherever it is shown. */
export type Speech = {
  readonly kit: Kit;
  readonly board: Board;
  /** What may be bought from: its name is safe to print; null when nothing is for sale. */
  readonly shop: string | null;
  readonly inventory: Inventory;
  readonly marks: Marks;
};

const unicodeMarks: Marks = { arrow: '→', times: '×', dash: '–', bullet: '•', rule: '─', full: '█', empty: '░' };

const asciiMarks: Marks = { arrow: '->', times: 'x', dash: '-', bullet: '*', rule: '-', full: '#', empty: '.' };

/** Speech with signs beyond ASCII, unless they are not wanted. */
export function speechOf(kit: Kit, unicode = true): Speech {
  const marks = unicode ? unicodeMarks : asciiMarks;
  return { kit, board: kit.board, shop: shopOf(kit), inventory: inventoryOf(kit, marks.times), marks };
}

function shopOf({ catalogue }: Kit): string | null {
  if (catalogue === null || catalogue.supplies.length + catalogue.parts.length === 0) return null;
  return tellsNoPlace(catalogue.name) ? 'the shop' : safeText(catalogue.name);
}

/** Whether all of a name is what any list may be called, as its file often is, after which a table without a name is. */
const tellsNoPlace = (name: string): boolean =>
  name.split(/[\s_.()-]+/).every((word) => ofAnyShop.test(word) || /^\d*$/.test(word));

const ofAnyShop =
  /^(?:shop|store|stock|inventory|catalogue?|suppl(?:y|ies)|price(?:s|list)?|list|products?|items|table|export|copy|new)$/i;

/** A sentence of the planner's, safe to print and with the screen's own signs. */
export function sentence({ marks }: Speech, text: string): string {
  const signs = { '×': marks.times, '–': marks.dash, '→': marks.arrow };
  return Object.entries(signs).reduce(
    (spelled, [sign, mark]) => spelled.replaceAll(sign, mark),
    inTrade(safeText(text)),
  );
}
