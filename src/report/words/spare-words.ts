import type { JudgedPlan } from '../../domain/judged-plan.js';
import { numberOfThousandths } from '../../domain/quantities.js';
import type { Largest } from '../../planning/spare/largest-pedal.js';
import type { Room, Spare } from '../../planning/spare/spare.js';
import { cautionsTold, confirmTold, type AnswerPart, type Asking } from './answer-parts.js';
import { ownedUnitsOf } from './inventory.js';
import { reserveAlone } from './load-legend.js';
import { placeText } from './places.js';
import { plainly } from './remark.js';
import { sentence, type Speech } from './speech.js';
import { countText } from './words.js';

/** What is asked for the room that a board has. */
export const spareAsking: Asking = {
  title: 'what it has to spare',
  impossible: 'not every pedal is plugged in, and no plan powers them all',
};

/** What more fits, and what is left of what; whoever takes it home is told what to mind as well. */
export function spareParts(speech: Speech, found: Spare): readonly AnswerPart[] {
  const { wiring } = found.installed;
  const remarks = moreFitsTexts(speech, found).map(plainly);
  return [
    ['room', 'What more fits, with nothing bought', { kind: 'remarks', remarks }],
    ['loads', 'What each output and total has left', { kind: 'left', wiring }],
    ['confirm', { page: 'Confirm before plugging in' }, confirmTold(speech, wiring)],
    ['cautions', { page: 'Cautions' }, cautionsTold(speech, wiring)],
  ];
}

/** Whose room is told: "As the board is plugged today: 3 pedals on 1 supply." */
export function spareBasis({ of, installed: { wiring } }: Spare): string {
  const { score, feeds } = wiring;
  return `${basisText(of, wiring)}: ${countText(feeds.length, 'pedal')} on ${countText(score.bricks, 'supply', 'supplies')}.`;
}

/** By which wiring it is told; what a plan buys then counts as there. */
export function basisText(of: Spare['of'], { buy }: JudgedPlan): string {
  if (of === 'wiring') return 'As the board is plugged today';
  const bought = buy.supplies.length + buy.parts.length > 0 ? ', once what it buys is there' : '';
  return `By the best plan${bought}, since not every pedal is plugged in today`;
}

/** What more fits with nothing bought, while all stays and when others may move. */
function moreFitsTexts(speech: Speech, { of, asPlugged, replugged, counted }: Spare): readonly string[] {
  const reserve = reserveAlone(speech);
  const draw = numberOfThousandths(counted.microamps);
  const stands = of === 'wiring' ? 'as it is plugged' : 'as that plan has it';
  return [
    `More 9 V pedals of ${draw} mA: ${moreText(asPlugged, counted.most)} ${stands}, ${moreText(replugged, counted.most)} when others may move.`,
    `One more digital 9 V pedal ${stands}: ${largestText(speech, asPlugged)}`,
    `And when others may move: ${largestText(speech, replugged)}`,
    ...(reserve === null ? [] : [`The reserve is counted on top: ${reserve} for a pedal alone.`]),
  ].map((text) => sentence(speech, text));
}

function moreText({ more, atLeast }: Room, most: number): string {
  if (more === null)
    return atLeast === 0 ? 'not settled in time' : `at least ${atLeast}, as far as was settled in time,`;
  if (more === 0) return 'none';
  return more === most ? `${more} or more` : String(more);
}

function largestText(speech: Speech, { largest, quietest }: Room): string {
  if (largest === 'unknown') return 'not settled in time.';
  if (largest === null) return 'none, however little it draws.';
  const most = `up to ${placedText(speech, largest)}`;
  if (largest.exposes === 0) return `${most}.`;
  const noisy = `${most}, where it exposes ${countText(largest.exposes, 'pedal')} to noise`;
  if (quietest === null || quietest === 'unknown') return `${noisy}.`;
  return `${noisy}; without that up to ${placedText(speech, quietest)}.`;
}

const placedText = ({ board, inventory }: Speech, { milliamps, feed }: Largest): string =>
  `${milliamps} mA, on ${placeText(inventory, ownedUnitsOf(board), feed)}`;
