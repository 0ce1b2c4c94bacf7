import { describe, expect, it } from 'vitest';

import { boardText, expectFault, readOf } from '../files/texts.js';

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
      mains: null,
      sockets: null,
      budget: null,
      bricks: null,
    });
  });

  it('needs headroom and chains', () => {
    expectFault(
      { board: withPolicy('chains: allow').replace('{chains', '‸{chains') },
      'policy.headroom',
      ['missing'],
      'Add',
    );
    expectFault(
      { board: withPolicy(headroom).replace('{headroom', '‸{headroom') },
      'policy.chains',
      ['missing'],
      'Add',
    );
    expectFault({ board: boardText({ board: '‸board: B', policy: '' }) }, 'policy', ['missing'], 'Add `policy`');
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

  it.each([
    ['digital pedals only', digital],
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
