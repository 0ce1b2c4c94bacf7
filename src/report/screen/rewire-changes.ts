import type { BoardEntries } from '../words/board-entries.js';
import type { ChangeWords } from '../words/change-words.js';
import { noBreak } from '../words/glue.js';
import { beside, block, gap, indent, type Piece } from './layout.js';
import { bullet, type Screen } from './screen.js';
import { listText } from '../words/words.js';

const labelWidth = 4;

/** Who stays, who moves from where to where and why, who is new, and who is left out. */
export function changeLines(screen: Screen, changes: ChangeWords): string[] {
  const { marks, paints } = screen;
  const { stay, releads, moves, added, dropped, unlisted } = changes;
  const other = releads.length === 0 ? [] : [{ text: `With other leads: ${listText(releads)}.`, paint: paints.faint }];
  const rows: readonly (readonly [string, readonly Piece[]])[] = [
    ['Stay', stay.length === 0 ? [] : [{ text: `${listText(stay)}.` }, ...other]],
    [
      'Move',
      moves.flatMap(({ name, way, why }) => [
        bullet(screen, `${name}: ${way}`),
        ...(why === '' ? [] : [{ text: `why: ${why}`, indent: 2, hang: 5, paint: paints.faint }]),
      ]),
    ],
    ['New', added.map(({ name, to }) => bullet(screen, `${name} ${marks.arrow} ${to}`))],
    ['Off', dropped.map((name) => bullet(screen, `${name} is unplugged and left without power.`, paints.caution))],
    ['Note', unlisted.map((text) => ({ text, paint: paints.caution }))],
  ];
  return rows
    .filter(([, pieces]) => pieces.length > 0)
    .flatMap(([label, pieces]) =>
      beside(
        [
          { pieces: [{ text: label, paint: paints.strong }], width: labelWidth },
          { pieces, width: screen.width - indent - labelWidth - gap },
        ],
        indent,
        gap,
      ),
    );
}

/** What to write into the board file. */
export const entryLines = ({ paints, width }: Screen, { texts, entries }: BoardEntries): string[] =>
  block(
    [
      ...texts.map((text) => ({ text, paint: paints.faint })),
      ...entries.map((text) => ({ text: text.replaceAll(': ', `:${noBreak}`), hang: 4 })),
    ],
    width,
    indent,
  );
