import type { Board } from '../../domain/board.js';
import { amountInMinorUnits } from '../../domain/money.js';
import { pedalId } from '../../domain/quantities.js';
import { quoted } from '../../domain/shown-text.js';
import { pedalFaults } from '../check/output-question.js';
import type { Wishes } from './rewire-terms.js';

/** Wishes in words that someone typed. */
export type AskedWishes = {
  readonly keep: readonly string[];
  readonly buy: 'allow' | 'never';
  /** In the currency's major units, such as 120.5. */
  readonly budget?: number;
};

export type ResolvedWishes =
  | { readonly kind: 'wishes'; readonly wishes: Wishes }
  /** A sentence for each thing that stands in the way. */
  | { readonly kind: 'faulty'; readonly faults: readonly string[] };

/** What is wished for, or why the board cannot be re-plugged like that. */
export function resolveWishes(board: Board, asked: AskedWishes): ResolvedWishes {
  const { currency, wiring } = board;
  if (wiring.length === 0)
    return {
      kind: 'faulty',
      faults: [
        'the board has no `wiring`, so nothing is plugged in that could stay. Write there how it is plugged today, or ask ' +
          'boardfeed choose for a plan from nothing.',
      ],
    };
  const budget = asked.budget === undefined ? undefined : amountInMinorUnits(asked.budget, currency);
  const faults = [
    ...asked.keep.flatMap((pedal) => keepFaults(board, pedal)),
    ...(budget === null
      ? [
          `--budget ${asked.budget ?? ''} is no amount of ${currency.code}: it has ${currency.decimals} decimals at most.`,
        ]
      : []),
  ];
  if (faults.length > 0) return { kind: 'faulty', faults };
  const keep = [...new Set(asked.keep)].map(pedalId);
  return {
    kind: 'wishes',
    wishes: { keep, buy: asked.buy, ...(budget === undefined || budget === null ? {} : { budget }) },
  };
}

function keepFaults(board: Board, pedal: string): readonly string[] {
  const unknown = pedalFaults(board, { pedal });
  if (unknown.length > 0) return unknown.map((fault) => `--keep: ${fault}`);
  if (board.wiring.some((wired) => wired.pedal === pedal)) return [];
  return [
    `--keep: ${quoted(pedal)} is not plugged in today, so it cannot stay. Leave it out, or add it to \`wiring\`.`,
  ];
}
