import { ownAdapterId } from '../../domain/own-adapter.js';
import type { PedalId } from '../../domain/quantities.js';
import { withKeys } from '../../reading/drafts/set-keys.js';
import { withValue } from '../../reading/drafts/set-value.js';
import { withoutEntry } from '../../reading/drafts/take-out.js';
import { idFromName } from '../../reading/resolve/resolve-id.js';
import { boardData } from './board-data.js';
import { listOf, mapOf, type Data } from '../../reading/text/data.js';

/** Where a pedal is plugged today, as the board's text has it: pedals and supplies by their ids or their names. */
type Entry = { readonly index: number; readonly stated: Data };

function entriesIn(text: string): readonly Entry[] {
  const wiring = boardData(text)['wiring'];
  return (Array.isArray(wiring) ? (wiring as readonly unknown[]) : []).map((entry, index) => ({
    index,
    stated: typeof entry === 'object' && entry !== null ? (entry as Data) : {},
  }));
}

/** Files call a thing by its id or its name. */
const means = (called: unknown, id: string): boolean =>
  called === id || (typeof called === 'string' && idFromName(called) === id);

/** Whether a pedal is plugged in today. */
export const isPlugged = (text: string, pedal: string): boolean =>
  entriesIn(text).some(({ stated }) => means(stated['pedal'], pedal));

/** The text of a board on which a pedal is not plugged any more. */
export const withPedalUnplugged = (text: string, pedal: string): string =>
  withoutEntries(text, ({ stated }) => means(stated['pedal'], pedal));

/** The text of a board on which a pedal is not plugged any more by what is its own. */
export const withPedalOffOwn = (text: string, pedal: string, source: 'adapter' | 'battery'): string =>
  withoutEntries(
    text,
    ({ stated }) =>
      means(stated['pedal'], pedal) &&
      (source === 'battery' ? stated['battery'] !== undefined : stated['supply'] === ownAdapterId(pedal as PedalId)),
  );

/**
 * The text of a board of which so many units of a supply are left: whoever hung on another one is not plugged any more, nor is
 * that unit itself where it has an inlet.
 */
export const withUnitsLeft = (text: string, supply: string, units: number): string =>
  withoutEntries(
    text,
    ({ stated }) =>
      (means(stated['supply'], supply) && Number(stated['unit'] ?? 1) > units) ||
      (means(stated['inlet'], supply) && Number(stated['inletUnit'] ?? 1) > units),
  );

/** The text of a board that has nothing of that name any more: whoever hangs on it, or by it, is not plugged any more. */
export const withNoneLeft = (text: string, id: string): string =>
  withoutEntries(text, ({ stated: { supply, inlet, battery, chain, join, parts } }) =>
    [supply, inlet, battery, chain, mapOf(join)['part'], ...listOf(parts)].some((called) => means(called, id)),
  );

function withoutEntries(text: string, goes: (entry: Entry) => boolean): string {
  const entries = entriesIn(text);
  const going = entries.filter(goes);
  // A wiring without entries is none.
  if (going.length > 0 && going.length === entries.length) return withValue(text, ['wiring'], undefined) ?? text;
  return going.reduceRight((rest, { index }) => withoutEntry(rest, { list: 'wiring', index }) ?? rest, text);
}

/** The text of a board whose wiring calls a pedal by its id, before it gets another name. */
export const withPedalById = (text: string, pedal: string): string =>
  entriesIn(text)
    .filter(({ stated }) => stated['pedal'] !== pedal && means(stated['pedal'], pedal))
    .reduce((rest, { index }) => withKeys(rest, { list: 'wiring', index }, { pedal }) ?? rest, text);
