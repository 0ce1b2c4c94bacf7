import type { Source } from '../../../reading/drafts/sources.js';
import { letterOf, typedPlace, type Place } from '../../../reading/typed/place.js';
import type { Asker } from './asker.js';
import { askTyped } from './questions.js';

/** A pedal that may be plugged in: all that is needed for that is known of it. */
export type Pluggable = { readonly id: string; readonly name: string };

/** An entry of a board's wiring. */
export type WiredDraft = {
  readonly pedal: string;
  readonly supply: string;
  readonly unit: number;
  readonly output: number;
  readonly volts: number;
  readonly chain?: string;
};

/** Asks where each pedal is plugged today. `chains` are the ids of the chain leads that are owned. */
export async function askWiring(
  asker: Asker,
  pedals: readonly Pluggable[],
  { sources, chains }: { readonly sources: readonly Source[]; readonly chains: readonly string[] },
): Promise<readonly WiredDraft[]> {
  if (sources.length === 0 || pedals.length === 0) return [];
  if (!(await asker.confirm('Is any of the pedals plugged in today?', true))) return [];
  asker.say(placesHelp(sources));
  const places: { readonly pedal: Pluggable; readonly place: Place }[] = [];
  for (const pedal of pedals) {
    const place = await askPlace(asker, pedal, { sources, hasChain: chains.length > 0, places });
    if (place !== null) places.push({ pedal, place });
  }
  const chainOf = new Map<string, string>();
  for (const { place } of places) {
    const sharing = places.filter((other) => isSame(other.place, place)).map(({ pedal }) => pedal.name);
    if (sharing.length > 1 && !chainOf.has(keyOf(place)))
      chainOf.set(keyOf(place), await askChain(asker, sharing, chains));
  }
  return places.map(({ pedal, place }) => {
    const { supply = '', unit = 1 } = sources[place.source] ?? {};
    const chain = chainOf.get(keyOf(place));
    return {
      pedal: pedal.id,
      supply,
      unit,
      output: place.output,
      volts: place.volts,
      ...(chain === undefined ? {} : { chain }),
    };
  });
}

const keyOf = ({ source, output }: Place): string => `${source} ${output}`;
const isSame = (one: Place, other: Place): boolean => keyOf(one) === keyOf(other);

function placesHelp(sources: readonly Source[]): string {
  const lines = sources.map(
    ({ name, outputs }, at) =>
      `  ${letterOf(at)}  ${name}, ${outputs.length === 1 ? 'one output' : `outputs 1 to ${outputs.length}`}`,
  );
  return ['Where is each plugged? By the output, with the volts where it can be set to several: 3, or 7 12v.']
    .concat(sources.length > 1 ? ['The letter of the supply goes first: a3, or b7 12v.', ...lines] : [])
    .join('\n');
}

type Around = {
  readonly sources: readonly Source[];
  readonly hasChain: boolean;
  readonly places: readonly { readonly pedal: Pluggable; readonly place: Place }[];
};

const askPlace = async (
  asker: Asker,
  { name }: Pluggable,
  { sources, hasChain, places }: Around,
): Promise<Place | null> =>
  askTyped(asker, `${name}? Enter when it is not plugged in.`, (answer) => {
    const typed = typedPlace(
      answer,
      sources.map(({ outputs }) => outputs),
    );
    if (typed.kind !== 'said') return typed;
    const other = places.find(({ place }) => isSame(place, typed.value));
    if (other === undefined) return typed;
    if (!hasChain)
      return {
        kind: 'unclear',
        remedy: `${other.pedal.name} is there. Two on one output need a chain lead, and none was told: go back with Esc to tell it.`,
      };
    if (other.place.volts !== typed.value.volts)
      return {
        kind: 'unclear',
        remedy: `${other.pedal.name} has ${other.place.volts} V there, and an output gives one voltage.`,
      };
    return typed;
  });

/** Which lead it is, where several are owned. */
async function askChain(asker: Asker, names: readonly string[], chains: readonly string[]): Promise<string> {
  const [only, second] = chains;
  if (only !== undefined && second === undefined) return only;
  return asker.choose(
    `Which chain lead feeds ${names.join(' and ')}?`,
    chains.map((id, at) => ({ value: id, key: String(at + 1), label: id })),
  );
}
