import { kitOf } from '../../../src/domain/kit.js';
import { marked, type Tokens } from 'marked';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { supplyId } from '../../../src/domain/quantities.js';
import { compare } from '../../../src/planning/compare/compare.js';
import { comparisonReports } from '../../../src/report/comparison-formats.js';
import type { ComparisonInput } from '../../../src/report/words/comparison-handout.js';
import { boardOf, pedalOf } from '../../support/builders.js';
import { elementsOf } from '../../support/elements.js';
import { hostileName } from '../../support/hostile-names.js';
import { readCsv } from '../../support/read-csv.js';
import { trying } from '../../support/runs.js';
import { trio } from './trio.js';

const { board, shop: catalogue } = trio;
const asked = [{ quay: 1, dory: 2 }, { dory: 2 }].map(
  (units) => new Map(Object.entries(units).map(([id, count]) => [supplyId(id), count])),
);
const input: ComparisonInput = {
  kit: kitOf(board, catalogue),
  comparison: await compare(kitOf(board, catalogue), { best: 3, asked }),
};
const impossible: ComparisonInput = await (async () => {
  const hungry = boardOf([pedalOf('amplifier', 9000)], { name: 'Hungry' });
  const kit = kitOf(hungry, catalogue);
  return { kit, comparison: await compare(kit, { best: 3 }) };
})();

const textOf = (ending: string, of = input): string => comparisonReports.makerFor(`x${ending}`)?.(of) ?? '';

/** The same with every name another. */
function named({ comparison }: ComparisonInput, name: string): ComparisonInput {
  return {
    kit: kitOf(
      { ...board, name, pedals: board.pedals.map((pedal) => ({ ...pedal, name: `${name}${pedal.id}` })) },
      {
        ...catalogue,
        name,
        supplies: catalogue.supplies.map((supply) => ({ ...supply, name: `${name}${supply.id}` })),
      },
    ),
    comparison,
  };
}

describe('reports of a comparison', () => {
  it('say to plug nothing by them, and of no pictures where they have none', () => {
    for (const ending of ['.html', '.md'])
      expect(textOf(ending)).toContain('Plug nothing by this comparison alone: the sheet of the choice that you take');
    expect(textOf('.md')).not.toMatch(/pictures?|drawings?/i);
  });

  it('are told by the ends of names; those of a plan alone are none of them', () => {
    for (const ending of ['.html', '.HTML', '.sheet.html', '.md', '.csv', '.json']) expect(textOf(ending)).not.toBe('');
    for (const name of ['x.labels.html', 'x.feeds.csv', 'x.buy.csv', 'x.svg', 'x.txt', 'x'])
      expect(comparisonReports.makerFor(name)).toBeNull();
  });

  it('set the options side by side, the best first, in every format', () => {
    const rows = readCsv(textOf('.csv')).slice(1);
    expect(rows.map((row) => [row[0], row[2], row[4], row[5]])).toEqual([
      ['1', 'proven', '3 x dory', '36.00'],
      ['2', 'proven', '1 x raft; 1 x dory', '42.00'],
      ['3', 'proven', '2 x raft', '60.00'],
      ['', 'proven', '1 x quay; 2 x dory', '114.00'],
      ['', 'fails', '2 x dory', '24.00'],
    ]);
    const tables = marked.lexer(textOf('.md')).filter((token): token is Tokens.Table => token.type === 'table');
    expect(tables[0]?.rows.map((row) => row[2]?.text)).toEqual(rows.map((row) => `${row[5] ?? ''} EUR`));
    const cells = elementsOf(textOf('.html')).filter(({ attributes }) => attributes.get('data-label') === 'Buy');
    expect(cells.length).toBeGreaterThan(rows.length);
  });

  it('say what each would have to cost, what else nothing beats and why nothing works, where that is so', () => {
    const page = textOf('.html');
    for (const title of ['Side by side', 'What it would take to be the best', 'What else nothing beats'])
      expect(page).toContain(`>${title}</h2>`);
    expect(page).toContain('would be the best at');
    expect(textOf('.html', impossible)).toContain('>Nothing can feed these</h2>');
    expect(textOf('.md', impossible)).toContain('## Nothing can feed these');
    expect(readCsv(textOf('.csv', impossible))).toHaveLength(1);
  });

  it('are made of the same elements whatever things are called, and show no control character', () => {
    const skeletonOf = (text: string) => elementsOf(text).map(({ name, depth }) => `${depth} ${name}`);
    const plain = skeletonOf(textOf('.html', named(input, 'x')));
    expect(plain.length).toBeGreaterThan(100);
    fc.assert(
      fc.property(hostileName, (name) => {
        const hostile = named(input, `${name}x`);
        expect(skeletonOf(textOf('.html', hostile))).toEqual(plain);
        for (const ending of ['.html', '.md', '.csv'])
          expect(textOf(ending, hostile).slice(1)).not.toMatch(/(?![\n\r])[\p{Cc}\p{Cf}]/u);
      }),
      trying(60),
    );
  });

  it('have a sheet on which each choice adds up, has its drawing, and nothing speaks of files or commands', () => {
    const sheet = textOf('.sheet.html');
    const amount = (text = ''): number => Number(text.replace(/\sEUR$/, '').replace('.', ''));
    const cards = sheet.split('<section id="option-').slice(1);
    expect(cards).toHaveLength(input.comparison.options.length);
    for (const [at, card] of cards.entries()) {
      const prices = [...card.matchAll(/data-label="Price" class="figures"><span>([^<]*)/g)].map(([, text]) =>
        amount(text),
      );
      const total = amount(/Total<\/th><td[^>]*>([^<]*)/.exec(card)?.[1]);
      expect(prices.length).toBeGreaterThan(0);
      expect(total).toBe(prices.reduce((sum, one) => sum + one, 0));
      expect(/<svg [^>]*class="(small|sheet)"/.test(card)).toBe(input.comparison.options[at]?.kind === 'plan');
    }
    for (const text of [sheet, textOf('.html'), textOf('.sheet.html', impossible)]) {
      const words = text.replace(/<(style|svg)\b[^]*?<\/\1>/g, ' ').replace(/<[^>]*>/g, ' ');
      expect(words).not.toMatch(/\bfiles?\b|\bcatalogue\b|\bagain\b|--[a-z]|boardfeed [a-z]+ [A-Z]/);
    }
  });

  it('show money against exposed pedals and supplies, each choice by its number and name', () => {
    const chart = /<svg class="chart"[^]*?<\/svg>/.exec(textOf('.html'))?.[0] ?? '';
    const texts = elementsOf(chart)
      .filter(({ attributes }) => attributes.get('class') === 'inverse')
      .map(({ text }) => text);
    for (const { rank } of input.comparison.options)
      if (rank !== null) expect(texts.filter((text) => text.split(', ').includes(String(rank)))).toHaveLength(2);
    expect(textOf('.html', impossible)).not.toContain('class="chart"');
  });
});
