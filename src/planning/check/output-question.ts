import { countOutputs, type Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import { didYouMean } from '../../domain/near-spelling.js';
import { idsMeant, severalFault, type Called } from '../../domain/names.js';
import type { Pedal } from '../../domain/pedal.js';
import { firstListed, listed, mostListed, quoted } from '../../domain/shown-text.js';
import type { Supply } from '../../domain/supply.js';
import type { OutputQuestion } from './output-setup.js';

/** A question in words that someone typed. */
export type AskedOutput = {
  readonly pedal: string;
  readonly supply: string;
  readonly unit: number;
  readonly output: number;
};

type ResolvedQuestion =
  | { readonly kind: 'question'; readonly question: OutputQuestion }
  /** A sentence for each thing that is not there. */
  | { readonly kind: 'unknown'; readonly faults: readonly string[] };

/** The pedal, supply and output that are meant, or what is wrong with the names and what is near. */
export function resolveQuestion(kit: Kit, { pedal, supply, unit, output }: AskedOutput): ResolvedQuestion {
  const pedalMeant = pedalNamed(kit.board, pedal);
  const supplyMeant = supplyNamed(kit, supply);
  const faults = [
    ...(pedalMeant.kind === 'unknown' ? [pedalMeant.fault] : []),
    ...(supplyMeant.kind === 'unknown' ? [supplyMeant.fault] : outputFaults(supplyMeant.thing, output)),
  ];
  if (pedalMeant.kind === 'unknown' || supplyMeant.kind === 'unknown' || faults.length > 0)
    return { kind: 'unknown', faults };
  return { kind: 'question', question: { pedal: pedalMeant.thing.id, supply: supplyMeant.thing.id, unit, output } };
}

/** The thing that a name or an id means, or a sentence that says why it means none. */
export type Meant<Thing> =
  { readonly kind: 'meant'; readonly thing: Thing } | { readonly kind: 'unknown'; readonly fault: string };

/** The pedal of the board that an id means, or a name that only one pedal has. */
export function pedalNamed({ pedals }: Board, text: string): Meant<Pedal> {
  const ids = pedals.map(({ id }) => String(id));
  return meantBy(
    text,
    pedals,
    () => `the board has no pedal ${quoted(text)}. ${nearest(text, ids) ?? `It has ${firstListed(ids)}.`}`,
  );
}

function supplyNamed({ catalogue, supplies }: Kit, text: string): Meant<Supply> {
  return meantBy(text, [...supplies.values()], () => {
    const ids = [...supplies.keys()];
    const nowhere = catalogue === null ? 'the gear does not describe' : 'neither the gear nor the catalogue describes';
    const without = catalogue === null ? ', and no catalogue is given' : '';
    const near =
      nearest(text, ids) ?? (ids.length === 0 ? 'Give the catalogue that lists it.' : `There is ${firstListed(ids)}.`);
    return `${nowhere} a supply ${quoted(text)}${without}. ${near}`;
  });
}

function meantBy<Thing extends Called>(text: string, things: readonly Thing[], unknown: () => string): Meant<Thing> {
  const [id, ...others] = idsMeant(text, things);
  const thing = things.find((each) => each.id === id);
  if (thing === undefined) return { kind: 'unknown', fault: unknown() };
  if (others.length > 0) return { kind: 'unknown', fault: severalFault(text, [String(id), ...others]) };
  return { kind: 'meant', thing };
}

function outputFaults(supply: Supply, output: number): readonly string[] {
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
