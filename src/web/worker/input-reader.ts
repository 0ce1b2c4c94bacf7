import type { Kit } from '../../domain/kit.js';
import type { Meanings } from '../../reading/csv/headings.js';
import type { ReadResult } from '../../reading/faults/input-fault.js';
import { inputsBeside, inputsFromText } from '../../reading/inputs-from-text.js';
import type { HeldFile } from '../document/page-document.js';

export type ReadInputs = (board: HeldFile, shop: HeldFile | null, meanings: Meanings) => ReadResult<Kit>;

/**
 * Reads boards with their shop, whose text is parsed once for as long as it stays the same: it may be large. Rows of tables
 * that nobody could use are left out.
 */
export function createReader(): ReadInputs {
  let last: { readonly shop: string; readonly beside: ReturnType<typeof inputsBeside> } | null = null;
  return (board, shop, meanings) => {
    const options = { skipBadRows: true, meanings };
    if (shop === null) return inputsFromText(board, null, options);
    const known = JSON.stringify([shop.file, shop.text, meanings]);
    if (last?.shop !== known) last = { shop: known, beside: inputsBeside(shop, options) };
    return last.beside(board);
  };
}
