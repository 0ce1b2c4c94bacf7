import type { Kit } from '../../domain/kit.js';
import type { OutletLoad } from '../../domain/load-numbers.js';
import { everyFeed, type Place } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Check, SoftFinding } from '../../planning/check/check.js';
import { pluggingCautions } from '../words/cautions.js';
import { confirmEntries } from '../words/confirm.js';
import { standingCautions } from '../words/remarks.js';
import { standsOf } from '../words/stands.js';
import { digitalTogether } from '../words/shared-grounds.js';
import { softText } from '../words/soft-findings.js';
import { soundWiring } from '../words/usage.js';
import { at, list, orNull, record } from './codec.js';
import { confirmed } from './confirm-codec.js';
import { printed } from './printed.js';
import { boardName, cautions, feeds, finding, format, load, placeKeys, totals } from './shared-codecs.js';
import { inlets } from './inlets-codec.js';
import { choice, pedals, sentence } from './values.js';

/** A soft finding with the check that it is of. */
type Soft = { readonly check: Check; readonly finding: SoftFinding };

const softKinds = [
  'exposed',
  'tight',
  'open setting',
  'off preferred',
  'not owned',
  'unfed',
] as const satisfies readonly SoftFinding['kind'][];

const soft = record<Soft>()('What breaks no rule and still is worth knowing.', {
  kind: at(choice(softKinds, 'What it is.'), (from) => from.finding.kind),
  pedals: at(pedals('Those that it concerns.'), (from) => pedalsOf(from.finding)),
  ...placeKeys((from: Soft) => placeOf(from.finding)),
  message: at(sentence, (from, { board, inventory }) => softText(board, inventory, from.check, from.finding)),
  numbers: at(orNull('Where a limit is near; else null.', load), (from) =>
    from.finding.kind === 'tight' ? from.finding.numbers : null,
  ),
});

const outlet = record<OutletLoad>()('What hangs on one output, or on two that are joined.', {
  ...placeKeys((from: OutletLoad) => from.place),
  pedals: pedals('What hangs there.'),
  current: orNull('Running; null when the output has no such setting.', load),
  startup: orNull('When all is switched on at once; null where no startup exceeds its load.', load),
});

/** Keys and their order are a promise to programs that read it: new keys come after those that are there. */
export const checkCodec = record<Check>()('What came of checking a wiring.', {
  format: format('boardfeed/check/1'),
  board: boardName(),
  status: choice(['safe', 'unsafe'], 'Safe: no hard rule is broken.'),
  findings: list('The hard rules that are broken, the worst first.', finding),
  soft: at(list('What to mind.', soft), (check) => check.soft.map((each) => ({ check, finding: each }))),
  feeds: at(feeds, ({ wiring }) => wiring),
  confirm: at(confirmed, ({ wiring }, { board, inventory }) => confirmEntries(board, inventory, everyFeed(wiring))),
  cautions: cautions((check: Check, { board, inventory }) => {
    const sound = soundWiring(check);
    const digital = digitalTogether(inventory, check.wiring);
    return [
      ...pluggingCautions(inventory, sound),
      ...digital,
      ...standingCautions({ board }, standsOf(inventory, everyFeed(check.wiring)), 'check'),
    ];
  }),
  unpowered: at(pedals('The pedals without a feed.'), ({ wiring }) => wiring.unpowered),
  exposed: at(pedals('High-gain pedals that share a ground with a digital one.'), ({ wiring }) => wiring.exposed),
  outputs: at(list('Every output in use.', outlet), ({ wiring }) => wiring.outlets),
  totals: at(totals, ({ wiring }) => wiring.totals),
  inlets: at(inlets, ({ wiring }) => wiring),
});

/** What came of checking a wiring as one JSON object with a line break at its end. */
export const checkJson = (kit: Kit, check: Check): string => printed(checkCodec, kit, check);

function placeOf(found: SoftFinding): Place | null {
  switch (found.kind) {
    case 'tight':
    case 'open setting':
    case 'off preferred':
      return found.place;
    case 'exposed':
    case 'not owned':
    case 'unfed':
      return null;
  }
}

/** Those that it concerns; none for a thing that is not owned. */
function pedalsOf(found: SoftFinding): readonly PedalId[] {
  switch (found.kind) {
    case 'tight':
      return found.pedals;
    case 'not owned':
      return [];
    case 'exposed':
    case 'open setting':
    case 'off preferred':
    case 'unfed':
      return [found.pedal];
  }
}
