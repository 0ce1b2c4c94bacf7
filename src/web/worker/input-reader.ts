import type { Kit } from '../../domain/kit.js';
import type { ReadResult } from '../../reading/faults/input-fault.js';
import { inputsBeside, inputsFromText } from '../../reading/inputs-from-text.js';
import type { HeldFile } from '../document/page-document.js';

export type ReadInputs = (board: HeldFile, shop: HeldFile | null) => ReadResult<Kit>;

/** Rows of tables that nobody could use are left out. */
const options = { skipBadRows: true };

/** Reads boards with their shop, whose text is parsed once for as long as it stays the same: it may be large. */
export function createReader(): ReadInputs {
  let last: { readonly shop: HeldFile; readonly beside: ReturnType<typeof inputsBeside> } | null = null;
  return (board, shop) => {
    if (shop === null) return inputsFromText(board, null, options);
    if (last?.shop.file !== shop.file || last.shop.text !== shop.text)
      last = { shop, beside: inputsBeside(shop, options) };
    return last.beside(board);
  };
}
