import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Changes } from '../../planning/rewire/changes.js';
import { changeWords } from '../words/change-words.js';
import { beside, type Piece } from './layout.js';
import { bullet, type Screen } from './screen.js';
import { listText } from '../words/words.js';

const indent = 2;
const gap = 2;
const labelWidth = 4;

/** Who stays, who moves from where to where and why, who is new, and who is left out. */
export function changeLines(screen: Screen, wiring: JudgedPlan, changes: Changes): string[] {
  const { marks, paints } = screen;
  const { stay, releads, moves, added, dropped, unlisted } = changeWords(screen, wiring, changes);
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
