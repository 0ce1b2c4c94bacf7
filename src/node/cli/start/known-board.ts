import type { Assumption } from '../../../reading/drafts/assumption.js';
import { idsIn } from '../../../reading/drafts/ids-in.js';
import type { LastingTerms } from '../../../reading/drafts/new-files.js';
import { openPedals, type OpenPedal } from '../../../reading/drafts/open-pedals.js';
import type { OpenedDraft } from '../../../reading/drafts/opened-draft.js';
import { sourcesOf } from '../../../reading/drafts/sources.js';
import type { Pluggable, Plugs } from './wiring-talk.js';
import { listOf, mapOf, type Data } from '../../../reading/text/data.js';

/** What a board says already, as far as questions hang on it. */
export type KnownBoard = {
  readonly isNew: boolean;
  readonly pedalIds: readonly string[];
  /** Null where nothing is said of it. */
  readonly assumption: Assumption | null;
  readonly open: readonly OpenPedal[];
  /** Those that may be plugged in. */
  readonly pluggable: readonly Pluggable[];
  /** What is owned, as far as the file describes it; null where nothing is said of it. */
  readonly owned: Plugs | null;
  readonly isWired: boolean;
  /** Whether a pedal takes batteries. */
  readonly takesBatteries: boolean;
  /** Whether it is said how long a power bank must last, or a set of batteries. */
  readonly terms: Readonly<Record<keyof LastingTerms, boolean>>;
};

/** What a board file says, or that there is none. Whether it is right is not asked here. */
export function knownBoard(opened: OpenedDraft): KnownBoard {
  const data = opened?.data ?? {};
  return {
    isNew: opened === null,
    pedalIds: idsIn(data, 'pedals'),
    assumption: 'assume' in data ? mapOf(data['assume']) : null,
    open: openPedals(data),
    pluggable: listOf(data['pedals']).flatMap(pluggable),
    owned: 'owned' in data || 'gear' in data ? ownedIn(data) : null,
    isWired: 'wiring' in data,
    takesBatteries: listOf(data['pedals']).some((pedal) => 'battery' in mapOf(pedal)),
    terms: { runtime: 'runtime' in mapOf(data['policy']), batteries: 'batteries' in mapOf(data['policy']) },
  };
}

/** The pedal, unless a place is only kept for it. */
function pluggable(pedal: unknown): readonly Pluggable[] {
  const { name, later, volts, power, inlet, adapter, battery } = mapOf(pedal);
  const { type } = mapOf(battery);
  const [id] = idsIn({ pedals: [pedal] }, 'pedals');
  if (id === undefined || later === true || [volts, power, inlet].includes('unknown')) return [];
  return [
    {
      id,
      name: typeof name === 'string' ? name : id,
      hasAdapter: adapter !== undefined,
      takes: typeof type === 'string' ? type : null,
    },
  ];
}

/** The supplies, chain leads and batteries that the file both describes and counts. */
function ownedIn(data: Data): Plugs {
  const gear = mapOf(data['gear']);
  const { supplies, parts, batteries } = mapOf(data['owned']);
  const described = (list: string): readonly (readonly [string, unknown])[] =>
    listOf(gear[list]).flatMap((entry) => idsIn({ [list]: [entry] }, list).map((id) => [id, entry] as const));
  return {
    sources: described('supplies').flatMap(([id, entry]) =>
      sourcesOf(id, entry, listOf(supplies).filter((unit) => unit === id).length),
    ),
    chains: described('parts').flatMap(([id, entry]) => ('tails' in mapOf(entry) && id in mapOf(parts) ? [id] : [])),
    batteries: described('batteries').flatMap(([id, entry]) =>
      id in mapOf(batteries) ? [{ id, type: String(mapOf(entry)['type']) }] : [],
    ),
  };
}
