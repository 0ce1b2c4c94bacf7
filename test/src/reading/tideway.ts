import { nothingMoreStated } from '../../../src/domain/pedal.js';

const wholeAssumption = { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' };
const plainPedal = {
  ...nothingMoreStated,
  power: 'DC',
  polarity: 'centre-negative',
  inlet: 'barrel-2.1',
  ground: 'negative',
  accepts: { kind: 'listed', millivolts: [9000] },
  assumed: wholeAssumption,
};
const euro = { code: 'EUR', decimals: 2 };

/** What the board is in the domain, worked out by hand. */
export const expectedBoard = {
  name: 'Tideway four-piece',
  currency: euro,
  policy: {
    headroom: {
      alone: { numerator: 6, denominator: 5 },
      chained: { numerator: 2, denominator: 1 },
      supply: { numerator: 6, denominator: 5 },
    },
    guess: { numerator: 3, denominator: 2 },
    chains: 'allow',
    noisePrice: 2000,
    supplyPrice: 0,
    mains: [230_000],
    runtime: null,
    batteries: null,
    sockets: 4,
    budget: 25_000,
    bricks: 2,
  },
  pedals: [
    {
      ...plainPedal,
      id: 'estuary-echo',
      name: 'Estuary echo',
      draw: { kind: 'flat', microamps: 180_000 },
      startup: 350_000,
      figure: 'label',
      digital: true,
    },
    {
      ...plainPedal,
      id: 'tarn-fuzz',
      name: 'Tarn fuzz',
      draw: { kind: 'flat', microamps: 4000 },
      ground: 'positive',
      figure: 'measured',
      highGain: true,
      assumed: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1' },
    },
    {
      ...plainPedal,
      id: 'chapel-drive',
      name: 'Chapel drive',
      accepts: { kind: 'listed', millivolts: [9000, 18_000] },
      draw: { kind: 'flat', microamps: 15_000 },
      prefers: 18_000,
      survives: 20_000,
      figure: 'label',
      highGain: true,
      alone: true,
    },
  ],
  gear: { supplies: [], parts: [] },
  owned: { supplies: new Map([['quay-6', 1]]), parts: new Map([['flip', 1]]) },
  inlets: [],
  wiring: [
    {
      pedal: 'estuary-echo',
      supply: 'quay-6',
      unit: 1,
      outputs: [5],
      millivolts: 9000,
      join: null,
      chain: null,
      adapters: [],
    },
  ],
};

const plainBank = {
  isolated: true,
  power: 'DC',
  plug: 'barrel-2.1',
  polarity: 'centre-negative',
  switching: 'each',
  joins: [],
  total: null,
};
const plainPart = { stock: null, fits: 'barrel-2.1', gives: 'barrel-2.1', reverses: false };

/** What the catalogue is in the domain, worked out by hand. */
export const expectedCatalogue = {
  name: 'Marram Street shop',
  currency: euro,
  supplies: [
    {
      id: 'quay-6',
      name: 'Quay 6',
      price: 11_900,
      stock: 3,
      source: { kind: 'mains', volts: { from: 100_000, to: 240_000 } },
      total: { kind: 'current', microamps: 1_800_000 },
      banks: [
        {
          ...plainBank,
          firstOutput: 1,
          outputs: 4,
          settings: [{ millivolts: 9000, rating: 100_000, openCircuit: null }],
        },
        {
          ...plainBank,
          firstOutput: 5,
          outputs: 2,
          settings: [
            { millivolts: 9000, rating: 400_000, openCircuit: null },
            { millivolts: 12_000, rating: 300_000, openCircuit: null },
            { millivolts: 18_000, rating: 200_000, openCircuit: null },
          ],
          joins: ['series'],
        },
      ],
      assumed: {},
    },
  ],
  parts: [
    { ...plainPart, id: 'flip', name: 'Reversing lead', price: 400, reverses: true, role: { kind: 'adapter' } },
    { ...plainPart, id: 'mini', name: 'Jack-plug lead', price: 500, gives: 'jack-3.5', role: { kind: 'adapter' } },
    { ...plainPart, id: 'fan-5', name: 'Five-way chain', price: 800, role: { kind: 'chain', tails: 5 } },
    { ...plainPart, id: 'stack', name: 'Series lead', price: 900, role: { kind: 'join', mode: 'series' } },
  ],
};
