import { kitOf } from '../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { reportEndings, reportFormatOf, reportText } from '../../../src/report/formats.js';
import { answerJson } from '../../../src/report/json/plan-codec.js';
import type { Answer } from '../../../src/planning/answer.js';
import { tideway } from './samples.js';

const answer: Answer = { kind: 'plan', aim: 'cost', wiring: tideway.wiring, gap: null, reasons: [] };
const input = { kit: kitOf(tideway.board, tideway.catalogue), answer };

describe('the format of a report', () => {
  it.each([
    ['plan.html', 'page'],
    ['plan.labels.html', 'labels'],
    ['plan.sheet.html', 'sheet'],
    ['PLAN.Sheet.HTML', 'sheet'],
    ['plan.md', 'markdown'],
    ['plan.csv', 'feeds'],
    ['plan.feeds.csv', 'feeds'],
    ['plan.buy.csv', 'shopping list'],
    ['plan.svg', 'drawing'],
    ['plan.json', 'json'],
    ['to the shop/PLAN.HTML', 'page'],
    ['.html', 'page'],
  ])('%s is a %s', (path, format) => {
    expect(reportFormatOf(path)).toBe(format);
  });

  it.each(['plan', 'plan.pdf', 'html', 'plan.html.txt', 'plan.html/', 'plan.htm', ''])('%j is none', (path) => {
    expect(reportFormatOf(path)).toBeNull();
  });

  it('can be made for every ending, the same text every time, and each another one', () => {
    const texts = reportEndings.map(({ format }) => [format, reportText(format, input)] as const);
    expect(reportEndings.map(({ format }) => reportText(format, input))).toEqual(texts.map(([, text]) => text));
    expect(new Set(texts.map(([, text]) => text)).size).toBe(new Set(texts.map(([format]) => format)).size);
    for (const [, text] of texts) expect(text.length).toBeGreaterThan(40);
  });

  it('is the same JSON that the command prints', () => {
    expect(reportText('json', input)).toBe(answerJson(input.kit, answer));
  });
});
