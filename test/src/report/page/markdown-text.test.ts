import fc from 'fast-check';
import { marked, type Token } from 'marked';
import { describe, expect, it } from 'vitest';

import { escapeMarkdown } from '../../../../src/report/page/markdown-text.js';
import { safeText } from '../../../../src/report/words/safe-text.js';
import { hostileName } from '../../../support/hostile-names.js';
import { share, trying } from '../../../support/runs.js';

/** The kinds of everything that a reader of Markdown makes of the text, but for plain text and its escapes. */
function kindsIn(tokens: readonly Token[]): readonly string[] {
  return tokens.flatMap((token) => {
    const children = 'tokens' in token ? (token.tokens ?? []) : [];
    const items: readonly Token[] = token.type === 'list' ? (token.items as Token[]) : [];
    const own = ['text', 'escape', 'space'].includes(token.type) ? [] : [token.type];
    return [...own, ...kindsIn(children), ...kindsIn(items)];
  });
}

/** The text that a page made of the Markdown shows. */
const shownBy = (text: string): string =>
  text
    .replace(/<[^>]*>/g, '')
    .replace(
      /&(lt|gt|quot|#39|amp);/g,
      (entity) => ({ '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" })[entity] ?? '&',
    )
    .trim();

const blanksJoined = (name: string): string => safeText(name).replace(/\s+/gu, ' ').trim();

describe('a name in Markdown', () => {
  it('is escaped no more than it has to be', () => {
    expect(escapeMarkdown('Estuary echo')).toBe('Estuary echo');
    expect(escapeMarkdown('9 V DC, centre-negative (minus on the pin)')).toBe(
      '9 V DC, centre-negative (minus on the pin)',
    );
    expect(escapeMarkdown('*Loud* <b>')).toBe('\\*Loud\\* &lt;b&gt;');
    expect(escapeMarkdown('__www.a.example')).toBe('\\_\\_www\\.a.example');
  });

  it('shows itself and is nothing else: alone, in a list, in a table, in bold', () => {
    let exercised = 0;
    fc.assert(
      fc.property(
        hostileName.filter((name) => blanksJoined(name) !== ''),
        (name) => {
          const text = escapeMarkdown(name);
          expect(kindsIn(marked.lexer(text))).toEqual(['paragraph']);
          expect(shownBy(marked.parse(text, { async: false }))).toBe(blanksJoined(name));
          expect(kindsIn(marked.lexer(`- ${text}`))).toEqual(['list', 'list_item']);
          expect(shownBy(marked.parse(`- ${text}`, { async: false }))).toBe(blanksJoined(name));
          const table = marked.lexer(`| A | B |\n| --- | --- |\n| ${text} | x |`);
          expect(table).toHaveLength(1);
          const [first] = table;
          expect(first?.type === 'table' && first.rows).toMatchObject([[{}, { text: 'x' }]]);
          if (text !== name) exercised += 1;
        },
      ),
      trying(1000),
    );
    expect(exercised).toBeGreaterThan(share(500));
  });
});
