import { shownOn, type AnswerPart, type Showing } from '../words/answer-parts.js';
import type { ComparisonHandout } from '../words/comparison-handout.js';
import type { PlanHandout, ReplugWords } from '../words/handout.js';
import { withOwnership } from '../words/hookup.js';
import { optionFigures } from '../words/option-words.js';
import type { Remark } from '../words/remark.js';
import { confirmAtHome } from '../words/remarks.js';
import type { CheckRow, HookupStep } from '../words/steps.js';
import type { UnbeatenWords } from '../words/unbeaten-words.js';
import { listText, priceText } from '../words/words.js';
import { bullets, paragraph, section, table, text, type Lines } from './markdown-lines.js';

/** The parts of an answer that are shown in a Markdown file and say something, each under its heading. */
export const partLines = (parts: readonly AnswerPart[]): Lines =>
  shownOn('markdown', showing, parts, null).flatMap(({ title, shown }) => section(title, shown));

const showing: Showing<null, Lines> = {
  remarks: ({ lead, remarks }) => ledLines(lead, remarks),
  confirm: ({ remarks }) => ledLines(confirmAtHome, remarks),
  paragraph: ({ text: words }) => (words === null ? [] : paragraph(words)),
  'left out': ({ pedals }) => bullets(pedals.map(({ name, why }) => `${name}: ${why}`)),
  purchase: ({ plan }) => buyLines(plan),
  feeds: ({ plan }) => feedTable(plan),
  steps: ({ plan }) => plan.steps.flatMap(stepLines),
  changes: ({ changes }) => changeLines(changes),
  options: ({ of }) => optionLines(of),
  standings: ({ standings }) => bullets(standings.map((standing) => standing.text)),
  unbeaten: ({ unbeaten }) => (unbeaten === null ? [] : unbeatenLines(unbeaten)),
  entries: null,
  'to mind': null,
  'to tick': null,
  broken: null,
  loads: null,
  left: null,
  reach: null,
  outputs: null,
  drawing: null,
  chart: null,
};

const ledLines = (lead: string | undefined, remarks: readonly Remark[]): Lines => [
  ...(lead === undefined || remarks.length === 0 ? [] : paragraph(lead)),
  ...bullets(remarks.map((remark) => remark.text)),
];

function changeLines({ stay, releads, moves, added, dropped, unlisted }: ReplugWords): Lines {
  const notes = [
    ...(stay.length === 0 ? [] : [`Stay: ${listText(stay)}.`]),
    ...(releads.length === 0 ? [] : [`With other leads: ${listText(releads)}.`]),
    ...added.map(({ name, to }) => `New: ${name}, ${to}.`),
    ...dropped.map((name) => `Off: ${name} is unplugged and left without power.`),
    ...unlisted,
  ];
  const moved = moves.map(({ name, from, to, why }) => [name, from, to, why]);
  return [...bullets(notes), ...(moved.length === 0 ? [] : table(['Move', 'Today', 'Then', 'Why'], moved))];
}

function buyLines({ shopping, owned, wiring, speech: { board } }: PlanHandout): Lines {
  const rows = shopping.map(({ units, text: item, each, together }) => [String(units), item, each, together]);
  const list =
    rows.length === 0
      ? paragraph('Nothing to buy.')
      : table(
          ['Units', 'Item', 'Each', 'Together'],
          [...rows, ['', 'Total', '', priceText(wiring.score.money, board)]],
          [0, 2, 3],
        );
  const own = owned.map(({ units, name }) => `${units} × ${name}`).join(', ');
  return [...list, ...(own === '' ? [] : paragraph(`Use what you own: ${own}.`))];
}

const feedTable = ({ rows }: PlanHandout): Lines =>
  rows.length === 0
    ? []
    : table(
        ['Lead', 'Pedal', 'Supply', 'Output', 'Set to', 'At the pedal', 'Leads', 'Load of the output'],
        rows.map((row) => [
          row.mark,
          row.pedal,
          withOwnership(row.unit, row.owned),
          [row.outputs, row.ground].filter((words) => words !== '').join(', '),
          `${row.setting}${row.switched ? ' (switch)' : ''}`,
          [row.volts, row.polarity, row.plug].filter((words) => words !== null && words !== '').join(', '),
          row.way,
          row.peak === null ? row.load : `${row.load}; ${row.peak}`,
        ]),
      );

function stepLines({ title, text: words, items, checks }: HookupStep, at: number): Lines {
  return [
    `### ${at + 1}. ${text(title)}`,
    '',
    ...paragraph(words),
    ...(items.length === 0 ? [] : [...items.map((item) => `- [ ] ${text(item)}`), '']),
    ...(checks === null ? [] : checkTable(checks)),
  ];
}

const checkTable = (checks: readonly CheckRow[]): Lines =>
  table(
    ['Lead', 'Pedal', 'Meter on', 'Black probe', 'Red probe', 'Must read', 'Read'],
    checks.map(({ mark, pedal, range, probes, reads, note }) => [
      mark,
      pedal,
      range,
      probes?.black ?? 'either way',
      probes?.red ?? 'either way',
      note === null ? reads : `${reads}; ${note}`,
      '',
    ]),
  );

function optionLines({ options, legend }: ComparisonHandout): Lines {
  if (options.length === 0) return [];
  const rows = options.map(({ mark, label, bill, notes, price, figures }) => [
    mark,
    [`${label}:`, bill.map(({ text: line, price: at }) => `${line} ${at}`).join(', '), ...notes].join(' '),
    price,
    ...optionFigures.map((_, at) => figures?.[at] ?? '–'),
  ]);
  const titles = optionFigures.map(({ title }) => title);
  return [...table(['Rank', 'Buy', 'Price', ...titles], rows, [2, 3, 4, 5, 6, 7]), ...paragraph(legend)];
}

const unbeatenLines = ({ lead, rows }: UnbeatenWords): Lines => [
  ...paragraph(lead),
  ...table(
    ['Price', 'Exposed', 'In use', 'Buy'],
    rows.map(({ price, exposed, supplies, purchase }) => [price, exposed, supplies, purchase]),
    [0],
  ),
];
