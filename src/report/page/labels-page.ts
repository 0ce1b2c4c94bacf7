import type { Kit } from '../../domain/kit.js';
import { everyFeed } from '../../domain/plan.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import type { AskedLabel, Decides, DecisiveLabels } from '../../planning/ask/decisive-labels.js';
import { reachChart } from '../charts/reach-chart.js';
import { askedText, labelGroups, labelText, undecidingText, unsettledText } from '../words/label-words.js';
import { plainly } from '../words/remark.js';
import { standsOf } from '../words/stands.js';
import { standingCautions } from '../words/remarks.js';
import { safeText } from '../words/safe-text.js';
import { sentence, speechOf, type Speech } from '../words/speech.js';
import { fullStop } from '../words/words.js';
import { list, paragraph, remarkList, tableMarkup, tick, type Section } from './elements.js';
import { markup, type Markup } from './markup.js';
import { sectionsOfParts, standingMarkup, wholePage, type Part } from './whole-page.js';

/** What a report of labels is made from. */
export type LabelsInput = { readonly kit: Kit; readonly answer: DecisiveLabels };

type Asked = Extract<DecisiveLabels, { kind: 'labels' }>;

/** Which labels decide, as one HTML page that needs nothing else: boxes to tick, and how far each guess may go. */
export function labelsPage({ kit, answer }: LabelsInput): string {
  const speech = speechOf(kit);
  const title = `${safeText(kit.board.name)}: which labels decide`;
  const sections = answer.kind === 'labels' ? sectionsOf(speech, answer) : [];
  const head = answer.kind === 'labels' ? headOf(speech, answer) : noneMarkup(speech, answer);
  return wholePage(title, { head, sections });
}

const headOf = (speech: Speech, found: Asked): Markup =>
  markup`${paragraph(askedText(speech, found))}${found.whole ? null : paragraph(unsettledText)}`;

function noneMarkup(speech: Speech, answer: Exclude<DecisiveLabels, { kind: 'labels' }>): Markup {
  switch (answer.kind) {
    case 'unsafe':
      return markup`${standingMarkup('The wiring breaks hard rules: pull the supplies from the mains.', false)}${list(answer.findings.map(({ message }) => fullStop(sentence(speech, message))))}`;
    case 'impossible':
      return standingMarkup('No plan powers every pedal, so no label can be asked about.', false);
    case 'stopped':
      return standingMarkup('The search stopped before there was a plan.', false);
  }
}

function sectionsOf(speech: Speech, found: Asked): readonly Section[] {
  const of = (decides: Decides): readonly AskedLabel[] => found.labels.filter((label) => label.decides === decides);
  const boxes = (labels: readonly AskedLabel[]): Markup | null =>
    labels.length === 0
      ? null
      : markup`<ul class="ticks">
${labelGroups(labels).map((group) => markup`<li>${tick(sentence(speech, labelText(speech, found, group)))}</li>\n`)}</ul>
`;
  const silent = of('nothing');
  const chart = reachChart(speech, found.labels);
  const stands = standsOf(speech.inventory, everyFeed(found.wiring));
  const parts: readonly Part[] = [
    ['purchase', 'These decide what to buy', boxes(of('purchase'))],
    ['unknown', 'Not settled in time', boxes(of('unknown'))],
    ['only-wiring', 'These decide only how it is wired', boxes(of('wiring'))],
    ['reach', 'How far each guess may go', chart === null ? null : markup`${chart}${reachTable(speech, found.labels)}`],
    ['nothing', 'These decide nothing', silent.length === 0 ? null : paragraph(undecidingText(speech, silent))],
    ['cautions', 'Cautions', remarkList(standingCautions(speech, stands, 'plan').map(plainly))],
  ];
  return sectionsOfParts(parts);
}

const reachTable = ({ inventory }: Speech, labels: readonly AskedLabel[]): Markup =>
  tableMarkup({
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
              inventory.pedalName(pedal.id),
              decimalOfThousandths(draw.planned),
              decimalOfThousandths(draw.asWired.microamps),
              draw.samePurchase === null ? 'not settled' : decimalOfThousandths(draw.samePurchase.microamps),
            ],
          ],
    ),
    cards: null,
  });
