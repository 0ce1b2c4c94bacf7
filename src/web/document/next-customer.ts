import { withValue, type KeyPath } from '../../reading/drafts/set-value.js';
import { boardData } from './board-data.js';
import { settingIn } from './change-supplies.js';
import { emptyDocument, type PageDocument } from './page-document.js';

/** What a board says that is true of the shop and its country; budget, sockets and the like are whose board it is. */
const ofShop: readonly KeyPath[] = [
  ['currency'],
  ['assume'],
  ...['headroom', 'guess', 'chains', 'noisePrice', 'supplyPrice', 'mains'].map((key) => ['policy', key] as const),
];

/** An empty board in the same shop, whose columns mean what they meant. */
export const forNextCustomer = ({ board, shop, meanings }: PageDocument): PageDocument => ({
  ...emptyDocument,
  board: { ...emptyDocument.board, text: emptyBoardAs(board.text) },
  shop,
  meanings,
});

/** A text that cannot be read has no settings to keep. */
function emptyBoardAs(text: string): string {
  const data = boardData(text);
  if (Object.keys(data).length === 0) return emptyDocument.board.text;
  return ofShop.reduce((next, path) => withValue(next, path, settingIn(data, path)) ?? next, emptyDocument.board.text);
}

/** Whether nothing was made on a board that anybody could miss. */
export function isBlank({ board, line, ownedLine }: Pick<PageDocument, 'board' | 'line' | 'ownedLine'>): boolean {
  const { pedals, owned, wiring } = boardData(board.text);
  return `${line}${ownedLine}`.trim() === '' && [pedals, owned, wiring].every(isNothing);
}

/** Also what is left where all was taken out again. */
const isNothing = (made: unknown): boolean =>
  (made ?? null) === null || (typeof made === 'object' && Object.values(made as object).every(isNothing));
