import { describe, expect, it } from 'vitest';

import { boardText, boardWithPedals, expectFault, faultsOf, readOf } from '../texts.js';

describe('repeated keys', () => {
  it('name the line of the first, whose value counts', () => {
    expectFault(
      { board: `${boardText()}‸board: Other\n` },
      'board',
      ['second time', 'line 1'],
      'Keep the one that is right.',
    );
    const board = boardWithPedals('{name: Echo, volts: 9, milliamps: 1, ‸volts: nonsense}');
    expectFault({ board }, 'pedals[0].volts', ['second time', 'line 6'], 'Keep the one that is right.');
  });

  it('are found under any spelling of the same number or quotes', () => {
    const board = boardWithPedals('{name: Echo, volts: 9, milliamps: {9: 1, ‸"9": 2}}');
    expectFault({ board }, 'pedals[0].milliamps.9', 'second time', 'Keep the one that is right.');
  });

  it('of JSON, too', () => {
    expectFault(
      {
        board: '{"board": "A", ‸"board": "B", "currency": "EUR", "policy": {}, "pedals": []}'
          .replace('"policy": {}', '"policy": {"headroom": {"alone": 1, "chained": 1, "supply": 1}, "chains": "allow"}')
          .replace(
            '"pedals": []',
            '"pedals": [{"name": "E", "power": "AC", "inlet": "x", "ground": "negative", "volts": 9, "milliamps": 1}]',
          ),
      },
      'board',
      ['second time', 'line 1'],
      'Keep the one that is right.',
    );
  });
});

describe('keys that are no words', () => {
  it('are refused', () => {
    expectFault({ board: `${boardText()}? ‸[a]\n: 1\n` }, '', 'not plain text', 'as a word');
    expectFault({ board: `${boardText()}‸~: 1\n` }, '', 'not plain text', 'as a word');
    expectFault({ board: `${boardText()}‸: 1\n` }, '', 'not plain text', 'as a word');
  });
});

describe('anchors and aliases', () => {
  it('stand for what they name', () => {
    const { pedals } = readOf(
      boardWithPedals(
        '{name: A, volts: &both [9, 18], milliamps: &draw 5}',
        '{name: B, volts: *both, milliamps: *draw}',
      ),
    ).board;
    expect(pedals[1]).toMatchObject({ accepts: { millivolts: [9000, 18_000] }, draw: { microamps: 5000 } });
  });

  it('a fault behind an anchor is told once, at the anchor', () => {
    const board = boardWithPedals('{name: A, volts: &v [‸9V], milliamps: 1}', '{name: B, volts: *v, milliamps: 1}');
    expectFault({ board }, 'pedals[0].volts[0]', '"9V"', 'Write 9.');
  });

  it('a repeated pedal is told at the alias', () => {
    const board = boardWithPedals('&p {name: A, volts: 9, milliamps: 1}', '‸*p');
    expectFault({ board }, 'pedals[1].name', ['the id "a"', 'line 6'], 'Add an `id`');
  });

  it('an alias of nothing is one fault', () => {
    expectFault(
      { board: boardWithPedals('{name: A, volts: ‸*v, milliamps: 1}') },
      'pedals[0].volts',
      ['"v"', 'no anchor'],
      'Write',
    );
    expectFault({ board: boardWithPedals('‸*p') }, 'pedals[0]', ['"p"', 'no anchor'], 'Write');
  });

  it('an alias inside its own anchor is one fault', () => {
    expectFault(
      { board: boardWithPedals('{name: A, volts: &v [9, ‸*v], milliamps: 1}') },
      'pedals[0].volts[1]',
      ['"v"', 'inside what it stands for'],
      'Write',
    );
  });

  it('a few aliases that stand for billions of values are refused at once', () => {
    const letters = 'abcdefghijklmnop';
    const bomb = Array.from(letters, (letter, index) => {
      const inner = index === 0 ? '1' : `*${letters[index - 1] ?? ''}`;
      return `x${letter}: &${letter} [${Array.from({ length: 9 }, () => inner).join(', ')}]`;
    });
    const faults = faultsOf(`${bomb.join('\n')}\n`);
    const refused = faults.filter(({ message }) => message.includes('aliases stand for more than 50000 values'));
    expect(refused).toHaveLength(1);
    // 9 + 9² + … + 9⁵ values with their lists pass the limit: that is in the fifth or sixth line.
    expect(refused[0]?.line).toBeGreaterThanOrEqual(5);
    expect(refused[0]?.line).toBeLessThanOrEqual(6);
  });
});
