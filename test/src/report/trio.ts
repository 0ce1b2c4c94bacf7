import { bankOf, boardOf, catalogueOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';

const nine = [settingOf(9, 300)];

/** A digital pedal and two high-gain ones; four outputs on one ground, four apart, and single ones. */
export const trio = {
  board: boardOf(
    [
      pedalOf('echo', 200, { digital: true }),
      pedalOf('fuzz', 5, { highGain: true }),
      pedalOf('drive', 10, { highGain: true }),
    ],
    { name: 'Trio' },
  ),
  shop: catalogueOf([
    supplyOf('raft', 30, [bankOf(4, nine, { isolated: false })]),
    supplyOf('quay', 90, [bankOf(4, nine)]),
    supplyOf('dory', 12, [bankOf(1, nine)]),
  ]),
};
