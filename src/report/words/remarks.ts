import { groupBy } from '../../domain/group-by.js';
import type { Board } from '../../domain/board.js';
import type { Pedal } from '../../domain/pedal.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, type Feed, type Wiring } from '../../domain/plan.js';
import { factorText, type PedalId } from '../../domain/quantities.js';
import type { Reason } from '../../planning/answer.js';
import { generalCautions, noiseCautions, pluggingCautions } from './cautions.js';
import { confirmEntries, confirmName } from './confirm.js';
import { fieldWords, whereToLook } from './label-places.js';
import { describedOnlyTexts } from './described-only.js';
import { drawText } from './needs.js';
import { plainly, withCare, type Remark } from './remark.js';
import { digitalTogether, groundName } from './shared-grounds.js';
import { sentence, type Speech } from './speech.js';
import { standsOf, type Stands } from './stands.js';
import { assumedText, listText } from './words.js';

/** Why a pedal has no power: its nearest miss where nothing at all can feed it. */
export function whyLeftOut(speech: Speech, pedal: PedalId, reasons: readonly Reason[]): string {
  const reason = reasons.find((one) => one.kind === 'pedal' && one.pedal === pedal);
  const nearest = reason?.kind === 'pedal' ? reason.refusals[0] : undefined;
  return nearest === undefined ? 'left out to power the others' : sentence(speech, nearest.message);
}

/** Stands before what has to be confirmed. */
export const confirmLead =
  'Your files do not state what follows. Read the labels; where one differs, correct the file and run again.';

/** The same on paper, for those who have no files. */
export const confirmAtHome =
  'Nobody has read what follows off a label yet. Read the labels; where one differs, ask again before you plug anything in.';

/** What was assumed or guessed; pedals with the same assumptions share a remark. */
export function confirmRemarks(speech: Speech, wiring: Pick<Wiring, 'feeds' | 'inlets'>): readonly Remark[] {
  const { board, inventory } = speech;
  const texts = confirmEntries(board, inventory, everyFeed(wiring))
    .map((entry) => ({
      text: assumedText(entry.assumed, 'pedal' in entry ? 'runs on' : 'gives'),
      name: confirmName(inventory, entry),
    }))
    .filter(({ text }) => text !== '');
  const assumed = groupBy(texts, ({ text }) => text).map((alike) =>
    plainly(`Assumed: ${alike[0].text}. Look at ${listText(alike.map(({ name }) => name))}.`),
  );
  const guesses = board.pedals.filter(({ figure }) => figure === 'guess').map((pedal) => guessRemark(speech, pedal));
  return [...unknownRemarks(speech), ...assumed, ...guesses];
}

/** What nobody has read, where to look for it, and what is not to be done before. */
const unknownRemarks = ({ board, inventory }: Speech): readonly Remark[] =>
  board.pedals.flatMap((pedal) => {
    // What is planned for a draw is told among the guesses.
    const missing = pedal.unknown.filter((field) => field !== 'milliamps');
    if (missing.length === 0) return [];
    const look = listText(missing.map((field) => whereToLook[field]));
    const then = pedal.kept === 'unread' ? ' Plug nothing in before.' : '';
    return [
      withCare(
        `Not known of ${inventory.pedalName(pedal.id)}: ${listText(missing.map((field) => fieldWords[field]))}. Look for ${look}.${then}`,
      ),
    ];
  });

function guessRemark({ board, inventory, marks }: Speech, { id, draw }: Pedal): Remark {
  const counted = `counted ${marks.times} ${factorText(board.policy.guess)}`;
  return plainly(`Guessed: ${inventory.pedalName(id)} draws ${drawText(draw)} (${counted}). Read its label or manual.`);
}

/** Which pedals share a ground inside a supply, who is exposed, and which have a positive ground. */
export function groundRemarks({ board, inventory }: Speech, plan: JudgedPlan): readonly Remark[] {
  const shared = plan.grounds.filter(({ pedals }) => pedals.length > 1);
  const domains = shared.map((ground) =>
    plainly(
      `${groundName(inventory, plan.feeds, ground)}: ${listText(ground.pedals.map(inventory.pedalName))} share one ground.`,
    ),
  );
  const noise = [...noiseCautions(inventory, plan), ...digitalTogether(inventory, plan)];
  const alone = plainly('No two pedals share a ground inside a supply.');
  const fed = new Set(plan.feeds.map(({ pedal }) => pedal));
  const positive = board.pedals
    .filter(({ id, ground }) => ground === 'positive' && fed.has(id))
    .map(({ id }) =>
      plainly(
        `${inventory.pedalName(id)} has a positive ground: a pedal with a negative ground on the same output or ` +
          'common ground would be a short circuit.',
      ),
    );
  return [...(domains.length === 0 ? [alone] : domains), ...noise.map(withCare), ...positive];
}

/** What holds for this wiring, then what always holds where these feeds hang on the board. */
export const cautionRemarks = (
  speech: Speech,
  wiring: Pick<JudgedPlan, 'feeds' | 'inlets' | 'grounds' | 'runtimes' | 'batteries'>,
  of: 'plan' | 'check' = 'plan',
  hanging: readonly Pick<Feed, 'supply'>[] = everyFeed(wiring),
): readonly Remark[] => [
  ...pluggingCautions(speech.inventory, wiring).map(withCare),
  ...describedOnlyTexts(speech).map(withCare),
  ...standingCautions(speech, standsOf(speech.inventory, hanging), of).map(plainly),
];

/** What holds whatever is plugged. */
export const standingCautions = (
  { board }: { readonly board: Board },
  stands: Stands,
  of: 'plan' | 'check',
): readonly string[] => [
  ...(board.policy.mains.length === 0 && stands.mains
    ? ['Check that every supply accepts the mains volts of the venue.']
    : []),
  ...generalCautions(stands, of),
];
