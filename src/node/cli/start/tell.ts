import type { Addition } from '../../../reading/drafts/close-draft.js';
import { newBoard, newCatalogue, type BoardHead, type CatalogueHead } from '../../../reading/drafts/new-files.js';
import { idsIn } from '../../../reading/drafts/ids-in.js';
import type { OpenedDraft } from '../../../reading/drafts/opened-draft.js';
import { Cancelled, type Asker } from './asker.js';
import { talkAboutBoard } from './board-talk.js';
import { talkAboutCatalogue } from './catalogue-talk.js';
import type { Signs } from './label-help.js';
import { newNotes, type Notes } from './notes.js';

/** What a conversation has brought. */
export type Conversation = {
  /** A new file without its entries; null where entries are added to one that is there, or nobody said what to call it. */
  readonly newFile: ((hasSchema: boolean) => string) | null;
  readonly additions: readonly Addition[];
  /** Whether it was broken off. What was finished before is there. */
  readonly wasStopped: boolean;
};

export async function tellBoard(asker: Asker, signs: Signs, opened: OpenedDraft): Promise<Conversation> {
  const assume = opened?.data['assume'];
  const assumesGround = typeof assume === 'object' && assume !== null && 'ground' in assume;
  const known = opened === null ? null : { pedalIds: idsIn(opened.data, 'pedals'), assumesGround };
  const notes = newNotes<BoardHead>();
  return told(notes, newBoard, await isStopped(talkAboutBoard(asker, signs, known, notes)));
}

export async function tellCatalogue(asker: Asker, signs: Signs, opened: OpenedDraft): Promise<Conversation> {
  const notes = newNotes<CatalogueHead>();
  return told(notes, newCatalogue, await isStopped(talkAboutCatalogue(asker, signs, knownCatalogue(opened), notes)));
}

function knownCatalogue(opened: OpenedDraft) {
  if (opened === null) return null;
  const { currency } = opened.data;
  return {
    supplyIds: idsIn(opened.data, 'supplies'),
    partIds: idsIn(opened.data, 'parts'),
    currency: typeof currency === 'string' ? currency : '',
  };
}

function told<Head>(
  notes: Notes<Head>,
  write: (head: Head, hasSchema: boolean) => string,
  wasStopped: boolean,
): Conversation {
  const head = notes.head();
  return {
    newFile: head === null ? null : (hasSchema) => write(head, hasSchema),
    additions: notes.entries(),
    wasStopped,
  };
}

async function isStopped(talk: Promise<void>): Promise<boolean> {
  try {
    await talk;
    return false;
  } catch (error) {
    if (error instanceof Cancelled) return true;
    throw error;
  }
}
