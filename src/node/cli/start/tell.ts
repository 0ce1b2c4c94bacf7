import type { Addition } from '../../../reading/drafts/close-draft.js';
import { idsIn } from '../../../reading/drafts/ids-in.js';
import {
  assumeSections,
  newBoard,
  newCatalogue,
  policyOfTerms,
  type CatalogueHead,
} from '../../../reading/drafts/new-files.js';
import type { OpenedDraft } from '../../../reading/drafts/opened-draft.js';
import { ownedSections } from '../../../reading/drafts/owned-draft.js';
import { pedalEntry } from '../../../reading/drafts/pedal-draft.js';
import type { KeyPath } from '../../../reading/drafts/set-value.js';
import type { Section } from '../../../reading/drafts/section.js';
import { listLines } from '../../../reading/text/yaml-text.js';
import { Cancelled, type Asker } from './asker.js';
import { talkAboutBoard, type ToldBoard } from './board-talk.js';
import { talkAboutCatalogue } from './catalogue-talk.js';
import { knownBoard } from './known-board.js';
import type { Signs } from './label-help.js';
import { newNotes, type Notes } from './notes.js';
import { withWayBack } from './way-back.js';
import type { WiredDraft } from './wiring-talk.js';

/** What a conversation has brought. */
export type Conversation = {
  /** A new file without its entries; null where entries are added to one that is there, or nobody said what to call it. */
  readonly newFile: string | null;
  readonly additions: readonly Addition[];
  /** What has become known of pedals that are in the file, by their places there. */
  readonly read: ToldBoard['read'];
  /** Values of keys that are there. */
  readonly values: readonly { readonly path: KeyPath; readonly value: unknown }[];
  /** More keys of the file. */
  readonly sections: readonly Section[];
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
  const { head, terms, pedals, read, owned, wiring } = latest;
  return {
    newFile: known.isNew ? newBoard({ ...head, terms, name }) : null,
    additions: pedals.map((draft) => ({ list: 'pedals', entry: pedalEntry(draft, head.assumption) })),
    read,
    values: known.isNew
      ? []
      : Object.entries(policyOfTerms(terms)).map(([key, value]) => ({ path: ['policy', key] as const, value })),
    sections: [
      ...(!known.isNew && known.assumption === null ? assumeSections(head.assumption) : []),
      ...ownedSections(owned),
      ...wiringSections(wiring),
    ],
    wasStopped,
  };
}

const wiringSections = (wiring: readonly WiredDraft[]): readonly Section[] =>
  wiring.length === 0
    ? []
    : [{ key: 'wiring', lines: ['# How it is plugged today.', ...listLines('wiring', wiring)], value: wiring }];

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
  const newFile = head === null ? null : newCatalogue(head);
  return { newFile, additions: notes.entries(), read: [], values: [], sections: [], wasStopped };
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
