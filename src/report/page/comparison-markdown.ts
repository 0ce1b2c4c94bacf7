import type { ComparisonHandout } from '../words/comparison-handout.js';
import type { UnbeatenWords } from '../words/unbeaten-words.js';
import { bullets, paragraph, passageLines, section, table, text, trimmed, type Lines } from './markdown-lines.js';
import { optionFigures } from '../words/option-words.js';

/** Purchases side by side as GitHub-flavoured Markdown. */
export function comparisonMarkdown(handout: ComparisonHandout): string {
  const { head, standings, noise, unbeaten, next, impossible } = handout;
  const lines = [
    `# ${text(head.title)}`,
    '',
    ...paragraph(head.lead),
    ...paragraph(head.standing),
    ...section('Side by side', optionLines(handout)),
    ...(noise === null ? [] : section('Who may hum', [...paragraph(noise.lead), ...bullets(noise.lines)])),
    ...section(
      'What it would take to be the best',
      standings.length === 0 ? [] : bullets(standings.map((standing) => standing.text)),
    ),
    ...(unbeaten === null ? [] : section(unbeaten.title, unbeatenLines(unbeaten))),
    ...section('Before you plug anything in', next === null ? [] : paragraph(next)),
    ...(impossible === null ? [] : section('Why nothing can power it', paragraph(impossible.lead))),
    ...(impossible?.passages ?? []).flatMap(passageLines),
  ];
  return `${trimmed(lines).join('\n')}\n`;
}

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
