import { parse } from 'yaml';

/**
 * The policy that a new board begins with, to be read and changed by its owner: it stands in the file with what each value
 * means. Nothing takes it by itself.
 */
export const startingPolicyLines: readonly string[] = [
  'policy:                         # starting values: read them before you rely on a plan',
  '  headroom:                     # rated output over planned load; never below 1',
  '    alone: 1.2                  # one pedal on an output: 100 mA needs an output of 120 mA',
  '    chained: 2                  # several pedals on one output',
  '    supply: 1.2                 # a whole supply, where it states a total',
  '  guess: 1.5                    # multiplies a draw whose figure is `guess`',
  '  chains: allow                 # may several pedals hang on one output? allow | never',
  "  noisePrice: 20                # money, in the file's currency, that one pedal exposed to digital noise counts for",
  '  # mains: 230                  # volts at the venue: states which supplies may be used there',
  '  # sockets: 4                  # mains sockets at hand',
  '  # budget: 150                 # the most that may be spent',
  '  # bricks: 2                   # the most supplies in use',
  '  # runtime: {hours: 4, usable: 0.8}    # hours a power bank must last; the share of its watt-hours that arrives',
  '  # batteries: {change: 8, pay: 100}    # hours a set must last; hours of playing whose sets are paid for',
];

/** The same as data. */
export const startingPolicy = (): unknown =>
  (parse(startingPolicyLines.join('\n')) as { readonly policy: unknown }).policy;

/** What a board says that has power banks: how long they must last, and the share of their watt-hours that arrives. */
export const startingRuntime = { hours: 4, usable: 0.8 } as const;

/** What a board says that has batteries: how long a set must last, and the hours of playing whose sets are paid for. */
export const startingBatteries = { change: 8, pay: 100 } as const;
