import { minorUnits } from '../../domain/quantities.js';
import type { Handout, NoPlanHandout, PlanHandout, ReplugWords } from '../words/handout.js';
import {
  bullets,
  paragraph,
  passageLines,
  remarks,
  section,
  table,
  text,
  trimmed,
  type Lines,
} from './markdown-lines.js';
import { withOwnership } from '../words/hookup.js';
import { itemText } from '../words/purchases.js';
import { confirmAtHome } from '../words/remarks.js';
import type { CheckRow, HookupStep } from '../words/steps.js';
import { listText, priceText } from '../words/words.js';

/** The handout as GitHub-flavoured Markdown, which ticket systems show; with boxes to tick. */
export const markdownText = (handout: Handout): string =>
  `${(handout.kind === 'plan' ? planLines(handout) : noPlanLines(handout)).join('\n')}\n`;

function noPlanLines({ title, lead, passages }: NoPlanHandout): Lines {
  return trimmed([`# ${text(title)}`, '', ...paragraph(lead), ...passages.flatMap(passageLines)]);
}

function planLines(handout: PlanHandout): Lines {
  const { title, headline, evidence, changes } = handout;
  return trimmed([
    `# ${text(title)}`,
    '',
    ...paragraph(`${headline.cost} ${headline.counts}`),
    ...paragraph(headline.standing),
    ...leftOutLines(handout),
    ...(changes === null ? choosingLines(handout) : replugLines(handout, changes)),
    ...section('Why no plan is better', evidence === null ? [] : paragraph(evidence)),
  ]);
}

const choosingLines = (handout: PlanHandout): Lines => [
  ...section('Buy', buyLines(handout)),
  ...confirmLines(handout),
  ...section('Feeds', feedTable(handout)),
  ...section('Hook up', handout.steps.flatMap(stepLines)),
  ...section('Grounds and noise', remarks(handout.grounds)),
  ...section('Cautions', remarks(handout.cautions)),
];

const replugLines = (handout: PlanHandout, changes: ReplugWords): Lines => [
  ...section('What changes', changeLines(changes)),
  ...section('Buy', handout.shopping.length === 0 ? [] : buyLines(handout)),
  ...confirmLines(handout),
  ...section('Re-plug, in this order', handout.steps.flatMap(stepLines)),
  ...section('Feeds when it is done', feedTable(handout)),
  ...section('Write into the board file', entryLines(changes)),
  ...section('Grounds and noise', remarks(handout.grounds)),
  ...section('Cautions', remarks(handout.cautions)),
];

const leftOutLines = ({ leftOut }: PlanHandout): Lines =>
  section('Left out', leftOut.length === 0 ? [] : bullets(leftOut.map(({ name, why }) => `${name}: ${why}`)));

const confirmLines = ({ confirm }: PlanHandout): Lines =>
  section('Confirm before plugging in', confirm.length === 0 ? [] : [...paragraph(confirmAtHome), ...remarks(confirm)]);

function changeLines({ stay, releads, moves, added, dropped, unlisted }: ReplugWords): Lines {
  const notes = [
    ...(stay.length === 0 ? [] : [`Stay: ${listText(stay)}.`]),
    ...(releads.length === 0 ? [] : [`With other leads: ${listText(releads)}.`]),
    ...added.map(({ name, to }) => `New: ${name}, ${to}.`),
    ...dropped.map((name) => `Off: ${name} is unplugged and left without power.`),
    ...unlisted,
  ];
  const moved = moves.map(({ name, from, to, why }) => [name, from, to, why]);
  return [
    ...(notes.length === 0 ? [] : bullets(notes)),
    ...(moved.length === 0 ? [] : table(['Move', 'Today', 'Then', 'Why'], moved)),
  ];
}

/** The entries stand as code, in which nothing is escaped and nothing has to be. */
const entryLines = ({ entries }: ReplugWords): Lines =>
  entries === null
    ? []
    : [
        ...entries.texts.flatMap(paragraph),
        ...(entries.entries.length === 0 ? [] : [...entries.entries.map((line) => `    ${line}`), '']),
      ];

function buyLines({ shopping, owned, wiring, speech: { board } }: PlanHandout): Lines {
  const rows = shopping.map(({ units, price, ...item }) => [
    String(units),
    itemText(item),
    priceText(price, board),
    priceText(minorUnits(price * units), board),
  ]);
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
