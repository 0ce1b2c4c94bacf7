import { describe, expect, it } from 'vitest';

import { checkReports, labelsReports, spareReports } from '../../../src/report/page-formats.js';
import { checkPage } from '../../../src/report/page/check-page.js';
import { labelsPage } from '../../../src/report/page/labels-page.js';
import { sparePage } from '../../../src/report/page/spare-page.js';

describe('where there is a page alone', () => {
  it.each([
    ['a check', checkReports, checkPage],
    ['what there is to spare', spareReports, sparePage],
    ['which labels decide', labelsReports, labelsPage],
  ])('a name that ends in .html means it, and no other: %s', (_, reports, page) => {
    expect(reports.makerFor('a.HTML')).toBe(page);
    for (const name of ['a.sheet.html', 'a.labels.html', 'a.md', 'html']) expect(reports.makerFor(name)).toBeNull();
  });
});
