import { todaysWiring } from '../../../src/planning/today/todays-wiring.js';
import { kitOf } from '../../../src/domain/kit.js';
import { millivolts } from '../../../src/domain/quantities.js';
import type { Answer } from '../../../src/planning/answer.js';
import { changesOf } from '../../../src/planning/rewire/changes.js';
import { wiredOf } from '../../support/wired.js';
import { everything } from './everything.js';
import { feedOf } from './samples.js';

type Plan = Extract<Answer, { kind: 'plan' }>;

/** The board with everything, of which five pedals hang elsewhere today, and one that the plan leaves out. */
export function moving(named: (id: string) => string) {
  const all = everything(named);
  const elsewhere = new Map([
    ['chorus', feedOf('chorus', 'shared', 1)],
    ['old-wah', feedOf('old-wah', 'shared', 3)],
    ['granular', feedOf('granular', 'joiner', 3)],
    ['survivor', feedOf('survivor', 'joiner', 7)],
    ['looper', feedOf('looper', 'shared', 4, { settings: [millivolts(12_000)] })],
  ]);
  const wiring = all.wiring.feeds
    .filter(({ pedal }) => pedal !== 'synth' && pedal !== 'tube-delay')
    .map((feed) => wiredOf(elsewhere.get(feed.pedal) ?? feed));
  const dropped = wiredOf(feedOf('nowhere', 'joiner', 8));
  const board = { ...all.board, wiring: [...wiring, dropped] };
  const changes = changesOf(kitOf(board, all.catalogue), todaysWiring(kitOf(board, all.catalogue)), all.wiring);
  const plan: Plan = { kind: 'plan', aim: 'moves', wiring: all.wiring, gap: null, reasons: all.reasons, changes };
  return { ...all, board, plan };
}
