import { describe, expect, it } from 'vitest';

import { boardText, boardWithPedals, expectFault, expectRefused, faultsOf, readOf } from '../texts.js';

const pedal = (fields: string) => ({ board: boardWithPedals(`{name: Echo, ${fields}}`) });

describe('what bears on safety has no silent default', () => {
  const whole = {
    power: 'power: DC',
    polarity: 'polarity: centre-negative',
    inlet: 'inlet: jack-3.5',
    ground: 'ground: negative',
  };
  it.each([
    ['power', 'DC or AC, or unknown until somebody has read it', "Read it off the pedal's label"],
    [
      'polarity',
      'centre-negative or centre-positive, or unknown until somebody has read it',
      "Read it off the pedal's label",
    ],
    [
      'inlet',
      'the name of a connector, such as barrel-2.1, or unknown until somebody has read it',
      "Read it off the pedal's label",
    ],
    [
      'ground',
      'negative or positive, or unknown until somebody has read it',
      "Read it off the pedal's manual (negative for nearly all)",
    ],
  ] as const)('%s is missing from the pedal and from `assume`', (field, allowed, remedy) => {
    const stated = Object.entries(whole).filter(([name]) => name !== field);
    const board = boardText({
      assume: '',
      pedals: `pedals:\n  - ‸{name: Echo, volts: 9, milliamps: 100, ${stated.map(([, text]) => text).join(', ')}}`,
    });
    const says = ['missing for "Echo"', 'no default', `Allowed: ${allowed}.`];
    expectFault({ board }, `pedals[0].${field}`, says, remedy);
    const [fault] = faultsOf(board.replace('‸', ''));
    expect(fault?.remedy).toContain(`add \`${field}\`, or add it to \`assume\``);
  });

  it('is told of a pedal without a name, too', () => {
    const board = boardText({ assume: '', pedals: `pedals:\n  - {id: echo, volts: 9, milliamps: 100}` });
    const faults = faultsOf(board);
    expect(faults.map(({ key }) => key)).toEqual(['name', 'power', 'inlet', 'ground'].map((key) => `pedals[0].${key}`));
    expect(faults[1]?.message).toBe(
      'missing; it bears on safety and has no default. Allowed: DC or AC, or unknown until somebody has read it.',
    );
  });

  it.each(['power', 'polarity', 'inlet', 'ground'] as const)(
    '%s that is wrong is told once, and not taken from `assume` instead',
    (field) => {
      expectRefused(pedal(`volts: 9, milliamps: 1, ${field}: {}`), `pedals[0].${field}`);
      const others = Object.entries(whole).filter(([name]) => name !== field);
      const bare = boardText({
        assume: '',
        pedals: `pedals: [{name: Echo, volts: 9, milliamps: 1, ${field}: {}, ${others.map(([, text]) => text).join(', ')}}]`,
      });
      expectRefused({ board: bare }, `pedals[0].${field}`);
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
    expectFault({ board }, 'pedals[0].power', 'missing', "Read it off the pedal's label");
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

describe('a pedal', () => {
  it('is a label figure of an ordinary analogue pedal where nothing else is said', () => {
    const [plain] = readOf(pedal('volts: 9, milliamps: 100').board).board.pedals;
    expect(plain).toMatchObject({
      id: 'echo',
      name: 'Echo',
      draw: { kind: 'flat', microamps: 100_000 },
      startup: null,
      prefers: null,
      survives: null,
      figure: 'label',
      digital: false,
      highGain: false,
      alone: false,
    });
  });

  it('is all that is said of it', () => {
    const more = 'startup: 350.5, figure: manual, digital: true, highGain: true, alone: true';
    const [said] = readOf(pedal(`volts: 9, milliamps: 100, ${more}`).board).board.pedals;
    expect(said).toMatchObject({ startup: 350_500, figure: 'manual', digital: true, highGain: true, alone: true });
    const [denied] = readOf(pedal('volts: 9, milliamps: 1, digital: false, highGain: false, alone: false').board).board
      .pedals;
    expect(denied).toMatchObject({ digital: false, highGain: false, alone: false });
  });

  it.each(['label', 'manual', 'measured'])('has a figure from a %s', (figure) => {
    const [found] = readOf(pedal(`volts: 9, milliamps: 100, figure: ${figure}`).board).board.pedals;
    expect(found?.figure).toBe(figure);
  });

  it('prefers one of the volts that it lists', () => {
    const [found] = readOf(pedal('volts: [9, 12], milliamps: 1, prefers: 12').board).board.pedals;
    expect(found?.prefers).toBe(12_000);
  });
});

describe('a pedal of which something is wrong', () => {
  it.each([
    ['its name', 'name', 'id: echo, volts: 9, milliamps: 1'],
    ['its id', 'id', 'name: Echo, id: two words, volts: 9, milliamps: 1'],
    ['an id that its name does not make', 'name', 'name: "!?", volts: 9, milliamps: 1'],
    ['its volts', 'volts', 'name: Echo, milliamps: 1'],
    ['its draw', 'milliamps', 'name: Echo, volts: 9'],
    ['its draw at the volts that it accepts', 'milliamps', 'name: Echo, volts: 9, milliamps: {12: 1}'],
    ['its power', 'power', 'name: Echo, volts: 9, milliamps: 1, power: battery'],
    ['its polarity', 'polarity', 'name: Echo, volts: 9, milliamps: 1, polarity: both'],
  ])('lacks %s: the board is not read', (_what, field, fields) => {
    expectRefused({ board: boardWithPedals(`{${fields}}`) }, `pedals[0].${field}`);
  });

  it('has neither name nor id: the name alone is asked for', () => {
    expectRefused({ board: boardWithPedals('{volts: 9, milliamps: 1}') }, 'pedals[0].name');
  });

  it('makes no other pedal wrong', () => {
    const pedals = ['{name: Echo, id: a b, volts: 9, milliamps: 1}', '{name: Fuzz, id: c d, volts: 9, milliamps: 1}'];
    expectRefused({ board: boardWithPedals(...pedals) }, 'pedals[0].id', 'pedals[1].id');
    expectRefused({ board: boardWithPedals(pedals[0] ?? '', '{name: Fuzz, volts: 9, milliamps: 1}') }, 'pedals[0].id');
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
      '"!?"',
      'Add an `id`',
    );
  });
});
