import type { Board, Catalogue, WiredFeed } from '../../src/domain/board.js';
import type { Part } from '../../src/domain/part.js';
import type { Pedal, Polarity } from '../../src/domain/pedal.js';
import type { Bank, Supply } from '../../src/domain/supply.js';
import type { OutputQuestion } from '../../src/planning/check/check-output.js';
import { isSound, moneyFor } from './brute-force-judge.js';
import { behind, routesTo } from './brute-force-leads.js';

/** What stands around a question: other feeds, those on the very output, and the supply that it is asked of. */
export type Around = {
  readonly board: Board;
  readonly catalogue: Catalogue;
  readonly supply: Supply;
  readonly others: readonly WiredFeed[];
  readonly company: readonly WiredFeed[];
};

/** The least money of all wirings in which the pedal and its company hang on the output; null when none is sound. */
export function cheapestOn(around: Around, question: OutputQuestion): number | null {
  const { board, catalogue, supply, others, company } = around;
  const bank = supply.banks.find(
    ({ firstOutput, outputs }) => firstOutput <= question.output && question.output < firstOutput + outputs,
  );
  if (bank === undefined) throw new RangeError(`${supply.id} has no output ${question.output}`);
  const ids = [question.pedal, ...company.map(({ pedal }) => pedal)];
  const pedals = board.pedals.filter(({ id }) => ids.includes(id));
  const amounts = bank.settings.flatMap(({ millivolts }) =>
    waysOn(bank, pedals, [...board.gear.parts, ...catalogue.parts]).flatMap(({ chain, adapters }) => {
      const hung = pedals.map(({ id }, at): WiredFeed => ({
        pedal: id,
        supply: supply.id,
        unit: question.unit,
        outputs: [question.output],
        millivolts,
        join: null,
        chain: chain?.id ?? null,
        adapters: (adapters[at] ?? []).map((part) => part.id),
      }));
      const wiring = [...others, ...hung];
      return isSound(board, catalogue, wiring) ? [moneyFor(board, catalogue, wiring)] : [];
    }),
  );
  return amounts.length === 0 ? null : Math.min(...amounts);
}

type Way = { readonly chain: Part | null; readonly adapters: readonly (readonly Part[])[] };

/** Every chain lead, or none for a pedal alone, with every way of its pedals behind it. */
function waysOn({ plug, polarity }: Bank, pedals: readonly Pedal[], parts: readonly Part[]): readonly Way[] {
  const positions: readonly (Polarity | null)[] =
    polarity === 'either' ? ['centre-negative', 'centre-positive'] : [polarity];
  const heads = pedals.length === 1 ? [null] : parts.filter(({ role, fits }) => role.kind === 'chain' && fits === plug);
  return positions.flatMap((position) =>
    heads.flatMap((chain) => {
      const offered = chain?.gives ?? plug;
      const sign = chain === null ? position : behind(chain, position);
      return product(pedals.map((pedal) => routesTo(pedal, offered, sign, parts))).map((adapters) => ({
        chain,
        adapters,
      }));
    }),
  );
}

const product = <Item>(lists: readonly (readonly Item[])[]): readonly (readonly Item[])[] =>
  lists.reduce<readonly (readonly Item[])[]>(
    (ways, list) => ways.flatMap((way) => list.map((item) => [...way, item])),
    [[]],
  );
