import { hasTooFewVolts, type Violation } from '../../domain/violation.js';
import type { Rule } from '../../domain/rules.js';

/** For how a board is plugged today: what breaking a rule does, and what to do about it. A sentence each. */
type BrokenWords = { readonly harm: string; readonly mend: string };

/** Words that hold for every place in which a rule can be broken. */
type RuleWords = BrokenWords & {
  /** What to look for where the rule refuses a pedal every output: "find …". */
  readonly look: string;
};

export const ruleWords: Readonly<Record<Rule, RuleWords>> = {
  mains: {
    harm: 'A supply on mains volts that it is not made for can burn, or give far too many volts.',
    mend: 'Do not switch it on here; use a supply that states these mains volts.',
    look: 'find a supply that states your mains volts',
  },
  inlet: {
    harm: 'A supply on an output that is wrong for it fails, and may take with it what hangs on it.',
    mend: 'Pull its plug first; hang its inlet alone on an output of its volts and milliamps, of a supply on the mains or of a power bank.',
    look: 'find a supply that stands on the mains by itself, or one with an output that can feed the inlet',
  },
  power: {
    harm: 'AC destroys a DC pedal, and an AC pedal does not run on DC.',
    mend: "Pull this plug first; use an output of the pedal's own kind.",
    look: 'find a supply of its own kind, AC for an AC pedal and DC for a DC pedal',
  },
  polarity: {
    harm: 'Plus for minus destroys a pedal.',
    mend: 'Pull this plug first; add or take out a reversing lead, or use an output of its polarity.',
    look: 'find a reversing lead that fits, or an output with a polarity switch',
  },
  voltage: {
    harm: 'Too many volts destroy a pedal.',
    mend: 'Pull this plug first; use an output at volts that it accepts.',
    look: 'find a supply with an output at its volts; no lead can make up for wrong volts',
  },
  setting: {
    harm: 'One of them gets volts that it does not count on, and too many destroy it.',
    mend: 'Pull these plugs first; move one to an output that is switched by itself.',
    look: 'find a supply whose outputs are switched one by one',
  },
  ground: {
    harm: 'Audio leads tie the grounds together: this is a short circuit.',
    mend: 'Pull these plugs first; give the odd one out an isolated output of its own.',
    look: 'find a supply with an isolated output to spare',
  },
  join: {
    harm: 'Outputs joined in a way that their maker rules out can damage the supply and the pedal.',
    mend: 'Take the join apart; join only what the maker allows, with its lead, for one pedal.',
    look: 'find a supply whose maker allows the join, with the right lead',
  },
  total: {
    harm: 'The supply gets hot, and switches off or fails.',
    mend: 'Move pedals to another supply.',
    look: 'find a supply with a higher total, or spread the pedals over more supplies',
  },
  current: {
    harm: 'The output gets hot, sags or cuts out.',
    mend: 'Move it to a stronger output at its volts, or take pedals off this one.',
    look: 'find a supply with a stronger output at its volts',
  },
  startup: {
    harm: 'Pedals may not start, and drag down what shares the output or the supply.',
    mend: 'Move pedals to an output or a supply that stands the current of switching on.',
    look: 'find a supply that stands the current of switching on',
  },
  runtime: {
    harm: 'The power bank is empty before the time is over, and its pedals go silent.',
    mend: 'Take pedals off it, or use a bank with more watt-hours or a supply on the mains.',
    look: 'find a power bank with more watt-hours, or a supply on the mains',
  },
  battery: {
    harm: 'The battery does not suit the pedal, or is empty too soon.',
    mend: 'Use a battery of the type and volts that it takes, or an output.',
    look: 'find a battery that it takes and that lasts, or an output',
  },
  chain: {
    harm: 'Such a chain hums, or cannot be plugged at all.',
    mend: 'Give the pedals outputs of their own, or one chain lead that fits and has a tail for each.',
    look: 'find an output of its own, or a chain lead with more tails',
  },
  plug: {
    harm: 'It cannot be plugged in like that.',
    mend: 'Find adapters that lead from this plug to its inlet, two at most.',
    look: 'find an adapter lead that ends in its inlet',
  },
  stock: {
    harm: 'Not all of this is among what you own.',
    mend: 'If you have it, add it to what you own; else get what is missing.',
    look: 'wait for stock, or look at another shop',
  },
  limit: {
    harm: 'This is more than the policy of the board allows.',
    mend: 'Use less, or have the board allow more.',
    look: 'raise the limit that stands in the way',
  },
};

/** For a pedal that gets less than the least that it accepts. */
export const tooFewVolts: BrokenWords = {
  harm: 'With too few volts it works badly or not at all.',
  mend: 'Move it to an output at volts that it accepts.',
};

/** What to do, for those who have no files. */
export function mendAtHome(finding: Violation): string {
  if (finding.rule === 'stock') return 'Get what is missing, or do without it.';
  if (finding.rule === 'limit') return 'Use less.';
  return (hasTooFewVolts(finding) ? tooFewVolts : ruleWords[finding.rule]).mend;
}
