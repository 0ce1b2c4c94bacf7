import { describe, expect, it } from 'vitest';

import { boardText, boardWithPedals, expectFault, readOf } from '../files/texts.js';

const pedal = (fields: string) => ({ board: boardWithPedals(`{name: Echo, ${fields}}`) });

describe('what bears on safety has no silent default', () => {
  const whole = {
    power: 'power: DC',
    polarity: 'polarity: centre-negative',
    inlet: 'inlet: jack-3.5',
    ground: 'ground: negative',
  };
  it.each(['power', 'polarity', 'inlet', 'ground'] as const)(
    '%s is missing from the pedal and from `assume`',
    (field) => {
      const others = Object.entries(whole).filter(([name]) => name !== field);
      const board = boardText({
        assume: '',
        pedals: `pedals:\n  - ‸{name: Echo, volts: 9, milliamps: 100, ${others.map(([, text]) => text).join(', ')}}`,
      });
      expectFault(
        { board },
        `pedals[0].${field}`,
        ['missing for "Echo"', 'no default'],
        `add \`${field}\`, or add it to \`assume\``,
      );
    },
  );

  it('a wrong word in `assume` is told once, not again for each pedal that would use it', () => {
    const assume = 'assume: {power: DC, polarity: ‸negative, inlet: barrel-2.1, ground: negative}';
    expectFault(
      { board: boardText({ assume }) },
      'assume.polarity',
      ['"negative"', 'centre-positive'],
      'centre-negative?',
    );
  });

  it('an unknown power asks for no polarity yet', () => {
    const board = boardText({
      assume: 'assume: {inlet: barrel-2.1, ground: negative}',
      pedals: 'pedals:\n  - ‸{name: Echo, volts: 9, milliamps: 100}',
    });
    expectFault({ board }, 'pedals[0].power', ['missing'], "Read it off the pedal's label");
  });

  it('lists exactly the fields that were assumed', () => {
    const [first] = readOf(boardWithPedals('{name: Echo, volts: 9, milliamps: 1, ground: positive, inlet: x}')).board
      .pedals;
    expect(first).toMatchObject({ ground: 'positive', inlet: 'x', power: 'DC', polarity: 'centre-negative' });
    expect(first?.assumed).toEqual({ power: 'DC', polarity: 'centre-negative' });
  });
});

describe('alternating current has no polarity', () => {
  it('refuses a stated one', () => {
    expectFault(
      pedal('volts: 9, milliamps: 1, power: AC, polarity: ‸centre-negative'),
      'pedals[0].polarity',
      ['centre-negative', 'AC, which has no polarity'],
      'Remove `polarity`',
    );
  });

  it('does not apply an assumed one', () => {
    const [first] = readOf(boardWithPedals('{name: Echo, volts: 9, milliamps: 1, power: AC}')).board.pedals;
    expect(first?.polarity).toBeNull();
    expect(first?.assumed).toEqual({ inlet: 'barrel-2.1', ground: 'negative' });
  });
});

describe('preferred volts and the most volts', () => {
  it('prefers must be accepted', () => {
    expectFault(
      pedal('volts: [9, 12], milliamps: 1, prefers: ‸18'),
      'pedals[0].prefers',
      ['found 18', '9, 12 V'],
      'Write one of those',
    );
    expectFault(
      pedal('volts: {from: 9, to: 12}, milliamps: 1, prefers: ‸12.001'),
      'pedals[0].prefers',
      ['12.001', '9 to 12 V'],
      'Write one of those',
    );
  });

  it('prefers must be among the volts that a per-voltage map leaves', () => {
    expectFault(
      pedal('volts: [9, 12, 18], milliamps: {9: 300, 12: 230}, prefers: ‸18'),
      'pedals[0].prefers',
      ['found 18', '9, 12 V'],
      'Write one of those',
    );
  });

  it('maxVolts must not be below what is accepted', () => {
    expectFault(
      pedal('volts: [18, 9], milliamps: 1, maxVolts: ‸17.999'),
      'pedals[0].maxVolts',
      ['17.999', 'below the 18 V'],
      'manual',
    );
  });

  it('takes the bounds themselves', () => {
    const [first] = readOf(
      boardWithPedals('{name: Echo, volts: {from: 9, to: 18}, milliamps: 1, prefers: 18, maxVolts: 18}'),
    ).board.pedals;
    expect(first).toMatchObject({ prefers: 18000, survives: 18000 });
  });
});

describe('ids', () => {
  it('a repeated id names the line of the first', () => {
    const board = boardText({
      pedals: [
        'pedals:',
        '  - {name: Echo, volts: 9, milliamps: 1}',
        '  - {name: Other, id: ‸echo, volts: 9, milliamps: 1}',
      ].join('\n'),
    });
    expectFault({ board }, 'pedals[1].id', ['"echo"', 'line 6'], 'another id');
  });

  it('a repeated name points at the name', () => {
    const board = boardWithPedals('{name: Echo, volts: 9, milliamps: 1}', '{volts: 9, name: ‸ECHO!, milliamps: 1}');
    expectFault({ board }, 'pedals[1].name', ['makes the id "echo"', 'line 6'], 'Add an `id`');
  });

  it('a name of signs only makes no id', () => {
    expectFault(
      { board: boardWithPedals('{name: ‸"!?", volts: 9, milliamps: 1}') },
      'pedals[0].name',
      ['"!?"'],
      'Add an `id`',
    );
  });
});
