import { expect, test } from 'vitest';

import { lineWords } from '../../../../src/web/board/line-words.js';
import { readLine } from '../../../../src/web/document/type-pedal.js';

test.each(lineWords.flatMap(({ examples }) => examples))(
  '%s is understood on the line, and says something',
  (example) => {
    const volts = example.endsWith('W') ? ' 9v' : '';
    const [without, read] = [`Wren thing${volts}`, `Wren thing${volts} ${example}`].map((line) => readLine(line, ''));
    if (read?.kind !== 'pedal' || without?.kind !== 'pedal') throw new Error(JSON.stringify(read));
    expect(read.draft.line.name).toBe('Wren thing');
    expect(read.draft.line).not.toEqual(without.draft.line);
  },
);
