import type { Check } from '../../planning/check/check.js';
import { hasTooFewVolts, type Violation } from '../../domain/violation.js';
import { beside, gap, indent, type Piece } from './layout.js';
import { whereText } from '../words/check-words.js';
import { ruleWords, tooFewVolts } from '../words/rule-words.js';
import { barPiece, type Screen } from './screen.js';
import { sentence } from '../words/speech.js';
import { capital, fullStop, meterOf, meterText } from '../words/words.js';

/** The longest rules are called `polarity` and the like. */
const ruleWidth = 8;

/** Every broken rule, the worst first: where, what the numbers are, what it does and what to do. */
export function findingLines(screen: Screen, { findings, wiring }: Check): string[] {
  return findings.flatMap((finding, at) => [
    ...(at === 0 ? [] : ['']),
    ...beside(
      [
        { pieces: [{ text: finding.rule, paint: screen.paints.bad }], width: ruleWidth },
        { pieces: findingPieces(screen, finding, wiring.feeds), width: screen.width - indent - ruleWidth - gap },
      ],
      indent,
      gap,
    ),
  ]);
}

function findingPieces(screen: Screen, finding: Violation, feeds: Check['wiring']['feeds']): readonly Piece[] {
  const { paints } = screen;
  const { harm, mend } = hasTooFewVolts(finding) ? tooFewVolts : ruleWords[finding.rule];
  const message = sentence(screen, finding.message);
  const where = whereText(screen, finding, feeds, message);
  return [
    ...(where === null ? [] : [{ text: where, paint: paints.strong }]),
    { text: fullStop(capital(message)) },
    ...loadPieces(screen, finding),
    { text: `${harm} ${mend}`, paint: paints.faint },
  ];
}

/** How far a load is beyond its limit. */
function loadPieces(screen: Screen, { numbers }: Violation): readonly Piece[] {
  if (numbers?.kind !== 'load') return [];
  const meter = meterOf(numbers);
  const bar = barPiece(screen, meter);
  return [{ text: `${bar.text}, ${meterText(meter)}`, paint: screen.paints.bad }];
}
