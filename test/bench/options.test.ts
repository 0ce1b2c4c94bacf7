import { describe, expect, it } from 'vitest';

import { parseOptions } from '../../bench/options.js';

describe('parseOptions', () => {
  it('measures everything when nothing is said', () => {
    expect(parseOptions([])).toEqual({
      kind: 'options',
      options: {
        sizes: [
          { pedals: 6, supplies: 6 },
          { pedals: 12, supplies: 40 },
          { pedals: 20, supplies: 100 },
          { pedals: 30, supplies: 200 },
        ],
        chains: ['none', 'adapters', 'all'],
        seeds: [1, 2, 3, 4, 5],
        capMs: 60_000,
        engines: ['loadouts', 'HiGHS'],
        runs: 5,
      },
    });
  });

  it('takes what is said', () => {
    const args = ['--sizes', '12x40', '--chains', 'all', '--seeds', '3..4', '--seconds', '2', '--engines', 'HiGHS'];
    expect(parseOptions([...args, '--runs', '0'])).toEqual({
      kind: 'options',
      options: {
        sizes: [{ pedals: 12, supplies: 40 }],
        chains: ['all'],
        seeds: [3, 4],
        capMs: 2000,
        engines: ['HiGHS'],
        runs: 0,
      },
    });
  });

  it.each([
    ['--sizes', '6'],
    ['--sizes', '6x6x6'],
    ['--sizes', '6x5'],
    ['--sizes', 'sixxsix'],
    ['--sizes', ''],
    ['--chains', 'some'],
    ['--seeds', '0'],
    ['--seeds', '4..3'],
    ['--seeds', '1.5'],
    ['--seconds', '0'],
    ['--seconds', '-1'],
    ['--engines', 'highs'],
    ['--runs', 'many'],
    ['--size', '6x6'],
  ])('refuses %s %s', (flag, value) => {
    const parsed = parseOptions([`${flag}=${value}`]);
    expect(parsed.kind).toBe('wrong');
    expect(parsed.kind === 'wrong' && parsed.message).toContain(flag);
  });
});
