import { parse } from 'yaml';

import type { UnknownField } from '../../domain/pedal.js';
import type { Assumption } from '../../reading/drafts/assumption.js';
import { openPedals } from '../../reading/drafts/open-pedals.js';
import { idFromName } from '../../reading/resolve/resolve-id.js';
import { remembering } from './remembering.js';
import { listOf, mapOf, type Data } from '../../reading/text/data.js';

/** What a board's text says, before anybody has judged it; empty where it is no map. */
export const boardData = remembering((text: string): Data => {
  try {
    const data: unknown = parse(text, { maxAliasCount: 20 });
    return mapOf(data);
  } catch {
    return {};
  }
});

/** A pedal as the board's text has it. */
export type StatedPedal = {
  /** Where it stands among the pedals. */
  readonly index: number;
  /** The id that it has, or gets from its name. */
  readonly id: string;
  readonly name: string;
  readonly stated: Data;
  /** What nobody has read yet. */
  readonly open: readonly UnknownField[];
};

export function statedPedals(data: Data): readonly StatedPedal[] {
  const open = new Map(openPedals(data).map(({ index, unknown }) => [index, unknown]));
  return listOf(data['pedals']).map((pedal, index) => {
    const stated = mapOf(pedal);
    const name = textOf(stated['name']) ?? textOf(stated['id']) ?? `Pedal ${index + 1}`;
    const id = textOf(stated['id']) ?? idFromName(name) ?? '';
    return { index, id, name, stated, open: open.get(index) ?? [] };
  });
}

/** What the board lets plans take where a label says nothing. */
export const assumptionOf = (data: Data): Assumption => mapOf(data['assume']);

export const boardName = (data: Data): string => textOf(data['board']) ?? 'Board without a name';

const textOf = (value: unknown): string | null => (typeof value === 'string' && value.trim() !== '' ? value : null);
