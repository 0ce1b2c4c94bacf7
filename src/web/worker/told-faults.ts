import type { InputFault } from '../../reading/faults/input-fault.js';
import { columnWords } from '../../report/words/column-words.js';
import type { HeldFile } from '../document/page-document.js';
import type { ToldFault } from './messages.js';
import type { ToldColumns } from './told-shelf.js';

type Faulty = { readonly faults: readonly InputFault[]; readonly more: number };

/** What is wrong with the files. While the columns of the shop are asked about, what else is wrong with it may come of that. */
export function toldFaults(
  { faults, more }: Faulty,
  shop: HeldFile | null,
  columns: ToldColumns | null,
): { readonly faults: readonly ToldFault[]; readonly more: number } {
  const told = faults.map((fault) => toldFault(fault, shop));
  const isAsking = told.some((fault) => isAsked(fault, columns));
  return isAsking ? { faults: told.filter(({ of }) => of === 'board'), more: 0 } : { faults: told, more };
}

/** What a column holds is asked where the shop is shown; what no column holds may yet be in one of these. */
function isAsked({ of, key }: ToldFault, columns: ToldColumns | null): boolean {
  if (of !== 'shop' || columns === null) return false;
  const open = columns.columns.filter(({ meaning }) => meaning === null);
  return open.some(({ heading }) => heading === key) || (open.length > 0 && Object.hasOwn(columnWords, key));
}

const toldFault = ({ file, line, key, alike = [], message, remedy }: InputFault, shop: HeldFile | null): ToldFault => ({
  of: file === shop?.file ? 'shop' : 'board',
  key,
  alike: alike.map((place) => place.key),
  where: key === '' ? `line ${line}` : `line ${line}, ${key}`,
  message,
  remedy,
});
