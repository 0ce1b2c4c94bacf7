import { polarities, type Pedal, type Polarity } from '../../domain/pedal.js';
import type { StockLeadKind } from '../stock.js';

/** What a plug offers; AC has no polarity. */
export type Pole = Polarity | null;

/** All ways from plugs to inlets, each as the lead kinds of its adapters; the sets of ways are numbered. */
export type Routes = {
  /** The number of the set of ways from a plug, at any of the polarities, to the pedal's inlet; null when there is none. */
  readonly between: (plug: string, poles: readonly Pole[], pedal: Pedal) => number | null;
  /** The number of the set whose only way takes no adapter. */
  readonly nothing: number;
  /** The number of a set whose only way takes just these. */
  readonly of: (way: readonly number[]) => number;
  /** By number. */
  readonly sets: readonly (readonly (readonly number[])[])[];
};

const mostAdapters = 2;

/** Every way over at most two adapters counts, needless ones too: a lead may be worth more than it costs. */
export function routesOver(kinds: readonly StockLeadKind[]): Routes {
  const known = new Map<string, number | null>();
  const nothing = 0;
  const sets: (readonly (readonly number[])[])[] = [[[]]];
  const between: Routes['between'] = (plug, poles, pedal) => {
    const wanted = pedal.power === 'AC' ? null : pedal.polarity;
    const key = JSON.stringify([plug, poles, pedal.inlet, wanted]);
    const found = known.get(key);
    if (found !== undefined) return found;
    const toPole = (pole: Pole): readonly (readonly number[])[] =>
      poles.flatMap((from) => waysFrom(plug, from, { inlet: pedal.inlet, pole }, kinds));
    const all = wanted === 'unknown' ? eitherWay(toPole) : toPole(wanted);
    const ways = new Map(all.map((way) => [[...way].sort((first, second) => first - second).join(), way]));
    const number = ways.size === 0 ? null : sets.push([...ways.values()]) - 1;
    known.set(key, number);
    return number;
  };
  return { between, nothing, of: (way) => sets.push([way]) - 1, sets };
}

/** A pedal of unknown polarity has a way for each reading; of every lead kind it needs what the one or the other needs. */
function eitherWay(toPole: (pole: Pole) => readonly (readonly number[])[]): readonly (readonly number[])[] {
  const [firsts = [], seconds = []] = polarities.map(toPole);
  return firsts.flatMap((first) =>
    seconds.map((second) => {
      const rest = [...first];
      const more = second.filter((kind) => {
        const at = rest.indexOf(kind);
        if (at >= 0) rest.splice(at, 1);
        return at < 0;
      });
      return [...first, ...more];
    }),
  );
}

type Target = { readonly inlet: string; readonly pole: Pole };

function waysFrom(
  plug: string,
  pole: Pole,
  target: Target,
  kinds: readonly StockLeadKind[],
  before: readonly number[] = [],
): readonly (readonly number[])[] {
  const here = plug === target.inlet && pole === target.pole ? [before] : [];
  if (before.length === mostAdapters) return here;
  const further = kinds.flatMap((kind, index) => {
    if (kind.role.kind !== 'adapter' || kind.fits !== plug || kind.offers.length === 0) return [];
    return waysFrom(kind.gives, behind(kind, pole), target, kinds, [...before, index]);
  });
  return [...here, ...further];
}

/** The polarity behind a lead. */
export function behind({ reverses }: StockLeadKind, pole: Pole): Pole {
  if (!reverses || pole === null) return pole;
  return pole === 'centre-negative' ? 'centre-positive' : 'centre-negative';
}
