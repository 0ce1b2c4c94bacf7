import { circuitKinds, type CircuitKind } from '../../domain/circuit-kinds.js';
import { withEntries } from '../../reading/drafts/add-to-list.js';
import { isOnOwnAdapterAlone, pedalEntry, type PedalDraft } from '../../reading/drafts/pedal-draft.js';
import { idFromName } from '../../reading/resolve/resolve-id.js';
import { kindByName } from '../../reading/typed/kind-by-name.js';
import { typedLine } from '../../reading/typed/pedal-line.js';
import { nameIsTaken } from '../../reading/typed/pedal-name.js';
import { assumptionOf, boardData, statedPedals } from './board-data.js';
import type { PageDocument } from './page-document.js';
import { withTermsNeeded } from './terms-needed.js';

/** What a line for a pedal was understood as. */
export type ReadLine =
  | { readonly kind: 'empty' }
  | { readonly kind: 'pedal'; readonly draft: PedalDraft }
  /** A sentence for each thing that stands in the way. */
  | { readonly kind: 'unclear'; readonly faults: readonly string[] };

/** Reads a line beside a board, whose pedals have names of their own. */
export function readLine(line: string, boardText: string): ReadLine {
  if (line.trim() === '') return { kind: 'empty' };
  const typed = typedLine(line, true);
  if (typed.kind === 'unclear') return typed;
  const id = idFromName(typed.line.name);
  if (statedPedals(boardData(boardText)).some((pedal) => pedal.id === id))
    return { kind: 'unclear', faults: [nameIsTaken] };
  return { kind: 'pedal', draft: { line: typed.line, kind: kindOf(typed.line) } };
}

/** What no word of the name tells counts as what draws and disturbs most, until somebody says what it is. */
const kindOf = (line: PedalDraft['line']): CircuitKind | null =>
  kindByName(line.name, line.digital) ??
  (line.draw === undefined && !isOnOwnAdapterAlone({ line })
    ? (circuitKinds.find(({ key }) => key === 'other-digital') ?? null)
    : null);

/** The document with the pedal on its line entered; the same where the line is none. */
export function withLineEntered(document: PageDocument): PageDocument {
  const text = textWithLine(document);
  return text === null ? document : { ...document, board: { ...document.board, text }, line: '' };
}

/** The board's text as if the pedal on the line were entered; null where the line is none, or the text has no room. */
export function textWithLine(document: PageDocument): string | null {
  const known = entered.get(document);
  if (known !== undefined) return known;
  const text = enteredText(document);
  entered.set(document, text);
  return text;
}

/** Of the documents that there are: each is asked with every key. */
const entered = new WeakMap<PageDocument, string | null>();

function enteredText({ board, line }: PageDocument): string | null {
  const read = readLine(line, board.text);
  if (read.kind !== 'pedal') return null;
  const extended = withEntries(board.text, 'pedals', [pedalEntry(read.draft, assumptionOf(boardData(board.text)))]);
  return extended.kind === 'closed' ? null : withTermsNeeded(extended.text);
}
