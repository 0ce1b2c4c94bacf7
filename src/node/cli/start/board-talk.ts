import { dataOf, isWhole } from '../../../reading/drafts/entry.js';
import type { LastingTerms } from '../../../reading/drafts/new-files.js';
import { idOf, nothingOwned, type OwnedDraft, type OwnedThing } from '../../../reading/drafts/owned-draft.js';
import { isNeeded, isUnread, missesOf, valuesOf, type PedalDraft } from '../../../reading/drafts/pedal-draft.js';
import { startingBatteries, startingRuntime } from '../../../reading/drafts/starting-policy.js';
import { sourcesOf } from '../../../reading/drafts/sources.js';
import { idFromName } from '../../../reading/resolve/resolve-id.js';
import type { Asker } from './asker.js';
import type { KnownBoard } from './known-board.js';
import { pedalHelp, type Signs } from './label-help.js';
import { askOwned } from './owned-talk.js';
import { askOpen, askPedals } from './pedal-talk.js';
import { askAssumption, askHours, askPolicy, startingHead, type ToldHead } from './policy-talk.js';
import { askWiring, type Pluggable, type Plugs, type WiredDraft } from './wiring-talk.js';

/** What was told of a board so far. */
export type ToldBoard = {
  readonly head: ToldHead;
  readonly terms: LastingTerms;
  readonly pedals: readonly PedalDraft[];
  /** What has become known of pedals that were in the file, by their places there. */
  readonly read: readonly { readonly index: number; readonly values: Readonly<Record<string, unknown>> }[];
  readonly owned: OwnedDraft;
  readonly wiring: readonly WiredDraft[];
};

/** Asks for a board, or for more of one that is there. What is finished is noted at once, and so survives a stop. */
export async function talkAboutBoard(
  asker: Asker,
  signs: Signs,
  known: KnownBoard,
  note: (told: ToldBoard) => void,
): Promise<void> {
  const head = { ...startingHead, assumption: known.assumption ?? {} };
  let told: ToldBoard = { head, terms: {}, pedals: [], read: [], owned: nothingOwned, wiring: [] };
  const add = (more: Partial<ToldBoard>): void => note((told = { ...told, ...more }));
  add({});
  asker.say(pedalHelp(signs));
  for (const pedal of known.open) {
    const line = await askOpen(asker, pedal);
    if (line !== null) add({ read: [...told.read, { index: pedal.index, values: valuesOf(line) }] });
  }
  await askPedals(asker, { ids: known.pedalIds, isNew: known.isNew }, (pedals) => add({ pedals }));
  if (known.assumption === null)
    add({ head: { ...head, assumption: await askAssumption(asker, missesIn(known, told)) } });
  if (known.isNew) await askPolicy(asker, told.pedals, told.head, (policy) => add({ head: policy }));
  const takesBatteries = known.takesBatteries || takesAny(told);
  if (takesBatteries && !known.terms.batteries)
    add({ terms: { batteries: await askHours(asker, 'a set of batteries', startingBatteries.change) } });
  const owned =
    known.owned ?? ownedOf(await askOwned(asker, { signs, takesBatteries }, (draft) => add({ owned: draft })));
  if (told.owned.supplies.some(isPowerBank) && !known.terms.runtime)
    add({ terms: { ...told.terms, runtime: await askHours(asker, 'the power bank', startingRuntime.hours) } });
  if (!known.isWired) add({ wiring: await askWiring(asker, [...known.pluggable, ...pluggable(told)], owned) });
}

/** What would have to be assumed: of new pedals what was not told, of those in the file what a place is to be kept by. */
function missesIn({ open }: KnownBoard, { pedals, read }: ToldBoard): ReadonlySet<string> {
  const still = open.flatMap(({ index, unknown }) => {
    const values = read.find((one) => one.index === index)?.values ?? {};
    return unknown.filter((key) => isNeeded(key) && !(key in values));
  });
  return new Set<string>([...pedals.flatMap(missesOf), ...still]);
}

const takesAny = ({ pedals, read }: ToldBoard): boolean =>
  pedals.some(({ line }) => line.battery !== undefined) || read.some(({ values }) => 'battery' in values);

const isPowerBank = ({ entry }: OwnedThing): boolean => 'charge' in dataOf(entry.fields);

const pluggable = ({ pedals, head }: ToldBoard): readonly Pluggable[] =>
  pedals
    .filter((draft) => !isUnread(draft, head.assumption))
    .map(({ line: { name, adapter, battery } }) => ({
      id: idFromName(name) ?? name,
      name,
      hasAdapter: adapter !== undefined,
      takes: battery?.type ?? null,
    }));

const ownedOf = ({ supplies, leads, batteries }: OwnedDraft): Plugs => ({
  sources: supplies
    .filter(({ entry }) => isWhole(entry))
    .flatMap(({ entry, count }) => sourcesOf(idOf(entry), dataOf(entry.fields), count)),
  chains: leads.filter(({ entry }) => 'tails' in dataOf(entry.fields)).map(({ entry }) => idOf(entry)),
  batteries: batteries.map(({ entry }) => ({ id: idOf(entry), type: String(dataOf(entry.fields)['type']) })),
});
