import type { Reason } from '../../planning/answer.js';
import { block, indent, type Piece } from './layout.js';
import {
  impossibleLead,
  impossibleTitle,
  reasonPassages,
  stoppedLead,
  stoppedPassage,
  type Asked,
  type Passage,
  type PassageEntry,
} from '../words/reasons.js';
import { bullet, headLines, section, type Screen } from './screen.js';

/** No plan exists: why, with the numbers, and what to do about it. */
export function impossibleText(
  screen: Screen,
  reasons: readonly Reason[],
  asked: Asked = 'board by command',
): string[] {
  return [
    ...headLines(screen, impossibleTitle(screen, reasons), {
      text: impossibleLead(screen, reasons),
      paint: screen.paints.bad,
    }),
    ...reasonPassages(screen, reasons, asked).flatMap((passage) => passageLines(screen, passage)),
  ];
}

/** The search ended before it found anything. */
export function stoppedText(screen: Screen): string[] {
  return [
    ...headLines(screen, 'no plan yet', { text: stoppedLead, paint: screen.paints.caution }),
    ...passageLines(screen, stoppedPassage),
  ];
}

/** A passage under its heading. */
export const passageLines = (screen: Screen, { title, entries }: Passage): string[] =>
  section(
    screen,
    title,
    entries.flatMap((entry) => entryLines(screen, entry)),
  );

function entryLines(screen: Screen, { name, text, below }: PassageEntry): string[] {
  const { paints, width } = screen;
  const head: readonly Piece[] =
    name === null
      ? [bullet(screen, text)]
      : [
          { text: name, paint: paints.strong },
          { text, hang: 2 },
        ];
  const more = below.map((line) => bullet(screen, line));
  return [...block(head, width, indent), ...block(more, width, indent + 2)];
}
