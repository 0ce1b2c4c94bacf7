import type { Report } from '../../domain/finding.js';
import { ownAdapterId, ownAdapterOf } from '../../domain/own-adapter.js';
import type { Pedal } from '../../domain/pedal.js';
import { microamps, millivolts, type SupplyId } from '../../domain/quantities.js';
import type { Supply } from '../../domain/supply.js';
import type { RawPedal, RawPedalAssumptions } from '../schema/schema-pedal.js';
import { entryAt, type Entry, type Sheet } from './entry.js';
import type { Called, Found } from './resolve-for-sale.js';
import { reportTaken, type SeenIds } from './resolve-id.js';
import { microampsOf, millivoltsOf } from './resolve-quantity.js';
import { resolveMains } from './resolve-supply.js';

type Figures = Pick<
  Pedal,
  | 'power'
  | 'polarity'
  | 'inlet'
  | 'ground'
  | 'accepts'
  | 'draw'
  | 'prefers'
  | 'survives'
  | 'figure'
  | 'assumed'
  | 'unknown'
>;

/**
 * Whether something that every other supply would have to match is neither stated nor assumed of a pedal that came with an
 * adapter: then that adapter alone is right for it.
 */
export function takesOwnAdapterOnly({ fields, isBroken }: Entry<RawPedal>, assumptions: Assumed): boolean {
  if (fields.adapter === undefined) return false;
  const isThere = (field: keyof RawPedal): boolean => fields[field] !== undefined || isBroken(field);
  const isKnown = (field: 'power' | 'polarity' | 'inlet' | 'ground'): boolean =>
    isThere(field) || assumptions.fields[field] !== undefined || assumptions.isBroken(field);
  if (!isThere('volts') || !isThere('milliamps')) return true;
  if (fields.volts === 'unknown' || fields.power === 'unknown' || fields.inlet === 'unknown') return true;
  if (fields.milliamps === 'unknown' && !isThere('circuit')) return true;
  const needed = (fields.power ?? assumptions.fields.power) === 'AC' ? [] : (['polarity'] as const);
  return !(['power', 'inlet', 'ground', ...needed] as const).every(isKnown);
}

type Assumed = Entry<RawPedalAssumptions>;

/** What nobody has stated of such a pedal is planned with nothing: no rule looks at it, and nothing of it is to be confirmed. */
export function figuresOnOwnAdapter({ fields }: Entry<RawPedal>, { fields: assumed }: Assumed): Figures {
  const known = <Value>(stated: Value | 'unknown' | undefined, instead: Value | undefined, fallback: Value): Value =>
    stated === undefined || stated === 'unknown' ? (instead ?? fallback) : stated;
  const power = known(fields.power, assumed.power, 'DC');
  return {
    power,
    polarity: power === 'AC' ? null : (fields.polarity ?? 'unknown'),
    inlet: known(fields.inlet, assumed.inlet, 'its own'),
    ground: fields.ground ?? 'unknown',
    accepts: {
      kind: 'listed',
      millivolts: [millivolts(assumed.volts === undefined ? 9000 : millivoltsOf(assumed.volts))],
    },
    draw: {
      kind: 'flat',
      microamps: typeof fields.milliamps === 'number' ? microampsOf(fields.milliamps) : microamps(0),
    },
    prefers: null,
    survives: null,
    figure: 'label',
    assumed: {},
    unknown: [],
  };
}

/** The adapters that pedals came with, each a supply by itself; null where something of one was reported. */
export function resolveOwnAdapters(
  sheet: Sheet,
  pedals: readonly Called<Pedal['id'], Pedal>[],
  seen: SeenIds,
  report: Report,
): readonly Called<SupplyId, Supply>[] {
  return pedals.flatMap(({ id, thing }, index): readonly Called<SupplyId, Supply>[] => {
    const path = ['pedals', index, 'adapter'];
    const entry = entryAt<NonNullable<RawPedal['adapter']>>(sheet, path);
    if (id === null || (thing !== null && thing.adapter === null)) return [];
    const own = ownAdapterId(id);
    const volts = resolveMains(entry, report);
    if (thing === null) return [];
    reportTaken(own, seen, report, (taken) => ({
      message: `makes or is the id ${taken}, which the adapter that a pedal came with has.`,
      remedy: 'Give the supply another id.',
    }));
    const found: Found<SupplyId, Supply> = { id: own, thing: volts === 'reported' ? null : ownAdapterOf(thing, volts) };
    return [{ ...found, name: found.thing?.name ?? null }];
  });
}
