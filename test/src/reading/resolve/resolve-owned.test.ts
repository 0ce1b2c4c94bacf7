import { describe, expect, it } from 'vitest';

import { boardText, catalogueText, expectFault, expectRefused, faultsOf, readOf } from '../texts.js';

const catalogue = catalogueText();

describe('owned things', () => {
  it('are counted by id', () => {
    const { owned } = readOf(
      boardText({ owned: 'owned: {supplies: [quay, quay], parts: {flip: 3}}' }),
      catalogue,
    ).board;
    expect([...owned.supplies]).toEqual([['quay', 2]]);
    expect([...owned.parts]).toEqual([['flip', 3]]);
  });

  it('are described by the catalogue or the gear', () => {
    expectFault(
      { board: boardText({ owned: 'owned: {supplies: [quay, ‸quai]}' }), catalogue },
      'owned.supplies[1]',
      ['"quai"', 'neither the gear nor the catalogue'],
      'Did you mean quay?',
    );
    expectFault(
      { board: boardText({ owned: 'owned: {parts: {‸flop: 1}}' }), catalogue },
      'owned.parts.flop',
      '"flop"',
      'Did you mean flip?',
    );
    expectFault(
      { board: boardText({ owned: 'owned: {supplies: [‸harbour]}' }) },
      'owned.supplies[0]',
      ['"harbour"', 'no catalogue is given'],
      'or give the catalogue',
    );
    expectFault(
      { board: boardText({ owned: 'owned: {parts: {‸stack: 1}}' }) },
      'owned.parts.stack',
      'names the part "stack", which the gear does not describe, and no catalogue is given.',
      'Describe it under `gear`, or give the catalogue that lists it.',
    );
    expectFault(
      { board: boardText({ owned: 'owned: {supplies: [‸harbour]}' }), catalogue },
      'owned.supplies[0]',
      'names the supply "harbour", which neither the gear nor the catalogue describes.',
      'Describe it under `gear`, or mend the id.',
    );
  });

  it('are refused for one id that nothing describes, wherever it stands', () => {
    for (const parts of ['{flop: 1, flip: 1}', '{flip: 1, flop: 1}'])
      expectRefused({ board: boardText({ owned: `owned: {parts: ${parts}}` }), catalogue }, 'owned.parts.flop');
    expectRefused({ board: boardText({ owned: 'owned: {supplies: [quai, quay]}' }), catalogue }, 'owned.supplies[0]');
    expectRefused({ board: boardText({ owned: 'owned: {supplies: [quay, quai]}' }), catalogue }, 'owned.supplies[1]');
  });

  it('may be none of a kind', () => {
    const { owned } = readOf(boardText({ owned: 'owned: {supplies: [], parts: {flip: 0}}' }), catalogue).board;
    expect([...owned.supplies]).toEqual([]);
    expect([...owned.parts]).toEqual([['flip', 0]]);
  });

  it('are not called unknown while what is known is not known', () => {
    const owned = 'owned: {supplies: [harbour], parts: {flip: 1}}';
    const faults = faultsOf(
      boardText({ owned }),
      catalogue.replace('id: quay, name: Quay', 'id: "quay 6", name: Quay'),
    );
    expect(faults.map(({ key }) => key)).toEqual(['supplies[0].id']);
    expect(faultsOf(boardText({ owned }), 'supplies: [').map(({ file }) => file)).toEqual(['shop.yaml']);
  });

  it('are whole numbers of units', () => {
    expectFault(
      { board: boardText({ owned: 'owned: {parts: {flip: ‸1.5}}' }), catalogue },
      'owned.parts.flip',
      ['found 1.5', 'from 0 to 10000'],
      'Write a whole number',
    );
    expectFault(
      { board: boardText({ owned: 'owned: {supplies: ‸{quay: 2}}' }), catalogue },
      'owned.supplies',
      ['a map', 'one a unit'],
      'Write a list',
    );
  });
});
