import type { LineWords } from '../board/line-help.js';

/** What can stand on the line for what is owned, each with what it says; the examples can be typed as they are. */
export const ownedWords: LineWords = [
  {
    examples: ['wall adapter 9v 500', 'old box 6 isolated 9v 150, 2 isolated 9/12/18v 300/250/150, total 1500'],
    says: 'a supply: how many outputs are alike, and what one of them gives',
  },
  { examples: ['travel bank 74 Wh 2 isolated 9v 500'], says: 'a power bank, with what it holds' },
  {
    examples: ['converter 9v 300, fed from 5 V 900 mA pos usb-a'],
    says: 'a supply that hangs on another one, and what its inlet takes',
  },
  { examples: ['chain of 5', '2 x chain of two'], says: 'daisy chains, for how many pedals each' },
  {
    examples: ['reversing lead', 'adapter 2.1 mm barrel to 3.5 mm jack'],
    says: 'leads that swap plus and minus, or lead to another plug',
  },
  { examples: ['2 x 9v block', '12 x AA 2000 mAh'], says: 'batteries' },
];
