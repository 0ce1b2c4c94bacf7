import { expect, it } from 'vitest';

import { tableText } from '../../bench/table.js';

it('lines cells up under their titles and ends no line with spaces', () => {
  const columns = [
    { title: 'name', align: 'left' },
    { title: 'ms', align: 'right' },
    { title: 'note', align: 'left' },
  ] as const;
  const rows = [
    ['a', '12', ''],
    ['longer', '3', 'x'],
  ];
  expect(tableText(columns, rows)).toBe(
    [
      'name    ms  note', //
      '------  --  ----',
      'a       12',
      'longer   3  x',
    ].join('\n'),
  );
});
