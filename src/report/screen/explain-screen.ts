import type { Kit } from '../../domain/kit.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Explanation } from '../../planning/explain/explain.js';
import { alikeArguments } from '../words/explain-alike.js';
import { argumentTexts, namesText } from '../words/explain-argument.js';
import { cheaperTexts, forcedTexts, type ExplainedPlan } from '../words/explain-plan.js';
import { elsewhereTexts, hereText, othersArranged, unfitTexts } from '../words/explain-seat.js';
import { wayTexts } from '../words/explain-folded-ways.js';
import { unsettledText } from '../words/answer-parts.js';
import { unpoweredText, unpoweredTitle } from '../words/reasons.js';
import { bullets } from './answer-parts.js';
import { block, indent, type Piece } from './layout.js';
import { headLines, printed, section, type Screen, type ScreenOptions } from './screen.js';
import { sentence } from '../words/speech.js';
import { allText, countText, priceText } from '../words/words.js';

type Impossible = Extract<Explanation, { kind: 'impossible' }>;

/** An explanation as text for a screen, with a line break at its end. `pedal` is the one that was asked about. */
export const explanationText = (
  kit: Kit,
  explanation: Explanation,
  pedal: PedalId | null,
  options: ScreenOptions,
): string => printed(kit, options, (screen) => linesOf(screen, explanation, pedal));

function linesOf(screen: Screen, explanation: Explanation, pedal: PedalId | null): readonly string[] {
  switch (explanation.kind) {
    case 'impossible':
      return impossibleLines(screen, explanation, pedal);
    case 'plan':
      return pedal === null ? planLines(screen, explanation) : seatLines(screen, explanation, pedal);
    case 'stopped':
      return headLines(screen, 'not explained yet', {
        text: 'The search stopped before it was settled whether there is a plan. Give it more time and run it again.',
        paint: screen.paints.caution,
      });
  }
}

const spelled = (screen: Screen, texts: readonly string[]): string[] =>
  bullets(
    screen,
    texts.map((text) => sentence(screen, text)),
  );

function impossibleLines(screen: Screen, explanation: Impossible, pedal: PedalId | null): readonly string[] {
  const { conflicts, ways } = explanation;
  const [cheapest = null] = ways.flatMap(({ change }) => (change.kind === 'budget' ? [change.to] : []));
  const told = alikeArguments(conflicts);
  const many = told.length > 1;
  const why = told.flatMap(({ argument, others }, at) => {
    const texts = argumentTexts(screen, argument);
    const same = others.length === 0 ? '' : ` The same holds for ${namesText(screen, others)}.`;
    const conclusion = { text: sentence(screen, `${texts.at(-1) ?? ''}${same}`), paint: screen.paints.strong };
    return [
      ...(at === 0 ? [] : ['']),
      ...(many ? block([{ text: `Reason ${at + 1}`, paint: screen.paints.strong }], screen.width, indent) : []),
      ...spelled(screen, texts.slice(0, -1)),
      ...block([conclusion], screen.width, indent),
    ];
  });
  return [
    ...headLines(
      screen,
      `why ${unpoweredTitle(screen, cheapest)}`,
      { text: unpoweredText(screen, cheapest), paint: screen.paints.bad },
      ...impossiblePieces(screen, explanation, pedal),
    ),
    ...section(screen, '1. Why', why),
    ...section(screen, '2. Ways out, each by itself enough', spelled(screen, wayTexts(screen, ways))),
  ];
}

function impossiblePieces(screen: Screen, { conflicts, ways, whole }: Impossible, pedal: PedalId | null) {
  const { kit, inventory } = screen;
  const pieces: Piece[] = [];
  if (pedal !== null) {
    const involved = conflicts.some(({ conflict }) => conflict.pedals.includes(pedal));
    const part = involved ? 'It is among the pedals that stand in the way' : 'It is not among the pedals in the way';
    pieces.push({ text: `So there is no place to explain for ${inventory.pedalName(pedal)}. ${part}.` });
  }
  if (ways.length === 0) pieces.push({ text: 'No single change that was tried is enough.' });
  pieces.push(...wholePieces(screen, whole));
  if (kit.catalogue === null)
    pieces.push({ text: 'For the outputs and leads that would do ask boardfeed choose, without a catalogue as well.' });
  return pieces;
}

function planLines(screen: Screen, explanation: ExplainedPlan): readonly string[] {
  const { wiring, cheaper } = explanation;
  return [
    ...headLines(
      screen,
      'why this plan',
      { text: planFacts(screen, explanation) },
      ...wholePieces(screen, explanation.whole),
    ),
    ...section(screen, '1. What each purchase is for', spelled(screen, forcedTexts(screen, explanation))),
    ...(wiring.score.money === 0
      ? []
      : section(screen, '2. What less money cannot do', spelled(screen, cheaperTexts(screen, cheaper)))),
  ];
}

function planFacts({ board }: Screen, { wiring, aim }: ExplainedPlan): string {
  const { score } = wiring;
  const aims = { cost: 'the least money', bricks: 'the fewest supplies', quiet: 'the least noise' };
  const price = score.money === 0 ? 'It costs nothing' : `It costs ${priceText(score.money, board)}`;
  return `${price}, powers ${allText(board.pedals.length, 'pedal')} from ${countText(score.bricks, 'supply', 'supplies')} and is proven best: ${aims[aim]} first.`;
}

const wholePieces = ({ paints }: Screen, whole: boolean): readonly Piece[] =>
  whole ? [] : [{ text: unsettledText, paint: paints.caution }];

function seatLines(screen: Screen, explanation: ExplainedPlan, pedal: PedalId): readonly string[] {
  const { seat, wiring } = explanation;
  if (seat === null) return [];
  const { elsewhere } = seat;
  const [used, others] = [elsewhere.filter(({ bank }) => bank !== null), elsewhere.filter(({ bank }) => bank === null)];
  const texts = (which: typeof elsewhere): string[] =>
    which.length === 0
      ? []
      : [
          ...block([{ text: othersArranged, paint: screen.paints.faint }], screen.width, indent),
          ...spelled(screen, elsewhereTexts(screen, pedal, which)),
        ];
  return [
    ...headLines(
      screen,
      `why ${screen.inventory.pedalName(pedal)} sits where it does`,
      { text: sentence(screen, hereText(screen, wiring, seat)) },
      { text: planFacts(screen, explanation) },
      ...wholePieces(screen, explanation.whole),
    ),
    ...section(screen, 'Elsewhere in this plan', texts(used)),
    ...section(screen, 'On other supplies', [...texts(others), ...spelled(screen, unfitTexts(screen, seat))]),
  ];
}
