import type { ReplugWords } from '../words/handout.js';
import { glued } from '../words/glue.js';
import { markup, type Markup } from './markup.js';
import { plainly, withCare } from '../words/remark.js';
import { listText } from '../words/words.js';
import { list, remarkList, tableMarkup } from './elements.js';

/** What changes of today's wiring: who stays, who moves from where to where and why, who is new, who is off. */
export function changesBody({ stay, releads, moves, added, dropped, unlisted }: ReplugWords): Markup {
  const stays = [
    ...(stay.length === 0 ? [] : [plainly(`${listText(stay)}.`)]),
    ...(releads.length === 0 ? [] : [plainly(`With other leads: ${listText(releads)}.`)]),
  ];
  const off = dropped.map((name) => withCare(`${name} is unplugged and left without power.`));
  return markup`${part('Stay', remarkList(stays))}${part('Move', moves.length === 0 ? null : movesTable(moves))}\
${part('New', list(added.map(({ name, to }) => markup`<b>${name}</b>: ${glued(to)}`)))}${part('Off', remarkList(off))}\
${part('Not listed as yours', remarkList(unlisted.map(withCare)))}`;
}

const part = (title: string, body: Markup | null): Markup | null =>
  body === null ? null : markup`<h3>${title}</h3>\n${body}`;

const movesTable = (moves: ReplugWords['moves']): Markup =>
  tableMarkup({
    caption: 'What moves, in the order of the board',
    columns: [{ name: 'Pedal', manner: 'head' }, { name: 'Today' }, { name: 'Then' }, { name: 'Why' }],
    rows: moves.map(({ name, from, to, why }) => [name, from, to, why]),
    cards: 'moves',
  });
