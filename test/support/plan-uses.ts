import type { Wiring } from '../../src/domain/plan.js';
import type { Source } from '../../src/domain/source.js';
import type { Case } from './arbitraries.js';

/** Whether a plan has each of the things that are not in every plan. */
export function planUses(wiring: Wiring, { board, catalogue }: Case) {
  const parts = new Map([...board.gear.parts, ...catalogue.parts].map((part) => [part.id, part]));
  const { feeds, unpowered, exposed, buy, score } = wiring;
  const leads = feeds.flatMap(({ adapters, chain, join }) =>
    [...adapters, chain, join?.part ?? null].flatMap((id) => (id === null ? [] : (parts.get(id) ?? []))),
  );
  const sources = new Map([...board.gear.supplies, ...catalogue.supplies].map(({ id, source }) => [id, source.kind]));
  const isOn = (kind: Source['kind']): boolean => feeds.some(({ supply }) => sources.get(supply) === kind);
  const pedals = board.pedals.filter(({ id }) => !unpowered.includes(id));
  const bought = buy.supplies.reduce((sum, { units }) => sum + units, 0);
  return {
    chain: feeds.some(({ chain }) => chain !== null),
    'join in series': feeds.some(({ join }) => join?.mode === 'series'),
    'join in parallel': feeds.some(({ join }) => join?.mode === 'parallel'),
    'reversing lead': leads.some(({ reverses }) => reverses),
    adapter: feeds.some(({ adapters }) => adapters.length > 0),
    'two adapters': feeds.some(({ adapters }) => adapters.length > 1),
    'AC pedal': pedals.some(({ power }) => power === 'AC'),
    'positive ground': pedals.some(({ ground }) => ground === 'positive'),
    'exposed pedal': exposed.length > 0,
    'unpowered pedal': unpowered.length > 0,
    'pedal off its preferred volts': score.offPreferred > 0,
    'owned unit': score.bricks > bought,
    'bought unit': bought > 0,
    'several units': score.bricks > 1,
    'bought lead': buy.parts.length > 0,
    'own adapter': isOn('adapter'),
    battery: isOn('battery'),
    'power bank': isOn('charge'),
    'fed supply': isOn('fed'),
  } satisfies Readonly<Record<string, boolean>>;
}

/** The names of what a plan has. */
export const usedIn = (wiring: Wiring, of: Case): readonly string[] =>
  Object.entries(planUses(wiring, of)).flatMap(([name, used]) => (used ? [name] : []));
