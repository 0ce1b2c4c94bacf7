import type { Kit } from '../../domain/kit.js';
import { charactersOf, textWidth } from '../drawing/text-size.js';
import { fitText } from '../drawing/wrap-text.js';
import { safeText } from '../words/safe-text.js';

/** How long names may be, for each unit of their size: of what stands in tables and lists, and in the title. */
const most = { inLists: 20, inTitle: 30 } as const;
const setting = { size: 1, strong: true } as const;

/** The same kit by names that leave room for all else on a sheet. Of a kind, no two that differ become alike. */
export function shortNamed(kit: Kit): Kit {
  const { board, catalogue } = kit;
  return {
    ...kit,
    board: {
      ...board,
      name: cutName(board.name, most.inTitle),
      pedals: withShortNames(board.pedals),
    },
    catalogue: catalogue === null ? null : { ...catalogue, name: cutName(catalogue.name, most.inLists) },
    supplies: byId(withShortNames([...kit.supplies.values()])),
    parts: byId(withShortNames([...kit.parts.values()])),
  };
}

const byId = <Id, Thing extends { readonly id: Id }>(things: readonly Thing[]): ReadonlyMap<Id, Thing> =>
  new Map(things.map((thing) => [thing.id, thing]));

/** What is the same up to where it is cut is cut in its middle; what is alike even so stays whole. */
function withShortNames<Thing extends { readonly name: string }>(things: readonly Thing[]): readonly Thing[] {
  const ways = [cutName, cutInMiddle].map((cut) => things.map(({ name }) => cut(name, most.inLists)));
  return things.map((thing, at) => {
    const way = ways.find((names) =>
      things.every(({ name }, other) => name === thing.name || names[other] !== names[at]),
    );
    return { ...thing, name: way?.[at] ?? thing.name };
  });
}

const cutName = (name: string, width: number): string =>
  fitText(safeText(name), width, setting, 1).lines[0]?.text ?? name;

function cutInMiddle(name: string, width: number): string {
  const characters = charactersOf(safeText(name));
  if (textWidth(characters.join(''), setting) <= width) return characters.join('');
  const half = (width - textWidth('…', setting)) / 2;
  const ends = [startOf(characters, half), startOf([...characters].reverse(), half).reverse()];
  return ends.map((end) => end.join('').trim()).join('…');
}

/** As many of the characters, from the first on, as there is room for. */
function startOf(characters: readonly string[], width: number): string[] {
  const taken: string[] = [];
  let left = width;
  for (const character of characters) {
    left -= textWidth(character, setting);
    if (left < 0) break;
    taken.push(character);
  }
  return taken;
}
