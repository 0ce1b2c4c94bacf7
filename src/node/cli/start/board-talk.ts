import type { Assumption } from '../../../reading/drafts/assumption.js';
import type { BoardHead } from '../../../reading/drafts/new-files.js';
import type { OpenPedal } from '../../../reading/drafts/open-pedals.js';
import type { PedalDraft } from '../../../reading/drafts/pedal-draft.js';
import type { Asker } from './asker.js';
import { pedalHelp, type Signs } from './label-help.js';
import { askOpen, askPedals, valuesOf } from './pedal-talk.js';
import { askPolicy, startingHead } from './policy-talk.js';

/** What a board that is there says already. */
export type KnownBoard = {
  readonly pedalIds: readonly string[];
  readonly assumption: Assumption;
  readonly open: readonly OpenPedal[];
};

/** What was told of a board so far. */
export type ToldBoard = {
  readonly head: Omit<BoardHead, 'name'>;
  readonly pedals: readonly PedalDraft[];
  /** What has become known of pedals that were in the file, by their places there. */
  readonly read: readonly { readonly index: number; readonly values: Readonly<Record<string, unknown>> }[];
};

/** Asks for a board, or for more of one that is there. What is finished is noted at once, and so survives a stop. */
export async function talkAboutBoard(
  asker: Asker,
  signs: Signs,
  known: KnownBoard | null,
  note: (told: ToldBoard) => void,
): Promise<void> {
  let told: ToldBoard = { head: { ...startingHead, assumption: known?.assumption ?? {} }, pedals: [], read: [] };
  const add = (more: Partial<ToldBoard>): void => note((told = { ...told, ...more }));
  add({});
  asker.say(pedalHelp(signs));
  for (const pedal of known?.open ?? []) {
    const line = await askOpen(asker, pedal);
    if (line !== null) add({ read: [...told.read, { index: pedal.index, values: valuesOf(line) }] });
  }
  const pedals = await askPedals(asker, { ids: known?.pedalIds ?? [], isNew: known === null }, (all) =>
    add({ pedals: all }),
  );
  if (known === null) await askPolicy(asker, pedals, (head) => add({ head }));
}
