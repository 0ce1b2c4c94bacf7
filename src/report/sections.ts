import type { Board } from '../domain/board.js';
import type { Wiring } from '../domain/plan.js';
import { decimalOfThousandths, factorText } from '../domain/quantities.js';
import type { Pedal } from '../domain/pedal.js';
import type { Reason } from '../planning/answer.js';
import { generalCautions, noiseCautions, pluggingCautions } from './cautions.js';
import { confirmEntries } from './confirm.js';
import { groundDomains, positiveGrounds } from './grounds.js';
import { unitName } from './inventory.js';
import { block, type Piece } from './layout.js';
import { bullet, sentence, type Screen } from './screen.js';
import { assumedText, listText, outputsText, voltsText } from './words.js';

const indent = 2;

/** The pedals without power, each with its nearest miss where nothing at all can feed it. */
export function leftOutLines(screen: Screen, wiring: Wiring, reasons: readonly Reason[]): string[] {
  const pieces = wiring.unpowered.map((pedal) => {
    const reason = reasons.find((one) => one.kind === 'pedal' && one.pedal === pedal);
    const nearest = reason?.kind === 'pedal' ? reason.refusals[0] : undefined;
    const why = nearest === undefined ? 'left out to power the others' : sentence(screen, nearest.message);
    return bullet(screen, `${screen.inventory.pedalName(pedal)}: ${why}`, screen.paints.caution);
  });
  return block(pieces, screen.width, indent);
}

/** What was assumed or guessed; pedals with the same assumptions share a line. */
export function confirmLines(screen: Screen, wiring: Pick<Wiring, 'feeds'>): string[] {
  const { board, inventory, width } = screen;
  const entries = confirmEntries(board, inventory, wiring.feeds);
  const groups = new Map<string, string[]>();
  for (const entry of entries) {
    const text = assumedText(entry.assumed);
    const name = 'pedal' in entry ? inventory.pedalName(entry.pedal) : inventory.supplyName(entry.supply);
    if (text !== '') groups.set(text, [...(groups.get(text) ?? []), name]);
  }
  const assumed = [...groups].map(([text, names]) => bullet(screen, `Assumed: ${text}. Look at ${listText(names)}.`));
  const guesses = board.pedals.filter(({ figure }) => figure === 'guess').map((pedal) => guessPiece(screen, pedal));
  if (entries.length === 0) return [];
  const lead =
    'Your files do not state what follows. Read the labels; where one differs, correct the file and run again.';
  return block([{ text: lead, paint: screen.paints.faint }, ...assumed, ...guesses], width, indent);
}

function guessPiece(screen: Screen, { id, draw }: Pedal): Piece {
  const { board, inventory, marks } = screen;
  const figures =
    draw.kind === 'flat'
      ? `${decimalOfThousandths(draw.microamps)} mA`
      : [...draw.microamps].map(([at, drawn]) => `${decimalOfThousandths(drawn)} mA at ${voltsText(at)}`).join(', ');
  const counted = `counted ${marks.times} ${factorText(board.policy.guess)}`;
  return bullet(screen, `Guessed: ${inventory.pedalName(id)} draws ${figures} (${counted}). Read its label or manual.`);
}

/** Which pedals share a ground inside a supply, who is exposed, and which have a positive ground. */
export function groundLines(screen: Screen, wiring: Wiring): string[] {
  const { board, inventory, paints, width } = screen;
  const shared = groundDomains(inventory, wiring.feeds).filter(({ pedals }) => pedals.length > 1);
  const domains = shared.map(({ supply, unit, outputs, pedals }) => {
    const name = unitName(inventory, wiring.feeds, { supply, unit });
    const place = `${name} ${outputs === null ? 'common ground' : outputsText(outputs)}`;
    return bullet(screen, `${place}: ${listText(pedals.map(inventory.pedalName))} share one ground.`);
  });
  const alone = bullet(screen, 'No two pedals share a ground inside a supply.');
  const noise = noiseCautions(inventory, wiring).map((text) => bullet(screen, text, paints.caution));
  const positive = positiveGrounds(board, wiring).map((pedal) =>
    bullet(
      screen,
      `${inventory.pedalName(pedal)} has a positive ground: a pedal with a negative ground on the same output or ` +
        'common ground would be a short circuit.',
    ),
  );
  return block([...(domains.length === 0 ? [alone] : domains), ...noise, ...positive], width, indent);
}

/** What holds for this wiring, then what always holds. */
export function cautionLines(screen: Screen, wiring: Pick<Wiring, 'feeds'>, of: 'plan' | 'check' = 'plan'): string[] {
  const { board, inventory, paints, width } = screen;
  const own = pluggingCautions(inventory, wiring).map((text) => bullet(screen, text, paints.caution));
  return block([...own, ...standingCautions(board, of).map((text) => bullet(screen, text))], width, indent);
}

/** What holds whatever is plugged. */
export const standingCautions = (board: Board, of: 'plan' | 'check'): readonly string[] => [
  ...(board.policy.mains === null ? ['Check that every supply accepts the mains volts of the venue.'] : []),
  ...generalCautions(of),
];
