import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { millivolts, partId, pedalId, supplyId } from '../../../../src/domain/quantities.js';
import { wiringEntry } from '../../../../src/report/words/wiring-entry.js';
import { oddName } from '../odd-names.js';
import { feedOf } from '../samples.js';

describe('an entry for the board file', () => {
  it('is as short as it can be', () => {
    expect(wiringEntry(feedOf('skerry-delay', 'jetty-6', 4))).toBe(
      '- {pedal: skerry-delay, supply: jetty-6, unit: 1, output: 4, volts: 9}',
    );
  });

  it('names every lead', () => {
    const chained = feedOf('drive', 'quay', 2, { chain: partId('fan-5'), adapters: [partId('flip'), partId('mini')] });
    expect(wiringEntry(chained)).toBe(
      '- {pedal: drive, supply: quay, unit: 1, output: 2, volts: 9, chain: fan-5, parts: [flip, mini]}',
    );
    expect(wiringEntry(chained, { lead: 7, tail: 'b' })).toBe(
      '- {pedal: drive, supply: quay, unit: 1, output: 2, volts: 9, chain: fan-5, parts: [flip, mini], lead: 7, tail: b}',
    );
    // YAML takes some letters for yes and no.
    expect(parse(wiringEntry(chained, { lead: 7, tail: 'n' }))).toMatchObject([{ tail: 'n' }]);
    const joined = feedOf('preamp', 'quay', 1, {
      outputs: [1, 2],
      settings: [millivolts(9000), millivolts(9500)],
      join: { mode: 'series', part: partId('stack') },
    });
    expect(wiringEntry(joined)).toBe(
      '- {pedal: preamp, supply: quay, unit: 1, outputs: [1, 2], volts: 18.5, join: {mode: series, part: stack}}',
    );
  });

  it('is read back by YAML as it was meant, whatever the ids are', () => {
    const ids = fc.oneof(oddName, fc.constantFrom('true', 'no', 'null', '12', '1e3', '- a', 'a: b', '#', '~', "it's"));
    fc.assert(
      fc.property(ids, ids, ids, (pedal, supply, part) => {
        const feed = feedOf('x', 'y', 3, { adapters: [partId(part)] });
        const entry = wiringEntry({ ...feed, pedal: pedalId(pedal), supply: supplyId(supply) });
        expect(entry).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
        expect(parse(entry)).toEqual([{ pedal, supply, unit: 1, output: 3, volts: 9, parts: [part] }]);
      }),
    );
  });
});
