import type { UnknownField } from '../../domain/pedal.js';
import { withEntryMoved } from '../../reading/drafts/move-entry.js';
import { valuesOf } from '../../reading/drafts/pedal-draft.js';
import { withKeys } from '../../reading/drafts/set-keys.js';
import { withoutEntry } from '../../reading/drafts/take-out.js';
import { idFromName } from '../../reading/resolve/resolve-id.js';
import { typedLine } from '../../reading/typed/pedal-line.js';
import type { StatedPedal } from './board-data.js';
import type { PageDocument } from './page-document.js';
import { withTermsNeeded } from './terms-needed.js';
import { withPedalById, withPedalOffOwn, withPedalUnplugged } from './todays-wiring.js';
import type { Data } from '../../reading/text/data.js';

type Change = (document: PageDocument) => PageDocument;

/** What is known of a pedal from now on, by the keys of a board; the document stays as it is where its text has no room. */
export const sayingOf =
  ({ index }: Pick<StatedPedal, 'index'>, values: Data): Change =>
  (document) => {
    const text = withKeys(document.board.text, { list: 'pedals', index }, values);
    return text === null ? document : { ...document, board: { ...document.board, text: withTermsNeeded(text) } };
  };

/** The pedal is called so from now on; it keeps the id by which the rest of the board calls it. */
export const naming =
  ({ index, id }: Pick<StatedPedal, 'index' | 'id'>, name: string): Change =>
  (document) => {
    const { board } = document;
    const called = { ...document, board: { ...board, text: withPedalById(board.text, id) } };
    return sayingOf({ index }, idFromName(name) === id ? { name } : { name, id })(called);
  };

/** The pedal is bought later, so that it is not plugged yet, or it is there. */
export const comingLater =
  ({ index, id }: Pick<StatedPedal, 'index' | 'id'>, isLater: boolean): Change =>
  (document) => {
    const { board } = document;
    const text = isLater ? withPedalUnplugged(board.text, id) : board.text;
    return sayingOf({ index }, { later: isLater })({ ...document, board: { ...board, text } });
  };

/** The pedal has a source of its own from now on, or none: what was plugged into it by that is plugged no more. */
export const poweredBy =
  ({ index, id }: Pick<StatedPedal, 'index' | 'id'>, source: 'adapter' | 'battery', value: Data | undefined): Change =>
  (document) => {
    const { board } = document;
    const text = value === undefined ? withPedalOffOwn(board.text, id, source) : board.text;
    return sayingOf({ index }, { [source]: value })({ ...document, board: { ...board, text } });
  };

/** What a label says, in the words in which it is typed, as values of a pedal; or a sentence for each thing that is unclear. */
export function readLabel(typed: string): { readonly values: Data } | { readonly faults: readonly string[] } {
  const read = typedLine(typed, false);
  return read.kind === 'unclear' ? { faults: read.faults } : { values: valuesOf(read.line) };
}

/** A label was looked at and does not say this: it stays open, but nobody is asked to look again. */
export const notOnLabel =
  ({ id }: Pick<StatedPedal, 'id'>, field: UnknownField): Change =>
  (document) => ({ ...document, notOnLabel: [...document.notOnLabel, openKey(id, field)] });

export const isNotOnLabel = (
  { notOnLabel: known }: PageDocument,
  { id }: Pick<StatedPedal, 'id'>,
  field: UnknownField,
): boolean => known.includes(openKey(id, field));

const openKey = (id: string, field: UnknownField): string => `${id} ${field}`;

/** The pedal stands at that place among all, counted from 0; the document stays as it is where its text has no room. */
export const placedAt =
  ({ index }: Pick<StatedPedal, 'index'>, to: number): Change =>
  (document) => {
    const text = withEntryMoved(document.board.text, { list: 'pedals', index }, to);
    return text === null ? document : { ...document, board: { ...document.board, text } };
  };

/** The document without a pedal, nor where it is plugged today. */
export const without =
  ({ index, id }: Pick<StatedPedal, 'index' | 'id'>): Change =>
  (document) => {
    const { board } = document;
    const text = withoutEntry(board.text, { list: 'pedals', index });
    return text === null ? document : { ...document, board: { ...board, text: withPedalUnplugged(text, id) } };
  };
