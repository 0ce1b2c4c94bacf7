import type { Kit } from '../../domain/kit.js';
import type { LoadNumbers } from '../../domain/load-numbers.js';
import { factorText, minorUnits } from '../../domain/quantities.js';
import type { OutputAnswer, OutputTrial } from '../../planning/check/check-output.js';
import { noiseText, nothingMeasured } from '../words/cautions.js';
import { ownedUnitsOf } from '../words/inventory.js';
import { bullets, remarkLines } from './answer-parts.js';
import { beside, block, gap, indent, type Piece } from './layout.js';
import { placeText } from '../words/places.js';
import { chainRoute, soloRoute, tailRoute } from '../words/route.js';
import { barPiece, bullet, headLines, printed, sectionsOf, type Screen, type ScreenOptions } from './screen.js';
import { cautionRemarks, confirmLead, confirmRemarks } from '../words/remarks.js';
import { sentence } from '../words/speech.js';
import { peakOf } from '../words/usage.js';
import { capital, countText, fullStop, listText, meterOf, meterText, priceText, voltsText } from '../words/words.js';

const voltsWidth = 6;
const loadWidth = 20;

/** Whether a pedal can go on an output, as text for a screen with a line break at its end. */
export const outputAnswerText = (kit: Kit, answer: OutputAnswer, options: ScreenOptions): string =>
  printed(kit, options, (screen) => answerLines(screen, answer));

function answerLines(screen: Screen, answer: OutputAnswer): readonly string[] {
  const { board } = screen;
  const can = answer.trials.filter(({ findings }) => findings.length === 0);
  const cannot = answer.trials.filter(({ findings }) => findings.length > 0);
  const [best] = can;
  const done = best === undefined ? nothingMeasured : { ...best, inlets: [], feeds: [best.feed, ...best.company] };
  const asked = {
    ...screen,
    board: { ...board, pedals: board.pedals.filter(({ id }) => id === answer.question.pedal) },
  };
  const feeds = answer.trials.slice(0, 1).map(({ feed }) => feed);
  const parts: readonly (readonly [string, readonly string[]])[] = [
    [can.length > 1 ? 'How, the cheapest first' : 'How', can.flatMap((trial, at) => yesLines(screen, trial, at))],
    [can.length === 0 ? 'Why not' : 'Not so', cannot.flatMap((trial, at) => noLines(screen, trial, at))],
    ['Confirm before plugging in', remarkLines(screen, confirmRemarks(asked, { inlets: [], feeds }), confirmLead)],
    // What nothing can hang on is still what has to be cut off.
    ['Cautions', remarkLines(screen, cautionRemarks(screen, done, 'check', [answer.question]))],
  ];
  return [...topLines(screen, answer, can), ...sectionsOf(screen, parts)];
}

function topLines(screen: Screen, answer: OutputAnswer, can: readonly OutputTrial[]): string[] {
  const { board, inventory, paints } = screen;
  const { pedal, supply, unit, output } = answer.question;
  const where = placeText(inventory, ownedUnitsOf(board), { supply, unit, outputs: [output] });
  const title = `can ${inventory.pedalName(pedal)} go on ${where}?`;
  const [best] = can;
  const verdict: Piece =
    best === undefined
      ? { text: `No, not at any of its settings.`, paint: paints.bad }
      : { text: `Yes: ${settingText(best)}, ${costText(screen, best)}.`, paint: paints.good };
  return headLines(screen, title, verdict, { text: judgedText(screen, answer) });
}

const settingText = ({ millivolts, position }: OutputTrial): string =>
  `at ${voltsText(millivolts)}${position === null ? '' : ` with its polarity switch on ${position}`}`;

const costText = ({ board }: Screen, { money, buy }: OutputTrial): string =>
  buy.supplies.length + buy.parts.length === 0 ? 'nothing to buy' : `${priceText(money, board)} to spend`;

function judgedText({ inventory }: Screen, { inPlace, company }: OutputAnswer): string {
  if (!inPlace) return 'Judged by itself: nothing else hangs on this unit today.';
  if (company.length === 0) return "Judged with the rest of today's wiring in place.";
  const names = listText(company.map(inventory.pedalName));
  return (
    `Judged with the rest of today's wiring in place. ${names} ${company.length === 1 ? 'hangs' : 'hang'} on this output ` +
    'today and would share a chain with it.'
  );
}

/** The leads beside the load; then what changes, what to buy, and what it does to noise. */
function yesLines(screen: Screen, trial: OutputTrial, at: number): string[] {
  const current = trial.outlet?.current ?? null;
  const load = current === null ? [] : loadPieces(screen, current);
  const middle = screen.width - indent - voltsWidth - loadWidth - 2 * gap;
  return [
    ...(at === 0 ? [] : ['']),
    ...beside(
      [
        { pieces: [{ text: voltsText(trial.millivolts), paint: screen.paints.strong }], width: voltsWidth },
        { pieces: wayPieces(screen, trial), width: middle },
        { pieces: load, width: loadWidth },
      ],
      indent,
      gap,
    ),
    ...block(
      factTexts(screen, trial).map((text) => bullet(screen, text)),
      screen.width,
      indent + voltsWidth + gap,
    ),
  ];
}

const loadPieces = (screen: Screen, numbers: LoadNumbers): readonly Piece[] => [
  { text: meterText(meterOf(numbers)) },
  barPiece(screen, meterOf(numbers)),
  { text: `reserve ${screen.marks.times} ${factorText(numbers.factor)}`, paint: screen.paints.faint },
];

function wayPieces(screen: Screen, { feed }: OutputTrial): readonly Piece[] {
  const chain = chainRoute(screen, feed);
  if (chain === null) return [{ text: soloRoute(screen, feed), hang: 2 }];
  return [
    { text: chain, hang: 2 },
    { text: tailRoute(screen, feed), hang: 2 },
  ];
}

function factTexts(screen: Screen, trial: OutputTrial): readonly string[] {
  const { inventory, marks } = screen;
  const { board } = screen;
  const buys = [
    ...trial.buy.supplies.map((one) => ({ ...one, name: inventory.supplyName(one.id) })),
    ...trial.buy.parts.map((one) => ({ ...one, name: inventory.partName(one.id) })),
  ].map(
    ({ units, price, name }) => `${units} ${marks.times} ${name} for ${priceText(minorUnits(units * price), board)}`,
  );
  return [
    ...startupTexts(trial),
    ...preferenceTexts(screen, trial),
    ...trial.totals.map(({ of, numbers, startup }) => {
      const what = of === 'supply' ? 'the whole supply' : 'its bank';
      const peak = peakOf(numbers, startup);
      const start = peak === null ? '' : `, and up to ${meterText(peak)} at switch-on`;
      return `${capital(what)} then carries ${meterText(meterOf(numbers))} with the reserve${start}.`;
    }),
    ...trial.changed.map(
      (feed) =>
        `Changes: ${inventory.pedalName(feed.pedal)} then takes ${changedRoute(screen, feed)}, at ${voltsText(trial.millivolts)}.`,
    ),
    ...(buys.length === 0 ? [] : [`Buy ${listText(buys)}.`]),
    ...trial.exposures.map((exposure) => `Noise: ${noiseText(inventory, exposure)}`),
  ];
}

const changedRoute = (screen: Screen, feed: OutputTrial['feed']): string =>
  feed.chain === null ? soloRoute(screen, feed) : tailRoute(screen, feed);

/** Only where some pedal there takes more at switch-on than it draws. */
function startupTexts({ outlet }: OutputTrial): readonly string[] {
  const startup = outlet?.startup ?? null;
  return startup === null ? [] : [`At switch-on up to ${meterText(meterOf(startup))}.`];
}

function preferenceTexts({ inventory }: Screen, { feed, millivolts }: OutputTrial): readonly string[] {
  const { prefers } = inventory.pedal(feed.pedal);
  return prefers === null || prefers === millivolts ? [] : [`It prefers ${voltsText(prefers)}.`];
}

/** Every rule that forbids it. */
function noLines(screen: Screen, trial: OutputTrial, at: number): string[] {
  const { paints, width } = screen;
  const head = `${capital(settingText(trial).replace(/^at /, ''))}: ${countText(new Set(trial.findings.map(({ rule }) => rule)).size, 'rule')} in the way`;
  return [
    ...(at === 0 ? [] : ['']),
    ...block([{ text: head, paint: paints.strong }], width, indent),
    ...bullets(
      screen,
      trial.findings.map(({ rule, message }) => fullStop(`${rule}: ${sentence(screen, message)}`)),
    ),
  ];
}
