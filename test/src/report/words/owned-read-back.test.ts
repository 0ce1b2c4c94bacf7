import { expect, test } from 'vitest';

import { ownedLine } from '../../../../src/reading/typed/owned-line.js';
import { ownedReadBack } from '../../../../src/report/words/owned-read-back.js';

const taken = 'Where you did not say its plug it is taken to be 2.1 mm barrel; else write 3.5 mm jack.';

test.each<[string, readonly string[]]>([
  ['2 x chain of two', ['2 × chain of two: a chain lead for 2 pedals, 2.1 mm barrel at every end.', taken]],
  ['reversing lead jack-3.5', ['reversing lead jack-3.5: swaps plus and minus, 3.5 mm jack at every end.']],
  [
    'adapter 2.1 mm barrel to 3.5 mm jack',
    ['adapter 2.1 mm barrel to 3.5 mm jack: from 2.1 mm barrel to 3.5 mm jack.'],
  ],
  ['series lead', ['series lead: joins two outputs in series, 2.1 mm barrel at every end.', taken]],
  ['9v block', ['9 V block 500 mAh: 9 V each, as such batteries usually hold; else write what stands on it.']],
  ['12 x AA 2100 mAh', ['12 × AA 2100 mAh: 1.5 V each.']],
  [
    'Step 9v 300 neg barrel-2.1 regulated, fed from 5v 900 pos usb-a',
    ['Step: 1 output of 9 V 300 mA, fed from 5 V DC 900 mA, centre-positive (plus on the pin), USB-A.'],
  ],
])('%s', (text, words) => {
  expect(ownedReadBack(ownedLine(text))).toEqual(words);
});

test('what is not clear is told as it is', () => {
  expect(ownedReadBack(ownedLine('daisy chain'))).toEqual([
    'Write how many pedals the chain feeds, such as chain of 5.',
  ]);
});
