import type { Kit } from '../../domain/kit.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Comparison, PlannedOption } from '../../planning/compare/comparison.js';
import { figuresOf } from '../../planning/compare/figures.js';
import { boardDrawing } from '../../report/drawing/drawings.js';
import { comparisonHead } from '../../report/words/comparison-words.js';
import { handoutOf, type PlanHandout } from '../../report/words/handout.js';
import { legendText, optionFigures, optionWords, type OptionWords } from '../../report/words/option-words.js';
import { optionStandings } from '../../report/words/option-standings.js';
import { speechOf } from '../../report/words/speech.js';
import { toldPlan, type ToldPlan } from './told-answer.js';

/** A choice as it is shown beside others, and its whole plan. */
export type ToldChoice = {
  /** By which it is told from others, also when the board has changed a little. */
  readonly key: string;
  readonly words: OptionWords;
  readonly isOverBudget: boolean;
  /** Whether it is what the answer says. */
  readonly isAnswer: boolean;
  readonly plan: ToldPlan;
  /** A small drawing that is escaped already. */
  readonly small: string;
};

export type ToldChoices = {
  /** The cheapest first. */
  readonly choices: readonly ToldChoice[];
  readonly titles: readonly string[];
  readonly legend: string;
  /** What is proven of them. */
  readonly standing: string;
  /** What else there is to be said of what was asked for: why it fails, or what would make it the best. */
  readonly ofAsked: readonly string[];
};

/** The purchases of a comparison that can power the board. */
export function toldChoices(kit: Kit, comparison: Comparison, answer: JudgedPlan | null): ToldChoices {
  const { options, aim } = comparison;
  const planned = options
    .filter((option) => option.kind === 'plan')
    .sort((one, other) => one.score.money - other.score.money || one.score.exposed - other.score.exposed);
  const speech = speechOf(kit);
  return {
    choices: planned.map((option) => ({
      key: choiceKey(option),
      words: optionWords(speech, option),
      isOverBudget: option.overBudget > 0,
      isAnswer: answer !== null && isAlike(option, answer),
      ...drawnPlan(kit, aim, option),
    })),
    titles: optionFigures.map(({ title }) => title),
    legend: legendText(options),
    standing: comparisonHead(speech, comparison).standing,
    ofAsked: optionStandings(speech, { ...comparison, options: options.filter(({ asked }) => asked) }).map(
      ({ text }) => text,
    ),
  };
}

/** What is bought, and whom it exposes: one purchase may stand there twice, wired in two ways. */
const choiceKey = ({ supplies, score }: PlannedOption): string =>
  [...supplies.map(({ id, units }) => `${units} ${id}`), score.exposed].join(', ');

const isAlike = ({ supplies, score }: PlannedOption, { buy, score: other }: JudgedPlan): boolean =>
  score.money === other.money &&
  score.exposed === other.exposed &&
  score.bricks === other.bricks &&
  JSON.stringify(supplies) === JSON.stringify(buy.supplies);

/** The same with the choice that the answer says wired as that is: a purchase may be plugged in several ways that are as good. */
export const wiredAsAnswered = (kit: Kit, comparison: Comparison, answer: JudgedPlan): Comparison => ({
  ...comparison,
  options: comparison.options.map((option) =>
    option.kind === 'plan' && isAlike(option, answer)
      ? { ...option, wiring: answer, score: answer.score, figures: figuresOf(kit, answer, option.idle) }
      : option,
  ),
});

/** The choice with this key; null where there is none. */
export const plannedChoice = ({ options }: Comparison, key: string): PlannedOption | null =>
  options.filter((option) => option.kind === 'plan').find((option) => choiceKey(option) === key) ?? null;

/** A choice as what is handed out: it stands there for what it is best at, not as the answer. */
export function choiceHandout(kit: Kit, aim: ChoosingAim, option: PlannedOption): PlanHandout {
  const { wiring, gap } = option;
  const handout = handoutOf({ kit, answer: { kind: 'plan', aim, wiring, gap, reasons: [] } });
  if (handout.kind !== 'plan') throw new Error('a plan was handed out as none');
  const { label, notes } = optionWords(handout.speech, option);
  const unproven = gap === null ? [] : [handout.headline.standing];
  const standing = [`${label}.`, ...notes, ...unproven].join(' ');
  return { ...handout, headline: { ...handout.headline, standing } };
}

function drawnPlan(kit: Kit, aim: ChoosingAim, option: PlannedOption): Pick<ToldChoice, 'plan' | 'small'> {
  const handout = choiceHandout(kit, aim, option);
  const id = choiceKey(option).replaceAll(/[^a-z0-9]+/gi, '-');
  return { plan: toldPlan(handout, []), small: boardDrawing(handout, 'small', `small-${id}`).markup };
}
