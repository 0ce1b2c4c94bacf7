import { countOutputs, type Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import { didYouMean } from '../../domain/near-spelling.js';
import { pedalId, supplyId } from '../../domain/quantities.js';
import { listed, quoted } from '../../domain/shown-text.js';
import type { OutputQuestion } from './output-setup.js';

/** A question in words that someone typed. */
export type AskedOutput = {
  readonly pedal: string;
  readonly supply: string;
  readonly unit: number;
  readonly output: number;
};

export type ResolvedQuestion =
  | { readonly kind: 'question'; readonly question: OutputQuestion }
  /** A sentence for each thing that is not there. */
  | { readonly kind: 'unknown'; readonly faults: readonly string[] };

/** The most ids that a message lists. */
const mostListed = 12;

/** The pedal, supply and output that are meant, or what is wrong with the names and what is near. */
export function resolveQuestion(kit: Kit, asked: AskedOutput): ResolvedQuestion {
  const { board } = kit;
  const faults = [...pedalFaults(board, asked), ...outputFaults(kit, asked)];
  if (faults.length > 0) return { kind: 'unknown', faults };
  const { pedal, supply, unit, output } = asked;
  return { kind: 'question', question: { pedal: pedalId(pedal), supply: supplyId(supply), unit, output } };
}

/** A sentence when the board has no pedal of this id. */
export function pedalFaults({ pedals }: Board, { pedal }: Pick<AskedOutput, 'pedal'>): readonly string[] {
  const ids = pedals.map(({ id }) => String(id));
  if (ids.includes(pedal)) return [];
  return [`the board has no pedal ${quoted(pedal)}. ${nearest(pedal, ids) ?? `It has ${shortList(ids)}.`}`];
}

function outputFaults(kit: Kit, { supply: id, output }: AskedOutput): readonly string[] {
  const { catalogue, supplies } = kit;
  const supply = supplies.get(supplyId(id));
  if (supply === undefined) {
    const ids = [...supplies.keys()];
    const nowhere = catalogue === null ? 'the gear does not describe' : 'neither the gear nor the catalogue describes';
    const without = catalogue === null ? ', and no catalogue is given' : '';
    const near =
      nearest(id, ids) ?? (ids.length === 0 ? 'Give the catalogue that lists it.' : `There is ${shortList(ids)}.`);
    return [`${nowhere} a supply ${quoted(id)}${without}. ${near}`];
  }
  const last = countOutputs(supply);
  if (output <= last) return [];
  const has = last === 1 ? 'one output, number 1' : `the outputs 1 to ${last}`;
  return [`${quoted(supply.id)} has no output ${output}; it has ${has}.`];
}

/** The near spelling, else the few that begin alike. */
function nearest(typed: string, ids: readonly string[]): string | null {
  const longer = ids.filter((id) => id.startsWith(typed));
  const few = longer.length > 0 && longer.length <= mostListed;
  return didYouMean(typed, ids) ?? (few ? `Did you mean ${listed(longer, 'or')}?` : null);
}

const shortList = (ids: readonly string[]): string =>
  ids.length > mostListed
    ? `${ids.slice(0, mostListed).join(', ')} and ${ids.length - mostListed} more`
    : listed(ids, 'and');
