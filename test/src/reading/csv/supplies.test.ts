import { describe, expect, it } from 'vitest';

import { mark } from '../texts.js';
import { expectFault, readShop, shopTable } from './tables.js';

const shopHeader = 'id,name,price,stock,mains,totalMilliamps,outputs,isolated,switch,volts,milliamps,joins,bankWatts';

describe('a table of supplies', () => {
  it('has a row a bank: rows below each other with the same id, the same name or neither are one supply', () => {
    const shop = readShop(
      shopTable(
        shopHeader,
        'quay-6,Quay 6,119.00,3,100-240,1800,4,true,,9,100,,',
        'quay-6,,,,,,2,true,each,9/12/18,400/300/200,series/parallel,9',
        ',Twin,10,,230,,1,true,,9,500,,',
        ',Twin,10,,,,1,false,,12,500,both,',
        ',,,,,,3,true,,18,50,,',
      ),
    );
    const setting = (volts: number, milliamps: number) => ({ millivolts: volts * 1000, rating: milliamps * 1000 });
    expect(shop).toMatchObject({
      name: 'shop',
      supplies: [
        {
          id: 'quay-6',
          name: 'Quay 6',
          price: 11_900,
          stock: 3,
          source: { kind: 'mains', volts: { from: 100_000, to: 240_000 } },
          total: { kind: 'current', microamps: 1_800_000 },
          banks: [
            { firstOutput: 1, outputs: 4, settings: [setting(9, 100)], joins: [], total: null },
            {
              firstOutput: 5,
              outputs: 2,
              switching: 'each',
              settings: [setting(9, 400), setting(12, 300), setting(18, 200)],
              joins: ['series', 'parallel'],
              total: { kind: 'power', milliwatts: 9000 },
            },
          ],
        },
        {
          id: 'twin',
          price: 1000,
          stock: null,
          source: { kind: 'mains', volts: { from: 230_000, to: 230_000 } },
          banks: [{ isolated: true }, { isolated: false, joins: ['series', 'parallel'] }, { outputs: 3 }],
        },
      ],
    });
  });

  it('says by what a supply hangs on another one as YAML does', () => {
    const inlet = '"{power: DC, plug: usb-a, polarity: centre-positive, volts: 5, milliamps: 900}"';
    const shop = readShop(shopTable('name,price,outputs,volts,milliamps,inlet', `Step,12,1,9,400,${inlet}`));
    expect(shop).toMatchObject({
      supplies: [
        { source: { kind: 'fed', inlet: { plug: 'usb-a', accepts: { millivolts: [5000] }, microamps: 900_000 } } },
      ],
    });
    const words = shopTable('name,price,outputs,volts,milliamps,inlet', 'Step,12,1,9,400,‸usb');
    expectFault('shop', words, 'Step, inlet', 'found "usb"', '');
  });

  const first = 'quay,Quay,119.00,3,100-240,1800,4,true,,9,100,,';
  it.each([
    [
      'another price of the same supply',
      [first, 'quay,,‸120,,,,1,true,,9,100,,'],
      'Quay, price',
      'found "120", but line 4 of the same supply has "119.00"',
      'Write it once',
    ],
    [
      'the same supply further below',
      [first, 'one,One,1,,,,1,true,,9,1,,', '‸quay,Quay,119.00,,,,1,true,,9,1,,'],
      'Quay, id',
      'is the id "quay", which line 4 uses already',
      'another id',
    ],
    [
      'fewer draws than volts',
      ['quay,Quay,1,,,,4,true,each,9/12,‸100,,'],
      'Quay, milliamps',
      "has 1 entry, but another column of this bank's settings has 2",
      'as in 9/12/18',
    ],
    [
      'thousands in a setting',
      ['quay,Quay,1,,,,4,true,each,9/12,"100/‸1,500",,'],
      'Quay, milliamps',
      'may mean 1500 or 1.5',
      'Write 1500',
    ],
    [
      'thousands in a total',
      ['quay,Quay,1,,,"‸1,800",4,true,,9,100,,'],
      'Quay, totalMilliamps',
      'may mean 1800 or 1.8',
      'Write 1800',
    ],
    [
      'a wrong total of a bank',
      ['quay,Quay,1,,,,4,true,,9,100,,‸lots'],
      'Quay, bankWatts',
      'found "lots"',
      'a number of watts',
    ],
    ['no volts', ['quay,Quay,1,,,,4,true,,‸,100,,'], 'Quay, volts', 'missing', 'Fill in the cell.'],
    [
      'an unknown join',
      ['quay,Quay,1,,,,4,true,,9,100,series/‸paralel,'],
      'Quay, joins',
      'found "paralel"',
      'Did you mean parallel?',
    ],
    ['no word on the ground', ['quay,Quay,1,,,,4,‸,,9,100,,'], 'Quay, isolated', 'missing', 'Fill in the cell.'],
    [
      'a switch that is not stated',
      ['‸quay,Quay,1,,,,4,true,,9/12,100/90,,'.replace(mark, ''), ''],
      'Quay, switch',
      'the bank has 2 settings',
      'Write each under "switch" when every output is set by itself, together when one switch',
    ],
    [
      'a price with words',
      ['quay,Quay,"‸from 12,50",,,,4,true,,9,100,,'],
      'Quay, price',
      'found "from 12,50"',
      'Write the digits with a decimal point',
    ],
    [
      'a range with another unit',
      ['quay,Quay,1,,‸100-240W,,4,true,,9,100,,'],
      'Quay, mains',
      'or a range 100-240',
      'Write a number of volts',
    ],
  ])('%s is a fault', (name, rows, key, message, remedy) => {
    const text = shopTable(shopHeader, ...rows);
    // The empty cell of the switch is where it would stand.
    expectFault(
      'shop',
      name.startsWith('a switch') ? text.replace('true,,9/12', 'true,‸,9/12') : text,
      key,
      message,
      remedy,
    );
  });
});
