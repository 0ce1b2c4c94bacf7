import { describe, expect, it } from 'vitest';

import { boardText, boardWithPedals, catalogueText, expectFault, faultsOf, readOf } from '../texts.js';

const pedal = (fields: string) => ({ board: boardWithPedals(`{name: Echo, ${fields}}`) });

describe('unknown keys', () => {
  it('are pointed at, with the near spelling', () => {
    expectFault(pedal('volts: 9, milliamps: 1, ‸digitl: true'), 'pedals[0].digitl', 'unknown key.', 'digital?');
    expectFault({ board: boardText({ extra: '‸wirring: []' }) }, 'wirring', 'unknown key.', 'wiring?');
    expectFault(
      { catalogue: catalogueText({ currency: 'currency: EUR\n‸asume: {power: DC}' }) },
      'asume',
      'unknown key',
      'Did you mean assume?',
    );
  });

  it('are not missed under their right name as well', () => {
    expectFault(pedal('‸vlots: 9, milliamps: 1'), 'pedals[0].vlots', 'unknown key', 'Did you mean volts?');
    expectFault(pedal('volts: 9, ‸mA: 1'), 'pedals[0].mA', 'unknown key', 'Did you mean milliamps?');
    expectFault(pedal('volts: {‸form: 9, to: 12}, milliamps: 1'), 'pedals[0].volts.form', 'unknown key.', 'from?');
    expectFault({ board: boardText({ policy: '‸polcy: {}' }) }, 'polcy', 'unknown key', 'Did you mean policy?');
    const board = boardText({
      assume: 'assume: {power: DC, ‸polaritty: centre-negative, inlet: barrel-2.1, ground: negative}',
    });
    expectFault({ board }, 'assume.polaritty', 'unknown key', 'Did you mean polarity?');
  });

  it('do not suggest a key that is there already', () => {
    expectFault(
      pedal('volts: 9, ‸volt: 9, milliamps: 1'),
      'pedals[0].volt',
      'unknown key. Allowed here: ',
      'Write what it says under one of these',
    );
  });

  it('__proto__ and constructor are no exception', () => {
    for (const key of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
      expectFault(
        pedal(`volts: 9, milliamps: 1, ‸${key}: {digital: true}`),
        `pedals[0].${key}`,
        'unknown key',
        key === '__proto__' ? 'Remove it.' : 'as a remark behind a #',
      );
    }
    expectFault(
      pedal('volts: 9, milliamps: {9: 1, ‸__proto__: 1}'),
      'pedals[0].milliamps.__proto__',
      'unknown',
      'Remove',
    );
    expect(Object.hasOwn(Object.prototype, 'digital')).toBe(false);
  });

  it('are not merged', () => {
    expectFault(pedal('volts: 9, milliamps: 1, ‸<<: {digital: true}'), 'pedals[0]["<<"]', 'unknown key', 'not merged');
  });
});

describe('wrong types', () => {
  it.each([
    ['name', 'name: ‸808', 'found 808', 'Put it in quotes if it is meant as text: "808".'],
    ['name', 'name: ‸true', 'found true', 'quotes'],
    ['name', 'name: ‸""', 'found ""', 'Write text of 1 to 200'],
    ['name', `name: ‸${'n'.repeat(201)}`, '201 characters', 'Shorten it.'],
    ['digital', 'name: Echo, digital: ‸yes', 'found "yes"', 'Write true.'],
    ['digital', 'name: Echo, digital: ‸Off', 'found "Off"', 'Write false.'],
    ['alone', 'name: Echo, alone: ‸1', 'found 1', 'Write true.'],
    ['startup', 'name: Echo, ‸startup: ', 'no value', 'remove `startup`'],
    ['startup', 'name: Echo, startup: ‸[1]', 'a list of 1 entry', 'a single value'],
    ['startup', 'name: Echo, startup: ‸{}', 'an empty map', 'Write a number of milliamps'],
    ['startup', 'name: Echo, startup: ‸soon', '"soon", which is text', 'Write a number of milliamps'],
    ['startup', 'name: Echo, startup: ‸true', 'found true', 'Write a number of milliamps'],
    ['inlet', 'name: Echo, inlet: ‸2.1', 'found 2.1', 'quotes'],
    ['id', 'name: Echo, id: ‸two words', '"two words"', 'Write two-words'],
    ['id', 'name: Echo, id: ‸"a\\x1bb"', '"a\\x1bb"', 'Write a-b'],
    ['figure', 'name: Echo, figure: ‸Guess', '"Guess"', 'Did you mean guess?'],
    ['ground', 'name: Echo, ground: ‸pos', '"pos"', 'Did you mean positive?'],
    ['power', 'name: Echo, power: ‸dc', '"dc"', 'Did you mean DC?'],
    ['power', 'name: Echo, power: ‸battery', '"battery"', 'Write DC, AC or unknown.'],
    ['polarity', 'name: Echo, polarity: ‸center-negative', '"center-negative"', 'Did you mean centre-negative?'],
    ['polarity', 'name: Echo, polarity: ‸negative', '"negative"', 'Did you mean centre-negative?'],
    ['polarity', 'name: Echo, polarity: ‸Centre Positive', '"Centre Positive"', 'Did you mean centre-positive?'],
    ['polarity', 'name: Echo, polarity: ‸either', '"either"', 'Write centre-negative, centre-positive or unknown.'],
    ['polarity', 'name: Echo, polarity: ‸-1', 'found -1', 'Write centre-negative, centre-positive or unknown.'],
  ])('%s (%s)', (field, fields, found, remedy) => {
    expectFault(
      { board: boardWithPedals(`{volts: 9, milliamps: 1, ${fields}}`) },
      `pedals[0].${field}`,
      [found, 'Allowed: '],
      remedy,
    );
  });

  it('of whole sections', () => {
    expectFault({ board: boardText({ pedals: 'pedals: ‸Echo' }) }, 'pedals', ['"Echo"', '1 to 2000'], 'Write a list');
    expectFault({ board: boardText({ pedals: 'pedals: [‸Echo]' }) }, 'pedals[0]', ['"Echo"', 'a map'], 'Write a map');
    expectFault({ board: boardText({ pedals: 'pedals: ‸[]' }) }, 'pedals', 'an empty list', 'Add what is missing');
    expectFault({ board: boardText({ extra: '‸gear:' }) }, 'gear', 'no value', 'remove `gear`');
    const [fault] = faultsOf(boardText({ pedals: 'pedals:' }));
    expect(fault).toMatchObject({ key: 'pedals', remedy: 'Write a list of 1 to 2000 pedals.' });
    expectFault(pedal('volts: 9, ‸milliamps: '), 'pedals[0].milliamps', 'no value', 'Write');
    expectFault({ board: boardText({ assume: 'assume: ‸[DC]' }) }, 'assume', ['a list', 'a map'], 'Write a map');
    const owned = 'owned: {parts: ‸[flip]}';
    expectFault({ board: boardText({ owned }) }, 'owned.parts', ['a list', 'a map'], 'Write a map from ids to counts');
    expectFault({ board: '‸- a\n' }, '', ['a list', 'a map with board'], 'Write a map with board');
    expectFault({ board: '‸just text\n' }, '', ['"just text"', 'a map with board'], 'Write');
  });
});

describe('wrong units', () => {
  it.each([
    ['volts: ‸"9V", milliamps: 1', 'volts', 'Write 9.'],
    ['volts: ‸9 V DC, milliamps: 1', 'volts', 'Write a number of volts'],
    ['volts: ‸9000 mV, milliamps: 1', 'volts', 'Write 9.'],
    ['volts: [9, ‸12V], milliamps: 1', 'volts[1]', 'Write 12.'],
    ['volts: ‸9-18V, milliamps: 1', 'volts', 'Write {from: 9, to: 18}.'],
    ['volts: 9, milliamps: ‸300 mA', 'milliamps', 'Write 300.'],
    ['volts: 9, milliamps: ‸300mA', 'milliamps', 'Write 300.'],
    ['volts: 9, milliamps: ‸0.3A', 'milliamps', 'Write 300.'],
    ['volts: 9, milliamps: ‸1.2 amps', 'milliamps', 'Write 1200.'],
    ['volts: 9, milliamps: ‸"300"', 'milliamps', 'Write 300.'],
    ['volts: 9, milliamps: ‸500 µA', 'milliamps', 'Write 0.5.'],
    ['volts: 9, milliamps: ‸"12,5"', 'milliamps', 'Write 12.5.'],
    ['volts: 9, milliamps: ‸"1,800"', 'milliamps', 'decimal point'],
    ['volts: 9, milliamps: ‸1_000', 'milliamps', 'Write a number of milliamps'],
    ['volts: 9, milliamps: ‸200 A', 'milliamps', 'Write a number of milliamps'],
    ['volts: 9, milliamps: {9: ‸300 mA}', 'milliamps.9', 'Write 300.'],
    ['volts: 9, milliamps: 1, startup: ‸0.35 A', 'startup', 'Write 350.'],
  ])('%s', (fields, field, remedy) => {
    expectFault(pedal(fields), `pedals[0].${field}`, ['which is text', 'Allowed: '], remedy);
  });

  it('of factors, money, watts and mains', () => {
    const policy = (text: string) => boardText({ policy: `policy: {chains: allow, ${text}}` });
    expectFault(
      { board: policy('headroom: {alone: ‸120%, chained: 2, supply: 1}') },
      'policy.headroom.alone',
      '"120%"',
      'Write 1.2.',
    );
    const headroom = 'headroom: {alone: 1, chained: 1, supply: 1}';
    expectFault({ board: policy(`${headroom}, budget: ‸€250`) }, 'policy.budget', '"€250"', 'Write 250.');
    expectFault({ board: policy(`${headroom}, budget: ‸119.50 EUR`) }, 'policy.budget', 'EUR"', 'Write 119.5.');
    expectFault({ board: policy(`${headroom}, mains: ‸230V`) }, 'policy.mains', '"230V"', 'Write 230.');
    expectFault({ board: policy(`${headroom}, sockets: ‸4.5`) }, 'policy.sockets', 'found 4.5', 'Write a whole number');
    const supply = (text: string) => catalogueText({}).replace('regulated: true', `regulated: true, ${text}`);
    expectFault({ catalogue: supply('total: {watts: ‸18 W}') }, 'supplies[0].total.watts', '"18 W"', 'Write 18.');
    expectFault({ catalogue: supply('mains: ‸100-240 V') }, 'supplies[0].mains', '"100-240 V"', '{from: 100, to: 240}');
  });
});

describe('numbers', () => {
  it.each([
    ['volts: ‸0, milliamps: 1', 'volts', 'found 0', 'above 0'],
    ['volts: ‸-9, milliamps: 1', 'volts', 'found -9', 'above 0'],
    ['volts: ‸1000.001, milliamps: 1', 'volts', 'found 1000.001', 'up to 1000'],
    ['volts: 9, milliamps: ‸0', 'milliamps', 'found 0', 'above 0'],
    ['volts: 9, milliamps: ‸100000.1', 'milliamps', 'found 100000.1', 'up to 100000'],
    ['volts: ‸.nan, milliamps: 1', 'volts', 'found .nan', 'above 0'],
    ['volts: 9, milliamps: ‸.inf', 'milliamps', 'found .inf', 'Write a number'],
    ['volts: 9, milliamps: ‸-.Inf', 'milliamps', 'found -.Inf', 'Write a number'],
    ['volts: 9, milliamps: ‸-0', 'milliamps', 'found -0', 'Write a number'],
    ['volts: ‸0x1F, milliamps: 1', 'volts', 'found 0x1F', 'Write 31.'],
    ['volts: ‸0o11, milliamps: 1', 'volts', 'found 0o11', 'Write 9.'],
    ['volts: ‸09, milliamps: 1', 'volts', 'found 09', 'Write 9.'],
    ['volts: ‸+9, milliamps: 1', 'volts', 'found +9', 'Write 9.'],
    ['volts: ‸9., milliamps: 1', 'volts', 'found 9.', 'Write 9.'],
    ['volts: 9, milliamps: ‸.5', 'milliamps', 'found .5', 'Write 0.5.'],
    ['volts: 9, milliamps: ‸1e3', 'milliamps', 'found 1e3', 'Write 1000.'],
    ['volts: 9, milliamps: ‸1e999', 'milliamps', 'found 1e999', 'Write a number'],
    ['volts: 9, milliamps: ‸0.10000000000000000001', 'milliamps', 'found 0.10000000000000000001', 'Write 0.1.'],
    ['volts: ‸9.0001, milliamps: 1', 'volts', 'found 9.0001', 'at most three decimals'],
    ['volts: 9, milliamps: ‸12.3456', 'milliamps', 'found 12.3456', 'Write 12.346.'],
    ['volts: 9, milliamps: ‸0.0001', 'milliamps', 'found 0.0001', 'at most three decimals'],
    ['volts: 9, milliamps: 1, startup: ‸0', 'startup', 'found 0', 'above 0'],
  ])('%s', (fields, field, found, words) => {
    const { board } = pedal(fields);
    expectFault({ board }, `pedals[0].${field}`, [found], '');
    const [fault] = faultsOf(board.replace('‸', ''));
    expect(`${fault?.message ?? ''} ${fault?.remedy ?? ''}`).toContain(words);
  });

  it('of factors, watts and counts', () => {
    const policy = (text: string) => boardText({ policy: `policy: {chains: allow, ${text}}` });
    expectFault(
      { board: policy('headroom: {alone: 1, chained: ‸1.2345, supply: 1}') },
      'policy.headroom.chained',
      ['1.2345', 'three decimals'],
      'Write 1.235.',
    );
    expectFault(
      { board: policy('headroom: {alone: 1, chained: ‸101, supply: 1}') },
      'policy.headroom.chained',
      ['found 101', 'to 100'],
      '',
    );
    const supply = (text: string) => catalogueText({}).replace('regulated: true', `regulated: true, ${text}`);
    expectFault({ catalogue: supply('total: {watts: ‸100001}') }, 'supplies[0].total.watts', 'up to 100000', '');
    expectFault(
      { catalogue: supply('total: {watts: ‸1.0001}') },
      'supplies[0].total.watts',
      'three decimals',
      'Write 1.',
    );
    expectFault({ catalogue: supply('stock: ‸10001') }, 'supplies[0].stock', 'from 0 to 10000', '');
    expectFault({ catalogue: supply('stock: ‸-1') }, 'supplies[0].stock', 'found -1', '');
    const outputs = (text: string) => ({ catalogue: catalogueText({}).replace('outputs: 2', `outputs: ‸${text}`) });
    for (const text of ['0', '101', '1.5', '1e2']) {
      expectFault(outputs(text), 'supplies[0].banks[0].outputs', [`found ${text}`, 'from 1 to 100'], 'Write');
    }
  });

  it('at their bounds are right', () => {
    const { board } = readOf(pedal('volts: [0.001, 1000], milliamps: 100000, startup: 0.001').board);
    expect(board.pedals[0]).toMatchObject({
      accepts: { millivolts: [1, 1_000_000] },
      draw: { microamps: 100_000_000 },
      startup: 1,
    });
    expect(readOf(pedal('volts: 9.50, milliamps: 100.0').board).board.pedals[0]?.draw).toEqual({
      kind: 'flat',
      microamps: 100_000,
    });
  });
});

describe('long lists', () => {
  const many = (count: number) =>
    boardWithPedals(...Array.from({ length: count }, (_, index) => `{name: P${index}, volts: 9, milliamps: 1}`));
  it('2000 pedals are read, 2001 are one fault', () => {
    expect(readOf(many(2000)).board.pedals).toHaveLength(2000);
    const faults = faultsOf(many(2001));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ line: 6, column: 3, key: 'pedals' });
    expect(faults[0]?.message).toContain('a list of 2001 entries');
  });

  it('5001 supplies are one fault, and owned ids are not called unknown for it', () => {
    const list = `supplies: [${Array.from({ length: 5001 }, () => '{}').join(',')}]`;
    const board = boardText({ owned: 'owned: {supplies: [quay]}' });
    const faults = faultsOf(board, catalogueText({ supplies: list }));
    expect(faults.map(({ file, key }) => [file, key])).toEqual([['shop.yaml', 'supplies']]);
  });
});
