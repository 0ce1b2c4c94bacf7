import { readPurchase } from '../../planning/compare/read-purchase.js';
import type { AskedPurchase, PageDocument } from './page-document.js';

/** A supply that is for sale. */
type ForSale = { readonly id: string; readonly name: string; readonly outputs: number; readonly remark: string };

type ReadAsked<Thing extends ForSale> =
  | { readonly kind: 'empty' }
  | { readonly kind: 'purchase'; readonly purchase: AskedPurchase }
  /** Several supplies may be meant: which one is to be chosen. */
  | { readonly kind: 'several'; readonly found: readonly Thing[]; readonly choose: (thing: Thing) => AskedPurchase }
  | { readonly kind: 'unclear'; readonly fault: string };

/** Reads "rowan ten, 2 x alder": words of the names of supplies, each with how many where it is not one; "the ten-way box", too. */
export function readAsked<Thing extends ForSale>(text: string, things: readonly Thing[]): ReadAsked<Thing> {
  if (text.trim() === '') return { kind: 'empty' };
  const read = readPurchase(text);
  if (read.kind === 'unreadable') return { kind: 'unclear', fault: 'Write it like this: rowan ten, 2 x alder.' };
  const meant = read.supplies.map(({ id, units }) => ({ typed: id, units, found: thingsMeant(id, things) }));
  const unknown = meant.find(({ found }) => found.length === 0);
  if (unknown !== undefined) return { kind: 'unclear', fault: `The shop sells no supply called “${unknown.typed}”.` };
  const open = meant.findIndex(({ found }) => found.length > 1);
  const purchaseOf = (chosen: Thing | undefined): AskedPurchase =>
    meant.flatMap(({ found, units }, at) => {
      const thing = at === open ? chosen : found[0];
      return thing === undefined ? [] : [{ id: thing.id, units }];
    });
  return open === -1
    ? { kind: 'purchase', purchase: purchaseOf(undefined) }
    : { kind: 'several', found: meant[open]?.found ?? [], choose: purchaseOf };
}

/** The one that is called so, or remarked on so; else all that have the words in their names, or remarks; else all with so many outputs. */
function thingsMeant<Thing extends ForSale>(typed: string, things: readonly Thing[]): readonly Thing[] {
  const words = typed
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const ways = waysIn(words.join(' '));
  const isSo = (text: string): boolean => text.toLowerCase() === words.join(' ');
  const hasAll = (text: string): boolean => words.every((word) => text.toLowerCase().includes(word));
  const tries: readonly ((thing: Thing) => boolean)[] = [
    ({ name }) => isSo(name),
    ({ remark }) => isSo(remark),
    ({ name }) => hasAll(name),
    ({ remark }) => hasAll(remark),
    ({ outputs }) => outputs === ways,
  ];
  return tries.map((isMeant) => things.filter(isMeant)).find((found) => found.length > 0) ?? [];
}

/** How many outputs "the ten-way box" has; null where it is no such words. */
function waysIn(words: string): number | null {
  const [, said = ''] = /^(?:the )?([\da-z]+)[- ]?way(?: (?:box|brick|supply))?$/.exec(words) ?? [];
  const ways = /^\d+$/.test(said) ? Number(said) : numbers.indexOf(said);
  return ways > 0 ? ways : null;
}

const numbers = 'none one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** Sets a purchase beside the choices. */
export const askingFor =
  (purchase: AskedPurchase) =>
  (document: PageDocument): PageDocument =>
    document.asked.some((one) => isSame(one, purchase))
      ? document
      : { ...document, asked: [...document.asked, purchase] };

export const askingNoMoreFor =
  (purchase: AskedPurchase) =>
  (document: PageDocument): PageDocument => ({ ...document, asked: document.asked.filter((one) => one !== purchase) });

const isSame = (one: AskedPurchase, other: AskedPurchase): boolean => JSON.stringify(one) === JSON.stringify(other);
