import type { Kit } from '../../domain/kit.js';
import type { Answer } from '../../planning/answer.js';
import type { Added } from '../../planning/spare/add-pedal.js';
import type { NoBasis, Spare } from '../../planning/spare/spare.js';
import { unsettledText, type Asking } from '../words/answer-parts.js';
import { sentence } from '../words/speech.js';
import { basisText, spareAsking, spareBasis, spareParts } from '../words/spare-words.js';
import { capital, fullStop, listText } from '../words/words.js';
import { bullets, partLines } from './answer-parts.js';
import { impossibleText } from './impossible.js';
import { block } from './layout.js';
import { headLines, screenFor, type Screen, type ScreenOptions } from './screen.js';
import { answerText } from './terminal.js';

/** What there is to spare, as text for a screen with a line break at its end. */
export function spareText(kit: Kit, found: Spare | NoBasis, options: ScreenOptions): string {
  if (found.kind !== 'spare') return noBasisText(kit, found, options);
  const screen = screenFor(found.installed.kit, options);
  const head = headLines(
    screen,
    spareAsking.title,
    { text: spareBasis(found) },
    ...(found.whole ? [] : [{ text: unsettledText, paint: screen.paints.caution }]),
  );
  return `${[...head, ...partLines(screen, spareParts(screen, found))].join('\n')}\n`;
}

/** Why what is asked is not known: there is no wiring to speak of. */
export function noBasisText(kit: Kit, found: NoBasis, options: ScreenOptions, asking = spareAsking): string {
  const screen = screenFor(kit, options);
  const { paints } = screen;
  const [text, rules] = noBasis(found, asking);
  const paint = found.kind === 'stopped' ? paints.caution : paints.bad;
  const head = headLines(screen, `${asking.title} is not known`, { text, paint });
  const notes = rules.map((rule) => sentence(screen, rule));
  return `${[...head, ...bullets(screen, notes)].join('\n')}\n`;
}

/** The most broken rules that are named; `check` has them all. */
const mostRules = 3;

function noBasis(found: NoBasis, { impossible }: Asking): readonly [text: string, notes: readonly string[]] {
  switch (found.kind) {
    case 'unsafe': {
      const told = found.findings.slice(0, mostRules).map(({ rule, message }) => fullStop(`${rule}: ${message}`));
      return ['The wiring breaks hard rules: pull the supplies from the mains, and ask boardfeed check.', told];
    }
    case 'impossible':
      return [`${capital(impossible)}: ask boardfeed explain.`, []];
    case 'stopped':
      return ['The search stopped before there was a plan. Give it more time and run it again.', []];
  }
}

/** Whether one more pedal can be fed, and how, as text for a screen with a line break at its end. */
export function addedText(added: Added, options: ScreenOptions): string {
  const { kit, of, wiring, answer, bought } = added;
  const screen = screenFor(kit, options);
  const basis = of === 'wiring' ? [] : [{ text: `${basisText(of, wiring)}.` }];
  const title = { text: `One more pedal: ${verdictText(screen, added)}`, paint: screen.paints.title };
  const head = block([title, ...basis], screen.width);
  const best = bought !== null && bought.answer.kind === 'plan' ? bought : { kit, answer };
  if (best.answer.kind !== 'impossible') return `${head.join('\n')}\n\n${answerText(best.kit, best.answer, options)}`;
  const why = impossibleText(screenFor(best.kit, options), best.answer.reasons, 'one more pedal');
  return `${[...head, '', ...why].join('\n')}\n`;
}

function verdictText(screen: Screen, { answer, bought }: Added): string {
  if (answer.kind === 'plan') return `yes, ${movesText(screen, answer)}, nothing bought.`;
  if (answer.kind === 'stopped') return 'not settled in time.';
  if (bought?.answer.kind !== 'plan') return 'no, not even when others move.';
  return `not with what is there. Bought for, yes: ${movesText(screen, bought.answer)}.`;
}

function movesText({ inventory }: Screen, { changes }: Extract<Answer, { kind: 'plan' }>): string {
  const moved = (changes?.moves ?? []).map(({ to }) => inventory.pedalName(to.pedal));
  if (moved.length === 0) return 'and nothing else moves';
  return `when ${listText(moved)} ${moved.length === 1 ? 'moves' : 'move'}`;
}
