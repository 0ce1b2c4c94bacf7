import { startingPolicyLines } from './starting-policy.js';
import { schemaLines } from './new-files.js';

/**
 * A board to fill in. It holds no pedal: what stands in comments is an example, so that no figure is taken for one that
 * somebody has read.
 */
export const boardTemplate: string = [
  ...schemaLines('board'),
  'board: My board',
  'currency: EUR                   # ISO 4217; the catalogue must use the same',
  '',
  '# Taken for every pedal that does not say otherwise; each use is listed in the result, to be confirmed. Take off the #',
  '# of this line only for what you know to be so.',
  '# assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}',
  '',
  ...startingPolicyLines,
  '',
  '# One entry a pedal. Copy the example, take off its #, and write what the label or the manual of the pedal says; for',
  '# power, polarity, inlet, ground, volts and milliamps write unknown where nobody has read it yet.',
  'pedals:',
  '  # - name: Example delay',
  '  #   power: DC                 # DC or AC, beside the volts: DC is a straight line over a dashed one, AC a wave',
  '  #   polarity: centre-negative # the sign with + and -: which one leads to the dot? centre-negative | centre-positive',
  '  #   inlet: barrel-2.1         # the plug that fits: barrel-2.1 | barrel-2.5 | jack-3.5 | a name of your own',
  '  #   ground: negative          # negative | positive, for some old fuzz circuits',
  '  #   volts: 9                  # 9 | [9, 12, 18] | {from: 9, to: 18}',
  '  #   milliamps: 300            # 0.3 A are 300 mA; 2.7 W at 9 V are 300 mA',
  '  #   circuit: digital-delay    # its kind, needed where milliamps are unknown; boardfeed schema board lists the kinds',
  '  #   figure: label             # where that was read: label | manual | measured | guess',
  '  #   startup: 450              # mA at the moment of switching on, where the maker states it',
  '  #   digital: true             # holds a digital circuit',
  '  #   highGain: true            # amplifies a lot, and noise with it',
  '  #   alone: true               # the maker asks for an output of its own',
  '',
].join('\n');

/** A catalogue to fill in, in the same way. */
export const catalogueTemplate: string = [
  ...schemaLines('catalogue'),
  'catalogue: My shop',
  'currency: EUR                   # ISO 4217; a board that shops here must use the same',
  '',
  '# One entry a supply. Copy the example, take off its #, and write what the label or the data sheet says.',
  'supplies:',
  '  # - name: Example brick',
  '  #   price: 119.00',
  '  #   stock: 3                  # how many can be bought; no limit when left out',
  '  #   mains: {from: 100, to: 240} # the mains volts it accepts, or one number',
  '  #   regulated: true           # it holds its volts whatever the load; false needs openCircuitVolts on each setting',
  '  #   total: {milliamps: 1800}  # or {watts: 18}: the most of all outputs together, where the maker states it',
  '  #   banks:                    # outputs that are alike, numbered 1, 2, 3 … through the banks in order',
  '  #     - outputs: 4',
  '  #       isolated: true        # each output has a ground of its own',
  '  #       power: DC',
  '  #       plug: barrel-2.1      # what its own straight lead offers a pedal',
  '  #       polarity: centre-negative # or centre-positive, or either for outputs with a polarity switch',
  '  #       switch: each          # needed with several settings: each output by itself, or all together',
  '  #       settings: [{volts: 9, milliamps: 400}, {volts: 12, milliamps: 300}]',
  '  #       joins: [series]       # how its maker allows two outputs to be joined: series, parallel, both',
  '',
  '# One entry a lead.',
  'parts:',
  '  # - {name: Reversing lead, price: 4, fits: barrel-2.1, gives: barrel-2.1, reverses: true}',
  '  # - {name: Jack-plug lead, price: 5, fits: barrel-2.1, gives: jack-3.5}',
  '  # - {name: Five-way chain, price: 8, fits: barrel-2.1, gives: barrel-2.1, tails: 5}',
  '  # - {name: Series lead, price: 9, fits: barrel-2.1, gives: barrel-2.1, joins: series}',
  '',
].join('\n');
