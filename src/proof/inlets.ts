import { isFed } from '../domain/inlet.js';
import { nothingMoreStated, type Pedal } from '../domain/pedal.js';
import type { SupplyId } from '../domain/quantities.js';
import type { Supply } from '../domain/supply.js';
import { Flaw } from './flaw.js';
import { inletKey } from './sources.js';
import type { StockGroup } from './stock.js';
import { nowhere } from './today.js';
import type { AlikePedals } from './unit/pedal-class.js';

/** Inlets of fed supplies that are alike. They hang as pedals do, each alone on an output and on a ground. */
export type InletSort = {
  readonly key: string;
  readonly supplies: ReadonlySet<SupplyId>;
  /** As many places, behind those of the board's pedals, as units with such an inlet can be in use: each feeds a pedal. */
  readonly members: readonly number[];
};

/** The sorts of what there is, with the pedals that they are like. */
export function inletSorts(
  groups: readonly StockGroup[],
  pedals: number,
): { readonly sorts: readonly InletSort[]; readonly classes: readonly AlikePedals[] } {
  const keys = [...new Set(groups.flatMap(({ supply }) => inletKey(supply) ?? []))];
  let next = pedals;
  const sorts = keys.map((key): InletSort => {
    const alike = groups.filter(({ supply }) => inletKey(supply) === key);
    const units = Math.min(
      pedals,
      alike.reduce((sum, { most }) => sum + most, 0),
    );
    const members = Array.from({ length: units }, (_, at) => next + at);
    next += units;
    return { key, supplies: new Set(alike.map(({ supply }) => supply.id)), members };
  });
  const classes = sorts.flatMap(({ key, members }): readonly AlikePedals[] => {
    const like = groups.flatMap(({ supply }) => (inletKey(supply) === key ? pedalLike(supply) : []))[0];
    return like === undefined ? [] : [{ pedal: like, standing: nowhere, members, isInlet: true }];
  });
  return { sorts, classes };
}

function pedalLike(supply: Supply): readonly Pedal[] {
  if (!isFed(supply)) return [];
  const { power, plug, polarity, accepts, microamps, startup } = supply.source.inlet;
  return [
    {
      ...nothingMoreStated,
      id: `inlet of ${supply.id}` as Pedal['id'],
      name: supply.name,
      power,
      polarity,
      inlet: plug,
      ground: 'unknown',
      accepts,
      draw: { kind: 'flat', microamps },
      startup,
      alone: true,
    },
  ];
}

/** The sort whose supplies are named. @throws Flaw when they are of several, or of none. */
export function sortNamed(ids: readonly string[], sorts: readonly InletSort[]): InletSort {
  const [first, ...others] = ids.map((id) => sorts.find(({ supplies }) => supplies.has(id as SupplyId)));
  if (first === undefined || others.some((other) => other !== first))
    throw new Flaw(`it names the inlets of ${ids.map((id) => `"${id}"`).join(', ')}, which are not of one sort`);
  return first;
}
