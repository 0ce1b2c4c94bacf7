import { describe, expect, it } from 'vitest';

import { boardText, catalogueText, expectFault, expectRefused, faultsOf, readOf } from '../texts.js';

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

describe('a part of which something is wrong', () => {
  const partsOf = (...parts: readonly string[]) => ({
    catalogue: catalogueText({ parts: `parts:\n${parts.map((fields) => `  - {${fields}}`).join('\n')}` }),
  });

  it.each([
    ['its name', 'name', 'id: lead, price: 4, fits: a, gives: b'],
    ['its id', 'id', 'name: Lead, id: two words, price: 4, fits: a, gives: b'],
    ['its price', 'price', 'name: Lead, fits: a, gives: b'],
    ['what it fits', 'fits', 'name: Lead, price: 4, gives: b'],
    ['what it gives', 'gives', 'name: Lead, price: 4, fits: a'],
    ['whether it is a chain or a join', 'joins', 'name: Lead, price: 4, fits: a, gives: b, tails: 2, joins: series'],
  ])('lacks %s: the catalogue is not read', (_what, field, fields) => {
    expectRefused(partsOf(fields), `parts[0].${field}`);
    expectRefused(partsOf('name: Other, price: 4, fits: a, gives: b', fields), `parts[1].${field}`);
  });

  it('lacks it in the gear: the board is not read', () => {
    const gear = (fields: string) => boardText({ gear: `gear: {parts: [{${fields}}]}` });
    expectRefused({ board: gear('name: Lead, fits: a') }, 'gear.parts[0].gives');
    expectRefused({ board: gear('id: a b, name: Lead, fits: a, gives: b') }, 'gear.parts[0].id');
    expectRefused({ board: gear('name: Lead, fits: a, gives: b, price: 1.005') }, 'gear.parts[0].price');
  });

  it('has no id: it is not taken for another one without an id', () => {
    const first = 'name: Lead, id: a b, price: 4, fits: a, gives: b';
    expectRefused(partsOf(first, first.replace('a b', 'c d')), 'parts[0].id', 'parts[1].id');
  });

  it('is still known by its id', () => {
    const board = boardText({ owned: 'owned: {parts: {lead: 1}}' });
    const faulty = partsOf('id: lead, price: 4, fits: a, gives: b').catalogue;
    expect(faultsOf(board, faulty).map(({ key }) => key)).toEqual(['parts[0].name']);
    const both = partsOf('name: Lead, price: 4, fits: a, gives: b, tails: 2, joins: series').catalogue;
    expect(faultsOf(board, both).map(({ key }) => key)).toEqual(['parts[0].joins']);
  });
});
