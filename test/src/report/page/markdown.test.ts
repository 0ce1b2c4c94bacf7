import fc from 'fast-check';
import { marked, type Tokens } from 'marked';
import { describe, expect, it } from 'vitest';

import { markdownText } from '../../../../src/report/page/markdown.js';
import { hostileName } from '../../../support/hostile-names.js';
import { allHandouts, movingPlan, namedInTurn, planOf } from '../handouts.js';
import { trying } from '../../../support/runs.js';

const headingsOf = (text: string): readonly string[] =>
  marked
    .lexer(text)
    .flatMap((token) =>
      token.type === 'heading' ? [`${'#'.repeat((token as Tokens.Heading).depth)} ${token.text}`] : [],
    );

/** Every element of the page that the Markdown makes, without text. */
const skeletonOf = (text: string): readonly string[] =>
  [...marked.parse(text, { async: false }).matchAll(/<\/?[a-z][^>]*>/g)].map(([tag]) => tag);

describe('a plan in Markdown', () => {
  it('has its parts in the order in which a person needs them', () => {
    expect(headingsOf(markdownText(planOf()))).toEqual([
      '# board: how to power it',
      '## Left out',
      '## Buy',
      '## Confirm before plugging in',
      '## Feeds',
      '## Hook up',
      '### 1. Unplug everything',
      '### 2. Set the switches',
      '### 3. Put the leads on the supplies',
      '### 4. Measure every plug',
      '### 5. Connect the pedals',
      '### 6. Switch on',
      '## Grounds and noise',
      '## Cautions',
    ]);
  });

  it('has tables that are tables: what to buy, the feeds, what to measure', () => {
    const plan = planOf();
    const tables = marked.lexer(markdownText(plan)).filter((token): token is Tokens.Table => token.type === 'table');
    expect(tables.map(({ rows }) => rows.length)).toEqual([
      plan.shopping.length + 1,
      plan.rows.length,
      plan.rows.length,
    ]);
    expect(tables[0]?.rows.at(-1)?.map(({ text }) => text)).toEqual(['', 'Total', '', '224.00 EUR']);
    expect(tables[1]?.rows[1]?.map(({ text }) => text)).toEqual([
      '1b',
      'old-wah',
      'shared (yours)',
      '2, common ground',
      '9 V',
      '9 V DC, centre-positive, 2.1 mm barrel',
      'own lead → fan → flip',
      '70 of 300 mA, 24 % for 2 pedals; up to 265 of 300 mA at switch-on',
    ]);
  });

  it('shows what re-plugging changes, and nothing in the words of files', () => {
    const text = markdownText(movingPlan());
    expect(text).toContain('| looper | shared output 4, 12 V | shared output 4, 9 V | voltage: looper accepts 9 V;');
    expect(text).toContain('- New: tube-delay, ac output 1, 9 V.');
    expect(text).not.toMatch(/`|board file/);
  });

  it('ends in one line break and tells why there is no plan', () => {
    for (const handout of allHandouts()) expect(markdownText(handout)).toMatch(/\S\n$/);
    const [, , , impossible, stopped] = allHandouts().map(markdownText);
    expect(impossible).toContain('nearest miss: voltage at joiner outputs 1 and 2: needs 24 V');
    expect(stopped).toContain('That does not mean that none exists.');
  });

  it('is made of the same elements whatever things are called', () => {
    const plain = allHandouts().map((handout) => skeletonOf(markdownText(handout)));
    expect(plain.flat().length).toBeGreaterThan(500);
    fc.assert(
      fc.property(
        fc.array(
          hostileName.map((name) => `${name}x`),
          { minLength: 40, maxLength: 40 },
        ),
        (names) => {
          // Names that differ: things of the same name share a remark.
          const hostile = allHandouts(namedInTurn(names.map((name, at) => `${name}${at}`)));
          expect(hostile.map((handout) => skeletonOf(markdownText(handout)))).toEqual(plain);
        },
      ),
      trying(60),
    );
  });
});
