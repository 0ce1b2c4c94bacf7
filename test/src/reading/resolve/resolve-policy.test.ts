import { describe, expect, it } from 'vitest';

import { boardText, expectFault, expectRefused, expectToldOnce, faultsOf, readOf } from '../texts.js';

const headroom = 'headroom: {alone: 1.2, chained: 2, supply: 1.125}';
const withPolicy = (policy: string, pedals = '{name: Echo, volts: 9, milliamps: 1}') =>
  boardText({ policy: `policy: {${policy}}`, pedals: `pedals: [${pedals}]` });
const resolved = (policy: string, pedals?: string) => readOf(withPolicy(policy, pedals)).board.policy;

const digital = '{name: Delay, volts: 9, milliamps: 1, digital: true}';
const highGain = '{name: Fuzz, volts: 9, milliamps: 1, highGain: true}';
const both = '{name: Amp, volts: 9, milliamps: 1, digital: true, highGain: true}';

describe('the policy', () => {
  it('leaves open what is not stated', () => {
    expect(resolved(`${headroom}, chains: never`)).toEqual({
      headroom: {
        alone: { numerator: 6, denominator: 5 },
        chained: { numerator: 2, denominator: 1 },
        supply: { numerator: 9, denominator: 8 },
      },
      guess: { numerator: 1, denominator: 1 },
      chains: 'never',
      noisePrice: 0,
      supplyPrice: 0,
      mains: [],
      runtime: null,
      batteries: null,
      sockets: null,
      budget: null,
      bricks: null,
    });
  });

  it('is all that is said, money in minor units and volts in millivolts', () => {
    const more = 'guess: 1.5, noisePrice: 20, mains: 230, sockets: 4, budget: 250.5, bricks: 2';
    expect(resolved(`${headroom}, chains: allow, ${more}`)).toMatchObject({
      guess: { numerator: 3, denominator: 2 },
      chains: 'allow',
      noisePrice: 2000,
      mains: [230_000],
      sockets: 4,
      budget: 25_050,
      bricks: 2,
    });
  });

  it('may allow nothing at all', () => {
    const none = resolved(`${headroom}, chains: never, noisePrice: 0, sockets: 0, budget: 0, bricks: 0`);
    expect(none).toMatchObject({ noisePrice: 0, sockets: 0, budget: 0, bricks: 0 });
  });

  it.each([
    ['headroom', 'chains: allow'],
    ['headroom.chained', 'headroom: {alone: 1, supply: 1}, chains: allow'],
    ['chains', headroom],
    ['chains', `${headroom}, chains: sometimes`],
    ['noisePrice', `${headroom}, chains: allow, noisePrice: 1.005`],
    ['noisePrice', `${headroom}, chains: allow, noisePrice: -1`],
    ['budget', `${headroom}, chains: allow, budget: 1.005`],
    ['budget', `${headroom}, chains: allow, budget: much`],
  ])('whose %s is wrong or missing is told so once (%s)', (field, policy) => {
    expectRefused({ board: withPolicy(policy) }, `policy.${field}`);
  });

  it.each(['guess: 0.5', 'mains: 0', 'mains: 1000.001', 'sockets: 1.5', 'sockets: -1', 'bricks: -1', 'bricks: 10001'])(
    'is told so once where a field that may be left out is wrong (%s)',
    (field) => {
      const board = withPolicy(`${headroom}, chains: allow, ${field}`);
      expectToldOnce({ board }, `policy.${field.split(':')[0] ?? ''}`);
    },
  );

  it('needs headroom and chains', () => {
    expectFault(
      { board: withPolicy('chains: allow').replace('{chains', '‸{chains') },
      'policy.headroom',
      'missing',
      'Add',
    );
    expectFault({ board: withPolicy(headroom).replace('{headroom', '‸{headroom') }, 'policy.chains', 'missing', 'Add');
    expectFault({ board: boardText({ board: '‸board: B', policy: '' }) }, 'policy', 'missing', 'Add `policy`');
  });

  it('keeps headroom at 1 or above, and a guess, too', () => {
    for (const factor of ['alone', 'chained', 'supply']) {
      const board = withPolicy(`${headroom}, chains: allow`).replace(
        new RegExp(`${factor}: [\\d.]+`),
        `${factor}: ‸0.999`,
      );
      expectFault({ board }, `policy.headroom.${factor}`, ['0.999', 'from 1 to 100'], 'Write a factor');
    }
    const board = withPolicy(`${headroom}, chains: allow, guess: ‸0.5`);
    expectFault({ board }, 'policy.guess', ['0.5', 'from 1 to 100'], 'Write a factor');
  });
});

describe('guess', () => {
  const guessed = '{name: Mystery, volts: 9, milliamps: 1, figure: guess}';
  it('is needed when a figure is a guess', () => {
    const board = withPolicy(`${headroom}, chains: allow`, guessed).replace('{headroom', '‸{headroom');
    expectFault({ board }, 'policy.guess', ['missing', '"Mystery" is a guess'], '`guess: 1.5`');
    expect(resolved(`${headroom}, chains: allow, guess: 1.25`, guessed).guess).toEqual({
      numerator: 5,
      denominator: 4,
    });
    expectRefused({ board: withPolicy(`${headroom}, chains: allow`, guessed) }, 'policy.guess');
  });

  it('that is wrong is not asked for a second time', () => {
    expectToldOnce({ board: withPolicy(`${headroom}, chains: allow, guess: 0.5`, guessed) }, 'policy.guess');
  });

  it('is needed, too, when the pedal has no name yet', () => {
    const board = withPolicy(`${headroom}, chains: allow`, guessed.replace('name: Mystery', 'id: mystery'));
    const faults = faultsOf(board);
    expect(faults.map(({ key }) => key)).toEqual(['policy.guess', 'pedals[0].name']);
    expect(faults[0]?.message).toContain('the draw of a pedal is a guess');
  });
});

describe('the noise price', () => {
  it.each([
    ['a digital and a high-gain pedal', `${highGain}, ${digital}`],
    ['a digital pedal beside one that is both', `${both}, ${digital}`],
    ['two pedals that are both', `${both}, ${both.replace('Amp', 'Other')}`],
  ])('is needed for %s', (_what, pedals) => {
    const board = withPolicy(`${headroom}, chains: allow`, pedals).replace('{headroom', '‸{headroom');
    expectFault({ board }, 'policy.noisePrice', ['missing', 'is digital and', 'is high-gain'], '`noisePrice: 20`');
  });

  it('is taken where it is stated, needed or not', () => {
    const stated = `${headroom}, chains: allow, noisePrice: 12.5`;
    expect(resolved(stated, `${highGain}, ${digital}`).noisePrice).toBe(1250);
    expect(resolved(stated).noisePrice).toBe(1250);
  });

  it('that is wrong or missing is told once', () => {
    const needy = `${highGain}, ${digital}`;
    expectRefused({ board: withPolicy(`${headroom}, chains: allow`, needy) }, 'policy.noisePrice');
    expectRefused({ board: withPolicy(`${headroom}, chains: allow, noisePrice: -1`, needy) }, 'policy.noisePrice');
    expectRefused({ board: withPolicy(`${headroom}, chains: allow, noisePrice: 1.005`, needy) }, 'policy.noisePrice');
  });

  it('is asked for once, however many pedals disturb others', () => {
    const needy = [highGain, digital, digital.replace('Delay', 'Echo'), both].join(', ');
    expectRefused({ board: withPolicy(`${headroom}, chains: allow`, needy) }, 'policy.noisePrice');
  });

  it.each([
    ['digital pedals only', digital],
    ['several digital pedals', `${digital}, ${digital.replace('Delay', 'Looper')}`],
    ['several high-gain pedals', `${highGain}, ${highGain.replace('Fuzz', 'Drive')}`],
    ['a digital pedal beside an ordinary one', `${digital}, {name: Boost, volts: 9, milliamps: 1}`],
    ['a high-gain pedal beside an ordinary one', `${highGain}, {name: Boost, volts: 9, milliamps: 1}`],
    ['high-gain pedals only', highGain],
    ['one pedal that is both, which does not expose itself', both],
  ])('is 0 for %s', (_what, pedals) => {
    expect(resolved(`${headroom}, chains: allow`, pedals).noisePrice).toBe(0);
  });

  it('and a guess that both lack are told both', () => {
    const board = withPolicy(`${headroom}, chains: allow`, `${digital}, ${highGain.replace('}', ', figure: guess}')}`);
    expect(() => readOf(board)).toThrow(/policy\.guess[^]*policy\.noisePrice/);
  });
});
