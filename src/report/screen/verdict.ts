import type { Verdict } from '../../planning/verify/verify.js';
import type { Kit } from '../../domain/kit.js';
import type { ProofWishes } from '../../domain/proof.js';
import { isMoney, type Tier } from '../../domain/aim.js';
import { minorUnits } from '../../domain/quantities.js';
import { bullets } from './answer-parts.js';
import { block } from './layout.js';
import { countedText } from '../words/money-words.js';
import { headLines, printed, section, type Screen, type ScreenOptions } from './screen.js';
import { sentence } from '../words/speech.js';
import { tierWords } from '../words/tier-words.js';
import { capital, countText, fullStop, listText, priceText } from '../words/words.js';

/** The verdict as text for a screen, with a line break at its end. */
export const verdictText = (kit: Kit, verdict: Verdict, options: ScreenOptions): string =>
  printed(kit, options, (screen) => verdictLines(screen, verdict));

function verdictLines(screen: Screen, verdict: Verdict): readonly string[] {
  switch (verdict.kind) {
    case 'proven':
      return [
        ...headLines(screen, 'proven', {
          text: 'Every hard rule holds, and the plan costs what it says.',
          paint: screen.paints.good,
        }),
        ...section(screen, 'No plan is better', tierLines(screen, verdict)),
        ...wishLines(screen, verdict.wishes),
        ...footLines(screen, verdict.cases),
      ];
    case 'impossible':
      return [
        ...headLines(screen, 'no plan exists, proven', {
          text: `Every plan leaves at least ${countText(verdict.unpowered, 'pedal')} without power.`,
          paint: screen.paints.good,
        }),
        ...wishLines(screen, verdict.wishes),
        ...footLines(screen, verdict.cases),
      ];
    case 'refused':
      return refusedLines(screen, verdict);
  }
}

/** Which plans alone that is said of. */
function wishLines(screen: Screen, { keep = [], buy, budget }: ProofWishes = {}): string[] {
  const wishes = [
    ...(keep.length > 0
      ? [
          `${listText(keep.map(screen.inventory.pedalName))} ${keep.length === 1 ? 'stays' : 'stay'} where plugged today.`,
        ]
      : []),
    ...(buy === 'never' ? ['Nothing is bought.'] : []),
    ...(budget === undefined ? [] : [`No more than ${priceText(budget, screen.board)} is spent.`]),
  ];
  return section(screen, 'Of all plans with which', bullets(screen, wishes));
}

/** How it is known, and how much there was to check. */
const footLines = ({ width }: Screen, cases: number): string[] => [
  '',
  ...block(
    [
      {
        text:
          `Checked ${countText(cases, 'case')} in whole numbers, from the board and the catalogue alone. ` +
          'Nothing was searched for, and nothing that found the plan was asked.',
      },
    ],
    width,
  ),
];

function refusedLines(screen: Screen, { what, reasons }: Extract<Verdict, { kind: 'refused' }>): string[] {
  const text =
    what === 'plan'
      ? 'The plan does not hold. Do not plug it in.'
      : 'The proof does not hold. The plan may still be the best, but this does not show it.';
  return [
    ...headLines(screen, 'not proven', { text, paint: screen.paints.bad }),
    ...section(
      screen,
      'Why',
      bullets(
        screen,
        reasons.map((reason) => fullStop(capital(sentence(screen, reason)))),
      ),
    ),
  ];
}

/** Each line builds on those before it: a later tier only breaks ties. */
function tierLines(screen: Screen, { tiers }: Extract<Verdict, { kind: 'proven' }>): string[] {
  const texts = tiers.map(({ tier, value }, index) => {
    if (value === 0) return `It ${tierWords[tier].none}: there is no less than that.`;
    const among = index === 0 ? 'No plan' : 'Of those that are as good so far, none';
    return `${among} ${tierText(screen, tier, value)}.`;
  });
  return bullets(screen, texts);
}

function tierText({ board }: Screen, tier: Tier, value: number): string {
  if (isMoney(tier)) return `costs less than ${priceText(minorUnits(value), board)}${countedText(tier, board)}`;
  const { counted } = tierWords[tier];
  return counted?.lessThan(value) ?? '';
}
