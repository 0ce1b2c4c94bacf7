import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { csvText } from '../../../../src/report/tables/csv.js';
import { safeText } from '../../../../src/report/words/safe-text.js';
import { hostileName } from '../../../support/hostile-names.js';
import { readCsv } from '../../../support/read-csv.js';
import { share, trying } from '../../../support/runs.js';

const mark = '\ufeff';
const body = (text: string): string => {
  expect(text.startsWith(mark)).toBe(true);
  return text.slice(mark.length);
};

describe('a CSV table', () => {
  it('quotes what has to be and doubles quotation marks', () => {
    expect(
      body(
        csvText(
          ['Name', 'Count'],
          [
            ['plain', 2],
            ['a, "b"', 0.5],
            [' c', 1],
          ],
        ),
      ),
    ).toBe('Name,Count\r\nplain,2\r\n"a, ""b""",0.5\r\n" c",1\r\n');
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', ' =1', '＝1', '＋1', '－1', '＠x'])('makes no formula of %j', (name) => {
    expect(readCsv(body(csvText(['Name'], [[name]])))[1]?.[0]).toMatch(/^\s*'/);
  });

  it('makes none where a semicolon parts cells, either', () => {
    expect(readCsv(body(csvText(['Name'], [['a;=1'], ['a; +1']])))).toEqual([['Name'], ["a;'=1"], ["a; '+1"]]);
  });

  it.each(['\t=1', '\r=1', '\n=1'])('spells out a control character that leads %j', (name) => {
    expect(readCsv(body(csvText(['Name'], [[name]])))[1]?.[0]).toMatch(/^\\x/);
  });

  it('is read back as it was, but for what is spelled out and the apostrophes', () => {
    let exercised = 0;
    fc.assert(
      fc.property(fc.array(fc.array(hostileName, { minLength: 3, maxLength: 3 }), { maxLength: 4 }), (rows) => {
        const [head, ...read] = readCsv(body(csvText(['One', 'Two', 'Three'], rows)));
        expect(head).toEqual(['One', 'Two', 'Three']);
        expect(read.map((row) => row.map((cell) => cell.replaceAll("'", '')))).toEqual(
          rows.map((row) => row.map((cell) => safeText(cell).replaceAll("'", ''))),
        );
        for (const cell of read.flat()) {
          expect(cell).not.toMatch(/(^|;)\s*[=+\-@＝＋－＠\t\r]/u);
          if (cell.includes("'")) exercised += 1;
        }
      }),
      trying(500),
    );
    expect(exercised).toBeGreaterThan(share(200));
  });
});
