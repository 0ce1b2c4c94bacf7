import { describe, expect, it } from 'vitest';

import { parseOptions, type Options } from '../../bench/options.js';

const everyProfile = ['none', 'adapters', 'all'];
const firstSeeds = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index + 1);

function optionsOf(...args: readonly string[]): Options {
  const parsed = parseOptions(args);
  if (parsed.kind !== 'options') throw new Error(JSON.stringify(parsed));
  return parsed.options;
}

/** Each size as pedals, supplies, number of seeds, and cap in seconds. */
const plan = ({ sizes }: Options) =>
  sizes.map(({ pedals, supplies, seeds, capMs }) => [pedals, supplies, seeds.length, capMs / 1000]);

describe('parseOptions', () => {
  it('measures everything when nothing is said', () => {
    const options = optionsOf();
    expect({ ...options, sizes: plan(options) }).toEqual({
      mode: 'usual',
      sizes: [
        [6, 6, 5, 60],
        [12, 40, 5, 60],
        [20, 100, 5, 60],
        [30, 200, 5, 60],
        [60, 300, 5, 120],
      ],
      chains: everyProfile,
      engines: ['loadouts', 'HiGHS'],
      runs: 5,
      chart: 'bench/growth.svg',
    });
    expect(options.sizes.map(({ seeds }) => seeds)).toEqual(options.sizes.map(() => firstSeeds(5)));
  });

  it('takes what is said', () => {
    const args = ['--sizes', '12x40', '--chains', 'all', '--seeds', '3..4', '--seconds', '2', '--engines', 'HiGHS'];
    expect(optionsOf(...args, '--runs', '0')).toEqual({
      mode: 'usual',
      sizes: [{ pedals: 12, supplies: 40, seeds: [3, 4], capMs: 2000 }],
      chains: ['all'],
      engines: ['HiGHS'],
      runs: 0,
      chart: 'bench/growth.svg',
    });
  });

  it('looks for the worst case among many seeds', () => {
    const options = optionsOf('--worst');
    expect([options.mode, options.chains, plan(options)]).toEqual([
      'worst',
      everyProfile,
      [
        [12, 40, 50, 120],
        [30, 200, 10, 120],
      ],
    ]);
    expect(plan(optionsOf('--worst', '--seeds', '3', '--seconds', '9', '--sizes', '6x6'))).toEqual([[6, 6, 3, 9]]);
  });

  it('lets pedals and supply models grow by turns', () => {
    const options = optionsOf('--growth', '--chart', 'somewhere.svg');
    expect([options.mode, options.chains, options.chart]).toEqual(['growth', ['adapters'], 'somewhere.svg']);
    const measured = plan(options);
    expect(measured.filter(([, supplies]) => supplies === 100)).toHaveLength(6);
    expect(measured.filter(([pedals]) => pedals === 20)).toHaveLength(5);
    expect(new Set(measured.map(([, , seeds, seconds]) => `${seeds} seeds, ${seconds} s`))).toEqual(
      new Set(['5 seeds, 20 s']),
    );
  });

  it('weighs one instance of each kind', () => {
    const options = optionsOf('--memory');
    expect([options.mode, plan(options).map(([, , seeds]) => seeds)]).toEqual(['memory', [1, 1, 1, 1, 1]]);
  });

  it('knows when help is wanted', () => {
    expect(parseOptions(['--help', '--worst'])).toEqual({ kind: 'help' });
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

  it.each([
    [['--worst', '--growth'], '--worst and --growth are two runs, not one'],
    [['--memory', '--runs', '3'], '--runs means nothing with --memory'],
    [['--memory', '--engines', 'loadouts-alone'], '--engines takes loadouts, HiGHS, not'],
    [['--worst', '--chart', 'x.svg'], '--chart goes with --growth only'],
    [['--growth', '--sizes', '6x6,12x40,12x6'], '--growth takes --sizes of which at least three share'],
  ])('refuses %s together', (args, message) => {
    const parsed = parseOptions(args);
    expect(parsed.kind === 'wrong' && parsed.message).toContain(message);
  });
});
