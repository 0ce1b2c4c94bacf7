import type { WayEdit } from '../worker/told-ways.js';
import { boardData, statedPedals } from './board-data.js';
import { without } from './change-pedal.js';
import { withSetting } from './change-supplies.js';
import type { PageDocument } from './page-document.js';

/** Carries out a way out, as one step that can be taken back. */
export const takingWayOut =
  (edits: readonly WayEdit[]) =>
  (document: PageDocument): PageDocument =>
    edits.reduce((changed, edit) => edited(changed, edit), document);

function edited(document: PageDocument, edit: WayEdit): PageDocument {
  if (edit.kind === 'set') return withSetting(edit.path, edit.value)(document);
  const pedal = statedPedals(boardData(document.board.text)).find(({ id }) => id === edit.pedal);
  return pedal === undefined ? document : without(pedal)(document);
}
