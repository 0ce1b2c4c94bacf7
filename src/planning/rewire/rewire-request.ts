import type { Board } from '../../domain/board.js';
import { amountInMinorUnits } from '../../domain/money.js';
import type { Pedal } from '../../domain/pedal.js';
import { quoted } from '../../domain/shown-text.js';
import { pedalNamed, type Meant } from '../check/output-question.js';
import type { Wishes } from './rewire-terms.js';

/** Wishes in words that someone typed. */
type AskedWishes = {
  readonly keep: readonly string[];
  readonly buy: 'allow' | 'never';
  /** In the currency's major units, such as 120.5. */
  readonly budget?: number;
};

type ResolvedWishes =
  | { readonly kind: 'wishes'; readonly wishes: Wishes }
  /** A sentence for each thing that stands in the way. */
  | { readonly kind: 'faulty'; readonly faults: readonly string[] };

/** What is wished for, or why the board cannot be re-plugged like that. */
export function resolveWishes(board: Board, asked: AskedWishes): ResolvedWishes {
  const { currency, wiring, isUnplugged = false } = board;
  if (wiring.length === 0 && !isUnplugged)
    return {
      kind: 'faulty',
      faults: [
        'the board has no `wiring`, so nothing is plugged in that could stay. Write there how it is plugged today, or ask ' +
          'boardfeed choose for a plan from nothing.',
      ],
    };
  const budget = asked.budget === undefined ? undefined : amountInMinorUnits(asked.budget, currency);
  const kept = asked.keep.map((pedal) => keptBy(board, pedal));
  const faults = [
    ...kept.flatMap((each) => (each.kind === 'unknown' ? [`--keep: ${each.fault}`] : [])),
    ...(budget === null
      ? [
          `--budget ${asked.budget ?? ''} is no amount of ${currency.code}: it has ${currency.decimals} decimals at most.`,
        ]
      : []),
  ];
  if (faults.length > 0) return { kind: 'faulty', faults };
  const keep = [...new Set(kept.flatMap((each) => (each.kind === 'meant' ? [each.thing.id] : [])))];
  return {
    kind: 'wishes',
    wishes: { keep, buy: asked.buy, ...(budget === undefined || budget === null ? {} : { budget }) },
  };
}

/** The pedal that is to stay where it is. */
function keptBy(board: Board, text: string): Meant<Pedal> {
  const meant = pedalNamed(board, text);
  if (meant.kind === 'unknown' || board.wiring.some(({ pedal }) => pedal === meant.thing.id)) return meant;
  const fault = `${quoted(text)} is not plugged in today, so it cannot stay. Leave it out, or add it to \`wiring\`.`;
  return { kind: 'unknown', fault };
}
