import type { DraftEntry } from '../../../reading/drafts/entry.js';

/** A list of a file, and what is to be added to it. */
type ListKey = 'pedals' | 'supplies' | 'parts';

/** What a conversation has brought so far. */
export type Notes<Head> = {
  readonly setHead: (head: Head) => void;
  readonly add: (list: ListKey, entry: DraftEntry) => void;
  /** Null until it has been asked for. */
  readonly head: () => Head | null;
  readonly entries: () => readonly { readonly list: ListKey; readonly entry: DraftEntry }[];
};

export function newNotes<Head>(): Notes<Head> {
  let noted: Head | null = null;
  const entries: { readonly list: ListKey; readonly entry: DraftEntry }[] = [];
  return {
    setHead: (head) => {
      noted = head;
    },
    add: (list, entry) => void entries.push({ list, entry }),
    head: () => noted,
    entries: () => entries,
  };
}
