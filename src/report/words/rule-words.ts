import type { Rule } from '../../domain/rules.js';

/** What breaking a rule does, and what to do about it: a sentence each. */
export type RuleWords = { readonly harm: string; readonly mend: string };

/** For how a board is plugged today; words that hold for every place in which a rule can be broken. */
export const ruleWords: Readonly<Record<Rule, RuleWords>> = {
  mains: {
    harm: 'A supply on mains volts that it is not made for can burn, or give far too many volts.',
    mend: 'Do not switch it on here; use a supply that states these mains volts.',
  },
  power: {
    harm: 'AC destroys a DC pedal, and an AC pedal does not run on DC.',
    mend: "Pull this plug first; use an output of the pedal's own kind.",
  },
  polarity: {
    harm: 'Plus for minus destroys a pedal.',
    mend: 'Pull this plug first; add or take out a reversing lead, or use an output of its polarity.',
  },
  voltage: {
    harm: 'Too many volts destroy a pedal.',
    mend: 'Pull this plug first; use an output at volts that it accepts.',
  },
  setting: {
    harm: 'One of them gets volts that it does not count on, and too many destroy it.',
    mend: 'Pull these plugs first; move one to an output that is switched by itself.',
  },
  ground: {
    harm: 'Audio leads tie the grounds together: this is a short circuit.',
    mend: 'Pull these plugs first; give the odd one out an isolated output of its own.',
  },
  join: {
    harm: 'Outputs joined in a way that their maker rules out can damage the supply and the pedal.',
    mend: 'Take the join apart; join only what the maker allows, with its lead, for one pedal.',
  },
  total: {
    harm: 'The supply gets hot, and switches off or fails.',
    mend: 'Move pedals to another supply.',
  },
  current: {
    harm: 'The output gets hot, sags or cuts out.',
    mend: 'Move it to a stronger output at its volts, or take pedals off this one.',
  },
  startup: {
    harm: 'It may not start, and drag down what shares its output.',
    mend: 'Move it to an output that stands the current of switching on.',
  },
  chain: {
    harm: 'Such a chain hums, or cannot be plugged at all.',
    mend: 'Give the pedals outputs of their own, or one chain lead that fits and has a tail for each.',
  },
  plug: {
    harm: 'It cannot be plugged in like that.',
    mend: 'Find adapters that lead from this plug to its inlet, two at most.',
  },
  stock: {
    harm: 'Not all of this is there.',
    mend: 'Correct `owned` in the board file, or get what is missing.',
  },
  limit: {
    harm: 'This is more than the policy of the board allows.',
    mend: 'Use less, or correct the `policy` in the board file.',
  },
};

/** For a pedal that gets less than the least that it accepts. */
export const tooFewVolts: RuleWords = {
  harm: 'With too few volts it works badly or not at all.',
  mend: 'Move it to an output at volts that it accepts.',
};
