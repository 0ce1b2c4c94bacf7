import { describe, expect, it } from 'vitest';

import { supplyId } from '../../../../src/domain/quantities.js';
import { idNamed, oneOfThem, severalCalled } from '../../../../src/reading/resolve/names-for-ids.js';
import { shelfOf } from '../../../../src/reading/resolve/resolve-for-sale.js';

describe('a name', () => {
  const quay = { id: supplyId('quay'), name: 'Quay 6', thing: 'one' };
  const shelf = shelfOf(
    [quay, { ...quay, id: supplyId('quay-b'), name: 'QUAY 6 ' }, { ...quay, id: supplyId('dory'), name: 'Dory' }],
    true,
  );

  it('stands for the only thing that has it, whatever its capitals', () => {
    expect(idNamed('DORY', shelf)).toBe('dory');
    expect(idNamed('quay', shelf)).toBe('quay');
    expect(severalCalled('dory', shelf)).toBeNull();
  });

  it('that several have stands for none of them', () => {
    expect(idNamed('Quay 6', shelf)).toBe('Quay 6');
    expect(severalCalled('Quay 6', shelf)).toBe('is the name of 2 things');
    expect(oneOfThem('Quay 6', shelf)).toBe('Write the id of the one that is meant: quay or quay-b.');
  });

  it('that none has is left as it is', () => {
    expect(idNamed('Barge', shelf)).toBe('Barge');
    expect(oneOfThem('Barge', shelf)).toBeNull();
  });
});
