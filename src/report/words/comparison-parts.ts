import type { AnswerPart, Told } from './answer-parts.js';
import type { ComparisonHandout } from './comparison-handout.js';
import { nextAtHome, nextText } from './comparison-words.js';
import { optionName } from './option-words.js';
import { withCare } from './remark.js';

/** Purchases side by side, then what is known of them. What comes next depends on whether the reader types. */
export function comparisonParts(of: ComparisonHandout): readonly AnswerPart[] {
  const { speech, comparison, standings, unbeaten, impossible } = of;
  const next = 'Before you plug anything in';
  const why = 'Why nothing can power it';
  return [
    ['options', 'Side by side', { kind: 'options', of }],
    ['chart', { page: 'At a glance' }, { kind: 'chart', of }],
    ['noise', 'Who may hum', noiseTold(of)],
    ['standings', 'What it would take to be the best', { kind: 'standings', standings }],
    ['unbeaten', 'What else nothing beats', { kind: 'unbeaten', unbeaten }],
    ['next', { screen: next }, { kind: 'paragraph', text: nextText(speech, comparison) }],
    ['next', { page: next, markdown: next }, { kind: 'paragraph', text: nextAtHome(speech, comparison) }],
    ['impossible', { page: why, markdown: why }, { kind: 'paragraph', text: impossible?.lead ?? null }],
  ];
}

/** What humming comes of, and who may hum, an option after the other. */
const noiseTold = ({ speech, comparison, options }: ComparisonHandout): Told => ({
  kind: 'remarks',
  lead: 'High gain on one ground with digital will probably whine or hum.',
  remarks: comparison.options.flatMap((option, at) => {
    const noise = options[at]?.noise ?? [];
    return noise.length === 0 ? [] : [withCare(`${optionName(speech, option)}: ${noise.join('; ')}.`)];
  }),
});
