import { expect, test } from 'vitest';

import { inputsFromText } from '../../../../src/core.js';
import { supplyId, type Millivolts } from '../../../../src/domain/quantities.js';
import { chooseAround } from '../../../../src/planning/choose/choose-around.js';
import { toldAnswer } from '../../../../src/web/worker/told-answer.js';

const boardWith = (pedals: readonly string[]): string => `board: Box
currency: EUR
assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}
policy: {headroom: {alone: 1.2, chained: 2, supply: 1.2}, guess: 1.5, chains: allow, noisePrice: 20}
pedals:
${pedals.map((name) => `  - {name: ${name}, volts: 9, milliamps: 5}`).join('\n')}
gear:
  supplies:
    - {name: Old box, regulated: true, banks: [{outputs: 4, isolated: true, power: DC, plug: barrel-2.1,
       polarity: centre-negative, settings: [{volts: 9, milliamps: 150}]}]}
owned: {supplies: [old-box]}
`;

/** What is told of pedals that were put on these outputs, in the order of the board. */
async function toldOf(names: readonly string[], outputs: readonly number[]) {
  const text = boardWith(names);
  const read = inputsFromText({ file: 'board.yaml', text }, null);
  if (read.kind === 'faulty') throw new Error('the board is right');
  const kit = read.value;
  const pins = kit.board.pedals.map(({ id }, at) => {
    const place = { supply: supplyId('old-box'), unit: 1, outputs: outputs.slice(at, at + 1) };
    return { ...place, pedal: id, asked: id, millivolts: 9000 as Millivolts };
  });
  return toldAnswer(kit, await chooseAround(kit, pins), pins);
}

test('two pedals on one output without a chain lead: what is missing is said, and that it may be owned', async () => {
  expect(await toldOf(['Teal boost', 'Wigeon octave'], [2, 2])).toMatchObject({
    kind: 'none',
    lead: 'No plan keeps every pedal where you put it.',
    passages: [
      {
        title: 'What is in the way',
        entries: [
          {
            text:
              'Teal boost and Wigeon octave share output 2 of Old box (unit 1) without a chain lead. Give the pedals ' +
              'outputs of their own, or one chain lead that fits and has a tail for each. If you have a chain lead for ' +
              '2 pedals, add it to what you own.',
          },
        ],
      },
    ],
    letGo: [{ name: 'Teal boost' }, { name: 'Wigeon octave' }],
  });
});

test('where letting go of one is not enough, all that was put by hand is there to be let go of', async () => {
  const names = ['Teal boost', 'Wigeon octave', 'Gorse drive', 'Linnet chorus'];
  expect(await toldOf(names, [2, 2, 1, 1])).toMatchObject({
    passages: [{ entries: [{}, {}] }],
    letGo: names.map((name) => ({ name })),
  });
});
