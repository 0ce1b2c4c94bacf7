/** What programs are promised of the tideway board, key by key in this order. */

/** A pedal on an output of Quay 6 by a straight lead; its number in the order of hooking up where there is one. */
export const promisedFeed = (
  pedal: string,
  output: number,
  { volts = 9, lead }: { volts?: number; lead?: number },
) => ({
  pedal,
  supply: 'quay-6',
  unit: 1,
  outputs: [output],
  volts,
  polarity: 'centre-negative',
  join: null,
  chain: null,
  parts: [],
  settings: [volts],
  kept: null,
  source: 'output',
  ...(lead === undefined ? {} : { lead }),
});

const assumed = { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' };

export const promisedConfirm = [
  { pedal: 'estuary-echo', assumed },
  { pedal: 'tarn-fuzz', assumed: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1' } },
  { pedal: 'chapel-drive', assumed },
];
