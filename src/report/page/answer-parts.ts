import { decimalOfThousandths } from '../../domain/quantities.js';
import { hasTooFewVolts, type Violation } from '../../domain/violation.js';
import type { AskedLabel } from '../../planning/ask/decisive-labels.js';
import type { Check } from '../../planning/check/check.js';
import { reachChart } from '../charts/reach-chart.js';
import type { AnswerPart, Told } from '../words/answer-parts.js';
import { whereText } from '../words/check-words.js';
import { confirmRemarks } from '../words/remarks.js';
import { mendAtHome, ruleWords, tooFewVolts } from '../words/rule-words.js';
import { sentence, type Speech } from '../words/speech.js';
import { capital, fullStop, meterOf, meterText } from '../words/words.js';
import { list, paragraph, remarkList, tableMarkup, tick, type Section } from './elements.js';
import { markup, type Markup } from './markup.js';
import { leftBody, loadsBody } from './unit-tables.js';
import { confirmBody, sectionsOfParts } from './whole-page.js';

/** The parts of an answer that say something, as sections of a page. */
export const partSections = (speech: Speech, parts: readonly AnswerPart[]): readonly Section[] =>
  sectionsOfParts(
    parts.map(([id, title, told]) => [id, typeof title === 'string' ? title : title.page, toldBody(speech, told)]),
  );

function toldBody(speech: Speech, told: Told): Markup | null {
  switch (told.kind) {
    case 'remarks':
      return remarkList(told.remarks);
    case 'paragraph':
      return told.text === null ? null : paragraph(told.text);
    case 'to mind':
      return list(told.texts);
    case 'to tick':
      return boxes(told.texts);
    case 'confirm':
      return confirmBody(confirmRemarks(speech, told.wiring));
    case 'broken':
      return list(told.check.findings.map((found) => findingMarkup(speech, told.check, found)));
    case 'loads':
      return loadsBody(speech, told.check);
    case 'left':
      return leftBody(speech, told.wiring);
    case 'reach':
      return reachBody(speech, told.labels);
  }
}

const boxes = (texts: readonly string[]): Markup | null =>
  texts.length === 0
    ? null
    : markup`<ul class="ticks">\n${texts.map((text) => markup`<li>${tick(text)}</li>\n`)}</ul>\n`;

function findingMarkup(speech: Speech, { wiring }: Check, finding: Violation): Markup {
  const { harm } = hasTooFewVolts(finding) ? tooFewVolts : ruleWords[finding.rule];
  const message = sentence(speech, finding.message);
  const where = whereText(speech, finding, wiring.feeds, message);
  const load = finding.numbers?.kind === 'load' ? ` That is ${meterText(meterOf(finding.numbers))}.` : '';
  return markup`${ruleMarkup(finding)} ${where === null ? null : `${where}: `}\
${fullStop(capital(message))}${load} ${harm} ${mendAtHome(finding)}`;
}

/** The name of a broken rule, before what breaks it. */
export const ruleMarkup = ({ rule }: Violation): Markup => markup`<strong class="care">${capital(rule)}:</strong>`;

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
