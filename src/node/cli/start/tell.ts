import type { Addition } from '../../../reading/drafts/close-draft.js';
import { idsIn } from '../../../reading/drafts/ids-in.js';
import { newBoard, newCatalogue, type CatalogueHead } from '../../../reading/drafts/new-files.js';
import { openPedals } from '../../../reading/drafts/open-pedals.js';
import type { OpenedDraft } from '../../../reading/drafts/opened-draft.js';
import { pedalEntry } from '../../../reading/drafts/pedal-draft.js';
import { Cancelled, type Asker } from './asker.js';
import { talkAboutBoard, type KnownBoard, type ToldBoard } from './board-talk.js';
import { talkAboutCatalogue } from './catalogue-talk.js';
import type { Signs } from './label-help.js';
import { newNotes, type Notes } from './notes.js';
import { withWayBack } from './way-back.js';

/** What a conversation has brought. */
export type Conversation = {
  /** A new file without its entries; null where entries are added to one that is there, or nobody said what to call it. */
  readonly newFile: string | null;
  readonly additions: readonly Addition[];
  /** What has become known of pedals that are in the file, by their places there. */
  readonly read: ToldBoard['read'];
  /** Whether it was broken off. What was finished before is there. */
  readonly wasStopped: boolean;
};

/** Holds a conversation about a board of that name, which only a new file takes. */
export async function tellBoard(asker: Asker, signs: Signs, opened: OpenedDraft, name: string): Promise<Conversation> {
  const known = knownBoard(opened);
  const told: ToldBoard[] = [];
  const wasStopped = await isStopped(
    withWayBack(asker, async (way) => talkAboutBoard(way, signs, known, (latest) => told.push(latest))),
  );
  const latest = told.at(-1);
  if (latest === undefined) throw new Error('a conversation was held without a beginning');
  const { head, pedals, read } = latest;
  const additions = pedals.map((draft) => ({ list: 'pedals', entry: pedalEntry(draft, head.assumption) }));
  return { newFile: known === null ? newBoard({ ...head, name }) : null, additions, read, wasStopped };
}

function knownBoard(opened: OpenedDraft): KnownBoard | null {
  if (opened === null) return null;
  const { assume } = opened.data;
  return {
    pedalIds: idsIn(opened.data, 'pedals'),
    // What it says is checked where the file is used; here only its keys count.
    assumption: typeof assume === 'object' && assume !== null ? assume : {},
    open: openPedals(opened.data),
  };
}

export async function tellCatalogue(asker: Asker, signs: Signs, opened: OpenedDraft): Promise<Conversation> {
  const known = knownCatalogue(opened);
  let notes: Notes<CatalogueHead> = newNotes();
  const wasStopped = await isStopped(
    withWayBack(asker, async (way) => {
      notes = newNotes();
      await talkAboutCatalogue(way, signs, known, notes);
    }),
  );
  const head = notes.head();
  return { newFile: head === null ? null : newCatalogue(head), additions: notes.entries(), read: [], wasStopped };
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

async function isStopped(talk: Promise<void>): Promise<boolean> {
  try {
    await talk;
    return false;
  } catch (error) {
    if (error instanceof Cancelled) return true;
    throw error;
  }
}
