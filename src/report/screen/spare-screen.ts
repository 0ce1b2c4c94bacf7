import type { Kit } from '../../domain/kit.js';
import { factorText } from '../../domain/quantities.js';
import type { Answer } from '../../planning/answer.js';
import type { Added } from '../../planning/spare/add-pedal.js';
import type { NoBasis, Spare } from '../../planning/spare/spare.js';
import { block, type Piece } from './layout.js';
import { impossibleText } from './impossible.js';
import { outputRows, type OutputRow } from './output-rows.js';
import { loadLegend } from '../words/load-legend.js';
import { unitTable } from './plugging.js';
import { safeText } from '../words/safe-text.js';
import { bullet, screenFor, section, type Screen, type ScreenOptions } from './screen.js';
import { sentence } from '../words/speech.js';
import { leftOnOutput, leftText, ownedUnits } from '../words/spare-units.js';
import { hasGroundAlone, type UnitUse } from '../words/usage.js';
import { basisText, notSettledText, moreFitsTexts, spareBasis } from '../words/spare-words.js';
import { answerText } from './terminal.js';
import { fullStop, listText, type Meter } from '../words/words.js';

const indent = 2;

/** What there is to spare, as text for a screen with a line break at its end. */
export function spareText(kit: Kit, found: Spare | NoBasis, options: ScreenOptions): string {
  if (found.kind !== 'spare') return noBasisText(kit, found, options);
  const { installed } = found;
  const screen = screenFor(installed.kit, options);
  return `${[
    ...headLines(screen, found),
    ...section(screen, '1. What more fits, with nothing bought', roomLines(screen, found)),
    ...section(screen, '2. What each output and total has left', unitLines(screen, found)),
  ].join('\n')}\n`;
}

function headLines(screen: Screen, found: Spare): string[] {
  const { board, paints, width } = screen;
  return block(
    [
      { text: `${safeText(board.name)}: what it has to spare`, paint: paints.title },
      { text: spareBasis(found) },
      ...(found.whole ? [] : [{ text: notSettledText, paint: paints.caution }]),
    ],
    width,
  );
}

const roomLines = (screen: Screen, found: Spare): string[] =>
  block(
    moreFitsTexts(screen, found).map((text) => bullet(screen, text)),
    screen.width,
    indent,
  );

/** The table of every owned unit, with what is left beside each load. */
function unitLines(screen: Screen, { installed }: Spare): string[] {
  const { board, paints, width } = screen;
  const units = ownedUnits(board, screen.inventory, installed.wiring);
  const legend: readonly Piece[] = [
    loadLegend(screen, units),
    'Left: the rating less that load.',
    `A pedal by itself on a free output may draw what is free ${screen.marks.times === 'x' ? '/' : '÷'} ${factorText(board.policy.headroom.alone)}.`,
  ].map((text) => ({ text, paint: paints.faint }));
  return [
    ...block(legend, width, indent),
    ...units.flatMap((unit) => {
      const rows = outputRows(screen, unit).map((row) =>
        row.meter === null ? row : { ...row, detail: [...row.detail, leftPiece(screen, unit, row, row.meter)] },
      );
      return ['', ...unitTable(screen, units, unit, rows)];
    }),
  ];
}

function leftPiece({ inventory, paints }: Screen, unit: UnitUse, row: OutputRow, meter: Meter): Piece {
  const use = unit.outputs.find(({ outputs }) => outputs.join('+') === row.outputs);
  if (use === undefined) return { text: `left: ${leftText(meter)}`, paint: paints.good };
  const paint = hasGroundAlone(inventory, use) ? paints.faint : paints.good;
  return { text: `left: ${leftOnOutput(inventory, use, meter)}`, paint };
}

/** Why there is no wiring to speak of. */
export function noBasisText(kit: Kit, found: NoBasis, options: ScreenOptions): string {
  const { board } = kit;
  const screen = screenFor(kit, options);
  const { paints, width } = screen;
  const [text, notes] = noBasis(found);
  return `${[
    ...block(
      [
        { text: `${safeText(board.name)}: what it has to spare is not known`, paint: paints.title },
        { text, paint: found.kind === 'stopped' ? paints.caution : paints.bad },
      ],
      width,
    ),
    ...block(
      notes.map((note) => bullet(screen, sentence(screen, note))),
      width,
      indent,
    ),
  ].join('\n')}\n`;
}

/** The most broken rules that are named; `check` has them all. */
const mostRules = 3;

function noBasis(found: NoBasis): readonly [text: string, notes: readonly string[]] {
  switch (found.kind) {
    case 'unsafe': {
      const told = found.findings.slice(0, mostRules).map(({ rule, message }) => fullStop(`${rule}: ${message}`));
      return ['The wiring breaks hard rules: pull the supplies from the mains, and ask boardfeed check.', told];
    }
    case 'impossible':
      return ['Not every pedal is plugged in, and no plan powers them all: ask boardfeed explain.', []];
    case 'stopped':
      return ['The search stopped before there was a plan. Give it more time and run it again.', []];
  }
}

/** Whether one more pedal can be fed, and how, as text for a screen with a line break at its end. */
export function addedText(added: Added, options: ScreenOptions): string {
  const { kit, of, wiring, answer, bought } = added;
  const screen = screenFor(kit, options);
  const basis = of === 'wiring' ? [] : [{ text: `${basisText(of, wiring)}.` }];
  const title = { text: `One more pedal: ${verdictText(screen, added)}`, paint: screen.paints.title };
  const head = block([title, ...basis], screen.width);
  const best = bought !== null && bought.answer.kind === 'plan' ? bought : { kit, answer };
  if (best.answer.kind !== 'impossible') return `${head.join('\n')}\n\n${answerText(best.kit, best.answer, options)}`;
  const why = impossibleText(screenFor(best.kit, options), best.answer.reasons, 'one more pedal');
  return `${[...head, '', ...why].join('\n')}\n`;
}

function verdictText(screen: Screen, { answer, bought }: Added): string {
  if (answer.kind === 'plan') return `yes, ${movesText(screen, answer)}, nothing bought.`;
  if (answer.kind === 'stopped') return 'not settled in time.';
  if (bought?.answer.kind !== 'plan') return 'no, not even when others move.';
  return `not with what is there. Bought for, yes: ${movesText(screen, bought.answer)}.`;
}

function movesText({ inventory }: Screen, { changes }: Extract<Answer, { kind: 'plan' }>): string {
  const moved = (changes?.moves ?? []).map(({ to }) => inventory.pedalName(to.pedal));
  if (moved.length === 0) return 'and nothing else moves';
  return `when ${listText(moved)} ${moved.length === 1 ? 'moves' : 'move'}`;
}
