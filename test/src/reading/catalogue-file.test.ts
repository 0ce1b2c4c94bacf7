import { describe, expect, it } from 'vitest';

import { catalogueIn } from '../../../src/reading/catalogue-file.js';
import { inputsFromText } from '../../../src/reading/inputs-from-text.js';
import type { NamedFile } from '../../../src/reading/text/file-text.js';
import { marramCatalogue, tidewayBoard } from '../../support/documented.js';

const shop = (text: string): NamedFile => ({ file: 'shop.yaml', text: { kind: 'text', text } });

describe('a catalogue by itself', () => {
  it('is read like one beside a board', () => {
    const read = catalogueIn(shop(marramCatalogue));
    const beside = inputsFromText({ file: 'b', text: tidewayBoard }, { file: 's', text: marramCatalogue });
    if (read.kind === 'faulty' || beside.kind === 'faulty') throw new Error('it is without fault');
    expect(read.value).toEqual({ catalogue: beside.value.catalogue, text: marramCatalogue });
  });

  it('is refused with its own faults', () => {
    expect(catalogueIn(shop(marramCatalogue.replace('price: 119.00', 'price: dear')))).toMatchObject({
      kind: 'faulty',
      faults: [{ file: 'shop.yaml', key: 'supplies[0].price' }],
    });
  });

  it('is refused when its file could not be read', () => {
    const words = { message: 'there is no such file.', remedy: 'Check the path.' };
    expect(catalogueIn({ file: 'shop.yaml', text: { kind: 'unreadable', line: 1, column: 1, words } })).toMatchObject({
      kind: 'faulty',
      faults: [{ file: 'shop.yaml', message: words.message }],
    });
  });
});
