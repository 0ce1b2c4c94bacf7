import { decimalOfThousandths } from '../../domain/quantities.js';
import type { AskedLabel } from '../../planning/ask/decisive-labels.js';
import { choicesChart } from '../charts/choices-chart.js';
import { reachChart } from '../charts/reach-chart.js';
import { shownOn, type AnswerPart, type Showing } from '../words/answer-parts.js';
import type { Speech } from '../words/speech.js';
import { plainly, sectionsOf } from './answer-parts.js';
import { optionsBody, unbeatenBody } from './comparison-bodies.js';
import { tableMarkup, type Section } from './elements.js';
import { markup, type Markup } from './markup.js';
import { leftBody, loadsBody } from './unit-tables.js';

/** The parts of an answer that has comparisons or charts, as `partSections` makes those of others. */
export const chartedSections = (speech: Speech, parts: readonly AnswerPart[]): readonly Section[] =>
  sectionsOf(shownOn('page', showing, parts, speech));

const showing: Showing<Speech, Markup | null> = {
  ...plainly,
  loads: ({ check }, speech) => loadsBody(speech, check),
  left: ({ wiring }, speech) => leftBody(speech, wiring),
  reach: ({ labels }, speech) => reachBody(speech, labels),
  options: ({ of }) => optionsBody(of),
  chart: ({ of: { speech, comparison } }) => choicesChart(speech, comparison),
  unbeaten: ({ unbeaten }) => (unbeaten === null ? null : unbeatenBody(unbeaten)),
};

function reachBody(speech: Speech, labels: readonly AskedLabel[]): Markup | null {
  const chart = reachChart(speech, labels);
  if (chart === null) return null;
  return markup`${chart}${tableMarkup({
    caption: 'Guessed draws, in mA',
    columns: [
      { name: 'Pedal', manner: 'head' },
      { name: 'Planned with', manner: 'figures' },
      { name: 'Good as wired', manner: 'figures' },
      { name: 'Same purchase', manner: 'figures' },
    ],
    rows: labels.flatMap(({ pedal, draw }) =>
      draw === null
        ? []
        : [
            [
              speech.inventory.pedalName(pedal.id),
              decimalOfThousandths(draw.planned),
              decimalOfThousandths(draw.asWired.microamps),
              draw.samePurchase === null ? 'not settled' : decimalOfThousandths(draw.samePurchase.microamps),
            ],
          ],
    ),
    cards: null,
  })}`;
}
