import type { JoinMode } from '../../domain/supply.js';
import type { DraftEntry, Field } from './entry.js';

/** A lead or adapter as whoever holds it describes it. */
export type LeadDraft = {
  readonly name: string;
  /** Null for what is owned. */
  readonly price: number | null;
  readonly fits: string;
  readonly gives: string;
  readonly reverses: boolean;
  /** How many pedals it feeds; null for what is no chain lead. */
  readonly tails: number | null;
  readonly joins: JoinMode | null;
};

/** The lead as an entry of a catalogue. */
export function leadEntry({ name, price, fits, gives, reverses, tails, joins }: LeadDraft): DraftEntry {
  const fields: readonly (Field | false)[] = [
    { key: 'name', value: name },
    price !== null && { key: 'price', value: price },
    { key: 'fits', value: fits },
    { key: 'gives', value: gives },
    reverses && { key: 'reverses', value: true },
    tails !== null && { key: 'tails', value: tails },
    joins !== null && { key: 'joins', value: joins },
  ];
  return { name, fields: fields.filter((field) => field !== false), missing: [] };
}
