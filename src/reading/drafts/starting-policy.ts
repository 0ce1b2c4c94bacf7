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
];

/** The same as data. */
export const startingPolicy = (): unknown =>
  (parse(startingPolicyLines.join('\n')) as { readonly policy: unknown }).policy;
