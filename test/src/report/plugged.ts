import type { Board, WiredFeed } from '../../../src/domain/board.js';
import { millivolts, pedalId, supplyId } from '../../../src/domain/quantities.js';
import type { OutputQuestion } from '../../../src/planning/check/check-output.js';
import { wiredOf } from '../../support/wired.js';
import { everything } from './everything.js';
import { feedOf, tideway } from './samples.js';

/** The board with everything, plugged as it is planned there. */
export function pluggedWell(named: (id: string) => string) {
  const { board, catalogue, wiring } = everything(named);
  return { board: { ...board, wiring: wiring.feeds.map(wiredOf) } satisfies Board, catalogue };
}

/** The same board plugged in a hurry: wrong volts, plus for minus, AC for DC, pedals that share an output, and more. */
export function pluggedBadly(named: (id: string) => string) {
  const { board, catalogue } = pluggedWell(named);
  const changes: Readonly<Record<string, Partial<WiredFeed>>> = {
    chorus: { chain: null },
    'old-wah': { adapters: [] },
    'lead-drive': { supply: supplyId('ac'), outputs: [1] },
    synth: { outputs: [3], unit: 1, millivolts: millivolts(12_000) },
    survivor: { supply: supplyId('shared'), outputs: [4] },
    'tube-delay': { supply: supplyId('rough') },
  };
  const wiring = board.wiring.map((wired) => ({ ...wired, ...changes[wired.pedal] }));
  const policy = { ...board.policy, sockets: 1, mains: [millivolts(250_000)] };
  return { board: { ...board, policy, wiring }, catalogue };
}

/** The plainest board, with its echo on an output that is too weak and its drive left out. */
export const weakTideway = {
  board: {
    ...tideway.board,
    wiring: [feedOf('estuary-echo', 'quay-6', 1), feedOf('tarn-fuzz', 'quay-6', 5)].map(wiredOf),
  } satisfies Board,
  catalogue: tideway.catalogue,
};

/** Questions about the board with everything: straight, through leads, in company, on a switch, and hopeless ones. */
export const questions: readonly OutputQuestion[] = (
  [
    ['chorus', 'shared', 1],
    ['nowhere', 'joiner', 1],
    ['synth', 'joiner', 5],
    ['tube-delay', 'ac', 1],
    ['survivor', 'shared', 4],
    ['lead-drive', 'shared', 2],
    ['big-preamp', 'joiner', 3],
    ['looper', 'rough', 1],
  ] as const
).map(([pedal, supply, output]) => ({ pedal: pedalId(pedal), supply: supplyId(supply), unit: 1, output }));
