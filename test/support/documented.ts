/** A board and a catalogue that use nearly every field, with comments as people write them. */
export const tidewayBoard = `board: Tideway four-piece
currency: EUR                  # ISO 4217; the catalogue must use the same
assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}
policy:
  headroom: {alone: 1.2, chained: 2, supply: 1.2}   # never below 1
  guess: 1.5                   # multiplies a draw whose figure is \`guess\`
  chains: allow                # allow | never
  noisePrice: 20               # money that one exposed pedal counts for
  mains: 230                   # volts at the venue; optional
  sockets: 4                   # mains sockets at hand; optional
  budget: 250                  # optional hard cap on what is bought
  bricks: 2                    # optional hard cap on supplies in use
pedals:
  - name: Estuary echo         # \`id\` optional, else made from the name; ids are unique
    volts: 9                   # 9 | [9, 12, 18] | {from: 9, to: 18}
    milliamps: 180             # or per voltage: {9: 300, 12: 230}: then only those volts are accepted
    startup: 350               # optional: mA for the moment of switching on
    figure: label              # label | manual | measured | guess
    digital: true
  - {name: Tarn fuzz, volts: 9, milliamps: 4, ground: positive, highGain: true, figure: measured}
  - {name: Chapel drive, volts: [9, 18], prefers: 18, maxVolts: 20, milliamps: 15, highGain: true, alone: true}
gear: {supplies: [], parts: []}  # optional: owned things that no catalogue lists, described as there; not for sale
owned:
  supplies: [quay-6]           # one entry a unit, by id
  parts: {flip: 1}
wiring:                        # how it is plugged today, for \`check\` and \`rewire\`
  - {pedal: estuary-echo, supply: quay-6, unit: 1, output: 5, volts: 9, parts: []}
`;

export const marramCatalogue = `catalogue: Marram Street shop
currency: EUR
supplies:
  - id: quay-6
    name: Quay 6
    price: 119.00
    stock: 3                   # optional; no limit when absent
    mains: {from: 100, to: 240}
    regulated: true            # false needs openCircuitVolts on each setting
    total: {milliamps: 1800}   # or {watts: 18}; optional
    banks:                     # outputs are numbered 1, 2, 3 … through the banks in order
      - {outputs: 4, isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative,
         settings: [{volts: 9, milliamps: 100}]}
      - {outputs: 2, isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative, switch: each,
         settings: [{volts: 9, milliamps: 400}, {volts: 12, milliamps: 300}, {volts: 18, milliamps: 200}],
         joins: [series]}      # what its maker allows: series, parallel, both, or absent
parts:
  - {id: flip,  name: Reversing lead,   price: 4, fits: barrel-2.1, gives: barrel-2.1, reverses: true}
  - {id: mini,  name: Jack-plug lead,   price: 5, fits: barrel-2.1, gives: jack-3.5}
  - {id: fan-5, name: Five-way chain,   price: 8, fits: barrel-2.1, gives: barrel-2.1, tails: 5}
  - {id: stack, name: Series lead,      price: 9, fits: barrel-2.1, gives: barrel-2.1, joins: series}
`;
