import type { Ground } from '../../domain/pedal.js';
import type { Bank, Setting, Supply } from '../../domain/supply.js';
import { polesOf } from './place-shapes.js';
import { behind, type Pole } from './routes.js';
import { countsOf, type ProofBench, type LinkShape, type Raw, type RawChain, type SeatShape } from './shape.js';
import { mostLoad, offeredBy, suits, takenAt, unity } from './output-offer.js';
import { weightIn, type Limit, type ShapeTaken } from './totals.js';

const grounds = ['negative', 'positive'] as const satisfies readonly Ground[];

/** Every sort of chain: by output, setting, plug and polarity at the tails, and ground. */
export function chainShapes({ banks }: Supply, limits: readonly Limit[], bench: ProofBench): readonly RawChain[] {
  return banks.flatMap((bank, index) => {
    if (bank.power === 'AC') return [];
    const tails = tailsOf(bank, bench);
    return bank.settings.flatMap((setting, position) =>
      tails.flatMap((tail) =>
        grounds.flatMap((ground) => {
          const at = { bank, setting, seat: { bank: index, setting: position } };
          const chain = chainAt(at, tail, ground, limits, bench);
          return chain.links.reduce((sum, { pedal }) => sum + (bench.classes[pedal]?.members.length ?? 0), 0) < 2
            ? []
            : [chain];
        }),
      ),
    );
  });
}

type Lead = RawChain['leads'][number];
/** What the tails of chain leads on an output offer. A polarity switch stands one way for all of them. */
type Tail = { readonly plug: string; readonly pole: Pole; readonly leads: readonly Lead[] };

function tailsOf(bank: Bank, { kinds }: ProofBench): readonly Tail[] {
  const tails = new Map<string, Tail>();
  for (const [kind, lead] of kinds.entries()) {
    if (lead.role.kind !== 'chain' || lead.fits !== bank.plug || lead.offers.length === 0) continue;
    for (const pole of polesOf(bank).map((offered) => behind(lead, offered))) {
      const key = JSON.stringify([lead.gives, pole]);
      const leads = [...(tails.get(key)?.leads ?? []), { kind, tails: lead.role.tails }];
      tails.set(key, { plug: lead.gives, pole, leads });
    }
  }
  return [...tails.values()];
}

type At = { readonly bank: Bank; readonly setting: Setting; readonly seat: SeatShape };

function chainAt(at: At, tail: Tail, ground: Ground, limits: readonly Limit[], bench: ProofBench): RawChain {
  const { bank, setting, seat } = at;
  const { guess, headroom } = bench.policy;
  const source = offeredBy(bank, setting);
  const weights = limits.map((limit) => weightIn(limit, [{ bank: seat.bank, volts: setting.millivolts }], null));
  // A chain by itself must keep within the totals, too.
  const within = (on: keyof ShapeTaken, most: number): number =>
    limits.reduce((least, limit, index) => {
      const weight = weights[index] ?? 0;
      return weight === 0 || limit.on !== on ? least : Math.min(least, Number(limit.most / BigInt(weight)));
    }, most);
  const most: ShapeTaken = {
    load: within('load', mostLoad(source.rating, headroom.chained, guess)),
    surge: within('surge', mostLoad(source.rating, unity, guess)),
  };
  const links = bench.classes.flatMap(({ pedal }, index): readonly Raw<LinkShape>[] => {
    if (pedal.alone || pedal.ground !== ground || !suits(source, pedal)) return [];
    const takes = takenAt(pedal, source.volts, guess);
    const route = bench.routes.between(tail.plug, [tail.pole], pedal);
    if (route === null || takes.load > most.load || takes.surge > most.surge) return [];
    const taken = limits.map(({ on }, at) => BigInt(takes[on]) * BigInt(weights[at] ?? 0));
    return [{ pedal: index, ...takes, route, counts: countsOf(pedal, source.volts), taken }];
  });
  return { seat, volts: source.volts, ground, most, leads: tail.leads, links };
}
