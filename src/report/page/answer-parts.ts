import { hasTooFewVolts, type Violation } from '../../domain/violation.js';
import type { Check } from '../../planning/check/check.js';
import { shownOn, type AnswerPart, type PlainKind, type Showing } from '../words/answer-parts.js';
import { whereText } from '../words/check-words.js';
import type { Remark } from '../words/remark.js';
import { confirmAtHome } from '../words/remarks.js';
import { mendAtHome, ruleWords, tooFewVolts } from '../words/rule-words.js';
import { sentence, type Speech } from '../words/speech.js';
import { capital, fullStop, meterOf, meterText } from '../words/words.js';
import { list, paragraph, remarkList, tickList, type Section } from './elements.js';
import { markup, type Markup } from './markup.js';
import { buyBody, changesBody, feedsBody, stepsBody, wiringBody } from './plan-bodies.js';

/** The parts of an answer that are shown on a page and say something, as its sections. */
export const partSections = (speech: Speech, parts: readonly AnswerPart<PlainKind>[]): readonly Section[] =>
  sectionsOf(shownOn('page', plainly, parts, speech));

type Shown = { readonly id: string; readonly title: string; readonly shown: Markup | null };

/** What is shown and says something. */
export const sectionsOf = (all: readonly Shown[]): readonly Section[] =>
  all.flatMap(({ id, title, shown }) => (shown === null ? [] : [{ id, title, body: shown }]));

export const plainly: Showing<Speech, Markup | null, PlainKind> = {
  remarks: ({ lead, remarks }) => ledList(lead, remarks),
  confirm: ({ remarks }) => ledList(confirmAtHome, remarks),
  paragraph: ({ text }) => (text === null ? null : paragraph(text)),
  'to mind': ({ texts }) => list(texts),
  'to tick': ({ texts }) => tickList(texts),
  'left out': ({ pedals }) => list(pedals.map(({ name, why }) => markup`<b>${name}</b>: ${why}`)),
  broken: ({ check }, speech) => list(check.findings.map((found) => findingMarkup(speech, check, found))),
  purchase: ({ plan }) => buyBody(plan),
  drawing: ({ plan }) => wiringBody(plan),
  feeds: ({ plan }) => feedsBody(plan),
  steps: ({ plan }) => stepsBody(plan),
  changes: ({ changes }) => changesBody(changes),
  standings: ({ standings }) =>
    remarkList(standings.map(({ text, tone }) => ({ text, care: tone === 'caution' || tone === 'bad' }))),
  outputs: null,
  entries: null,
};

const ledList = (lead: string | undefined, remarks: readonly Remark[]): Markup | null =>
  lead === undefined || remarks.length === 0 ? remarkList(remarks) : markup`${paragraph(lead)}${remarkList(remarks)}`;

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
