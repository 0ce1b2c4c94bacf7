import { expect, it } from 'vitest';

import { draftIn, unfitName } from '../../../../src/reading/drafts/opened-draft.js';
import type { NamedFile } from '../../../../src/reading/text/file-text.js';
import { marramCatalogue } from '../../../support/documented.js';

const file = (text: string): NamedFile => ({ file: 'shop.yaml', text: { kind: 'text', text } });

it('is the text and what it holds, whatever else is wrong with it', () => {
  const text = marramCatalogue.replace('price: 119.00', 'price: dear');
  expect(draftIn('catalogue', file(text))).toMatchObject({
    kind: 'read',
    value: { text, data: { currency: 'EUR', supplies: [{ price: 'dear' }] } },
  });
});

it.each(['a: [', 'board: other\npedals: []', ''])('is refused where nothing can be added: %j', (text) => {
  expect(draftIn('catalogue', file(text))).toMatchObject({ kind: 'faulty', faults: [{ file: 'shop.yaml' }] });
});

it('is no table', () => {
  expect(unfitName('shop.csv')).toMatchObject({ file: 'shop.csv', line: 1, column: 1 });
  expect(unfitName('shop.yaml')).toBeNull();
});
