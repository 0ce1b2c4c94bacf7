import type { Source } from '../../../reading/drafts/sources.js';
import { typedOwnPlace, type OwnPlace } from '../../../reading/typed/own-place.js';
import { letterOf, typedPlace, type Place } from '../../../reading/typed/place.js';
import { said, unclear, type Typed } from '../../../reading/typed/typed.js';
import type { Asker } from './asker.js';
import { askTyped } from './questions.js';

/** A pedal that may be plugged in: all that is needed for that is known of it. */
export type Pluggable = {
  readonly id: string;
  readonly name: string;
  /** Whether it has the adapter that it came with. */
  readonly hasAdapter: boolean;
  /** The type of batteries that it takes; null of one that takes none. */
  readonly takes: string | null;
};

/** What is owned, as far as something may hang on it. */
export type Plugs = {
  readonly sources: readonly Source[];
  /** The ids of the chain leads. */
  readonly chains: readonly string[];
  readonly batteries: readonly { readonly id: string; readonly type: string }[];
};

type OnOutput = Pick<Source, 'supply' | 'unit'> & Pick<Place, 'output' | 'volts'>;

/** An entry of a board's wiring. */
export type WiredDraft =
  | ({ readonly pedal: string; readonly chain?: string } & OnOutput)
  | { readonly pedal: string; readonly supply: string }
  | { readonly pedal: string; readonly battery: string }
  | ({ readonly inlet: string; readonly inletUnit: number } & OnOutput);

/** Asks where each pedal is plugged today, and each supply that hangs on another one. */
export async function askWiring(
  asker: Asker,
  pedals: readonly Pluggable[],
  { sources, chains, batteries }: Plugs,
): Promise<readonly WiredDraft[]> {
  const ownOf = (pedal: Pluggable): readonly OwnPlace[] => [
    ...(pedal.hasAdapter ? (['adapter'] as const) : []),
    ...(batteries.some(({ type }) => type === pedal.takes) ? (['battery'] as const) : []),
  ];
  const asked = sources.length > 0 ? pedals : pedals.filter((pedal) => ownOf(pedal).length > 0);
  if (asked.length === 0) return [];
  if (!(await asker.confirm('Is any of the pedals plugged in today?', true))) return [];
  if (sources.length > 0) asker.say(placesHelp(sources));
  const places: { readonly pedal: Pluggable; readonly place: Place }[] = [];
  const owns: WiredDraft[] = [];
  for (const pedal of asked) {
    const around = { sources, hasChain: chains.length > 0, places };
    const place = await askPlace(asker, pedal, ownOf(pedal), around);
    if (place === 'adapter') owns.push({ pedal: pedal.id, supply: `own-${pedal.id}` });
    else if (place === 'battery') owns.push({ pedal: pedal.id, battery: await askBattery(asker, pedal, batteries) });
    else if (place !== null) places.push({ pedal, place });
  }
  const inlets = await askInlets(asker, { sources, hasChain: false, places });
  const chainOf = new Map<string, string>();
  for (const { place } of places) {
    const sharing = places.filter((other) => isSame(other.place, place)).map(({ pedal }) => pedal.name);
    if (sharing.length > 1 && !chainOf.has(keyOf(place)))
      chainOf.set(keyOf(place), await askChain(asker, sharing, chains));
  }
  const hung = places.map(({ pedal, place }) => {
    const chain = chainOf.get(keyOf(place));
    return { pedal: pedal.id, ...onOutput(sources, place), ...(chain === undefined ? {} : { chain }) };
  });
  return [...hung, ...owns, ...inlets];
}

function onOutput(sources: readonly Source[], { source, output, volts }: Place): OnOutput {
  const { supply = '', unit = 1 } = sources[source] ?? {};
  return { supply, unit, output, volts };
}

/** What each supply hangs on that hangs on another one, where there is such another one. */
async function askInlets(asker: Asker, around: Around): Promise<readonly WiredDraft[]> {
  const { sources } = around;
  const places = [...around.places];
  const wired: WiredDraft[] = [];
  for (const { supply, unit, name } of sources.filter(({ isFed }) => isFed && !sources.every((one) => one.isFed))) {
    const inlet = {
      id: supply,
      name: `${name} inlet${unit === 1 ? '' : `, unit ${unit}`}`,
      hasAdapter: false,
      takes: null,
    };
    const place = await askPlace(asker, inlet, [], { ...around, places, isInlet: true });
    if (place === null || typeof place === 'string') continue;
    places.push({ pedal: inlet, place });
    wired.push({ inlet: supply, inletUnit: unit, ...onOutput(sources, place) });
  }
  return wired;
}

/** Which of those that it takes, where several are owned. */
async function askBattery(asker: Asker, { name, takes }: Pluggable, batteries: Plugs['batteries']): Promise<string> {
  const ids = batteries.filter(({ type }) => type === takes).map(({ id }) => id);
  return onlyOr(ids, () => askOneOf(asker, `Which batteries are in ${name}?`, ids));
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
  /** Whether it is the inlet of a supply, which hangs alone and on nothing that hangs itself. */
  readonly isInlet?: true;
};

const ownWords: Readonly<Record<OwnPlace, string>> = {
  adapter: 'Write own for its own adapter. ',
  battery: 'Write battery where it runs on one. ',
};

const askPlace = async (
  asker: Asker,
  { name }: Pluggable,
  owns: readonly OwnPlace[],
  around: Around,
): Promise<Place | OwnPlace | null> =>
  askTyped<Place | OwnPlace>(
    asker,
    `${name}? ${owns.map((own) => ownWords[own]).join('')}Enter when it is not plugged in.`,
    (answer) => {
      const own = owns.find((place) => place === typedOwnPlace(answer));
      if (own !== undefined) return said(own);
      if (around.sources.length === 0) return answer.trim() === '' ? { kind: 'unknown' } : unclear(ownRemedy(owns));
      return hangingPlace(answer, around);
    },
  );

const ownRemedy = (owns: readonly OwnPlace[]): string =>
  `${owns.map((own) => ownWords[own]).join('')}Nothing else is there that could feed it.`;

function hangingPlace(answer: string, { sources, hasChain, places, isInlet }: Around): Typed<Place> {
  const typed = typedPlace(
    answer,
    sources.map(({ outputs }) => outputs),
  );
  if (typed.kind !== 'said') return typed;
  if (isInlet === true && sources[typed.value.source]?.isFed === true)
    return unclear('That one hangs on another supply itself: write an output of one on the mains, or of a power bank.');
  const other = places.find(({ place }) => isSame(place, typed.value));
  if (other === undefined) return typed;
  if (isInlet === true) return unclear(`${other.pedal.name} is there, and an inlet hangs alone on its output.`);
  if (!hasChain)
    return unclear(
      `${other.pedal.name} is there. Two on one output need a chain lead, and none was told: go back with Esc to tell it.`,
    );
  if (other.place.volts !== typed.value.volts)
    return unclear(`${other.pedal.name} has ${other.place.volts} V there, and an output gives one voltage.`);
  return typed;
}

/** Which lead it is, where several are owned. */
const askChain = async (asker: Asker, names: readonly string[], chains: readonly string[]): Promise<string> =>
  onlyOr(chains, () => askOneOf(asker, `Which chain lead feeds ${names.join(' and ')}?`, chains));

async function onlyOr(ids: readonly string[], ask: () => Promise<string>): Promise<string> {
  const [only, second] = ids;
  return only !== undefined && second === undefined ? only : ask();
}

const askOneOf = async (asker: Asker, question: string, ids: readonly string[]): Promise<string> =>
  asker.choose(
    question,
    ids.map((id, at) => ({ value: id, key: String(at + 1), label: id })),
  );
