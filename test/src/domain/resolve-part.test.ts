import { describe, expect, it } from 'vitest';

import { boardText, catalogueText, expectFault, readOf } from '../files/texts.js';

const part = (fields: string) => ({
  catalogue: catalogueText({ parts: `parts:\n  - {name: Lead, price: 4.25, fits: a, gives: b, ${fields}}` }),
});
const resolved = (fields: string) => readOf(boardText(), part(fields).catalogue).catalogue?.parts[0];

describe('a part', () => {
  it('is an adapter, a chain lead or a join lead', () => {
    expect(resolved('reverses: true, stock: 2')).toEqual({
      id: 'lead',
      name: 'Lead',
      price: 425,
      stock: 2,
      fits: 'a',
      gives: 'b',
      reverses: true,
      role: { kind: 'adapter' },
    });
    expect(resolved('tails: 5')).toMatchObject({ stock: null, reverses: false, role: { kind: 'chain', tails: 5 } });
    expect(resolved('joins: parallel')?.role).toEqual({ kind: 'join', mode: 'parallel' });
  });

  it('is not a chain lead and a join lead at once', () => {
    expectFault(
      part('tails: 2, joins: ‸series'),
      'parts[0].joins',
      ['series', '2 tails', 'not both'],
      'Remove `tails` or',
    );
  });

  it('has at least two tails', () => {
    expectFault(part('tails: ‸1'), 'parts[0].tails', ['found 1', 'from 2 to 10000'], 'Write a whole number');
  });

  it('has an id of its own', () => {
    const lead = '{name: Lead, price: 4, fits: a, gives: b}';
    const catalogue = catalogueText({ parts: `parts:\n  - ${lead}\n  - ${lead.replace('name: ', 'name: ‸')}` });
    expectFault({ catalogue }, 'parts[1].name', ['"lead"', 'line 7', 'parts are unique'], 'Add an `id`');
  });

  it('may have the id of a supply: the two are never confused', () => {
    expect(readOf(boardText(), part('id: quay').catalogue).catalogue?.parts[0]?.id).toBe('quay');
  });
});
