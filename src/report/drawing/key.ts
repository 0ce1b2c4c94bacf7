import type { Sign } from '../signs/sign.js';
import type { PlanHandout } from '../words/handout.js';
import { hazardMeanings, hazards, type Hazard } from '../words/hazards.js';
import { isOnBattery, outputsOfStrip, type DrawnBoard } from './drawn-board.js';

/** What a sign in the drawing means. */
export type KeyEntry =
  | { readonly kind: 'hazard'; readonly hazard: Hazard; readonly text: string }
  | { readonly kind: 'sign'; readonly sign: Sign; readonly text: string }
  | { readonly kind: 'text'; readonly text: string };

/** How to read the drawing; only what it shows is explained. */
export function drawingKey(plan: PlanHandout, board: DrawnBoard): readonly KeyEntry[] {
  const outputs = board.strips.flatMap(outputsOfStrip);
  const isSet = outputs.some(({ gives, notes }) => [gives, ...notes].some((text) => text.startsWith('set ')));
  const isChained = outputs.some(({ chain }) => chain !== null);
  return [
    ...(board.leads.length === 0
      ? []
      : [
          plain(
            `The number on both ends of a lead is its own for life; its labels carry it${isChained ? ', with a letter for each tail of a chain' : ''}.`,
          ),
        ]),
    ...signEntries(board),
    ...hazardsShown(board).map((hazard) => ({ kind: 'hazard', hazard, text: hazardMeanings[hazard] }) as const),
    ...(isSet ? [plain('"Set": turn the switch of that output to this first.')] : []),
    ...(outputs.some(({ state }) => state === 'free') ? [plain('An open ring is a free output.')] : []),
    ...(board.strips.some(({ runs }) => runs.some(({ isIsolated }) => isIsolated))
      ? [plain('Isolated: the ground of that output is its own, shared only by the pedals on it.')]
      : []),
    ...(outputs.some(({ load }) => load !== null)
      ? [plain('The bars: load with its reserve against what the output gives.')]
      : []),
    ...(plan.hookup.filter(({ socket }) => socket !== null).length > 1
      ? [plain('Each supply on the mains takes a socket of its own.')]
      : []),
  ];
}

const plain = (text: string): KeyEntry => ({ kind: 'text', text });

const signTexts = {
  'centre-negative': 'centre-negative: the dot is the pin, and leads to minus',
  'centre-positive': 'centre-positive: the dot is the pin, and leads to plus',
  battery: 'a battery in the pedal: it has no lead',
} as const;

const signEntries = ({ pedals }: DrawnBoard): readonly KeyEntry[] =>
  (['centre-negative', 'centre-positive', 'battery'] as const)
    .filter((sign) => pedals.some((pedal) => pedal.polarity === sign || (sign === 'battery' && isOnBattery(pedal))))
    .map((sign) => ({ kind: 'sign', sign, text: signTexts[sign] }));

/** Those that stand anywhere in the drawing. */
function hazardsShown({ strips, pedals }: DrawnBoard): readonly Hazard[] {
  const outputs = strips.flatMap(outputsOfStrip);
  const shown = new Set<Hazard>([
    ...pedals.flatMap((pedal) => pedal.hazards),
    ...outputs.flatMap((output) => [...output.hazards, ...(output.chain?.hazards ?? [])]),
    ...(strips.some(({ runs }) => runs.some(({ isIsolated }) => !isIsolated)) ? (['shared ground'] as const) : []),
  ]);
  return hazards.filter((hazard) => shown.has(hazard));
}
