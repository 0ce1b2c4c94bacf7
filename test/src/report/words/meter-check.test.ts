import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { millivolts } from '../../../../src/domain/quantities.js';
import { readFeeds, type Feed, type ReadFeed } from '../../../../src/domain/plan.js';
import { meterCheck } from '../../../../src/report/words/meter-check.js';
import { inventoryOf } from '../../../../src/report/words/inventory.js';
import { everything } from '../everything.js';
import { bankFrom, boardOf, catalogueOf, feedOf, partOf, pedalOf, settingOf, supplyOf } from '../samples.js';

const all = everything((id) => id);
const inventory = inventoryOf(kitOf(all.board, all.catalogue));
/** Of a feed whose label is read. */
function readOf(feed: Feed): ReadFeed {
  const [read] = readFeeds(feed);
  if (read === undefined) throw new Error('a feed is read in one way at least');
  return read;
}

const checkOf = (pedal: string) => {
  const feed = all.wiring.feeds.find((one): one is Feed => one.pedal === pedal);
  if (feed === undefined) throw new Error(`no feed of ${pedal}`);
  return meterCheck(inventory, readOf(feed));
};

describe('what a meter must show at a plug', () => {
  it('centre-negative: red on the sleeve, so that a right plug reads plus', () => {
    expect(checkOf('looper')).toEqual({
      range: 'DC volts',
      probes: { black: 'centre', red: 'sleeve' },
      reads: '+9 V',
      note: null,
    });
  });

  it('centre-positive: red in the centre', () => {
    expect(checkOf('old-wah')).toMatchObject({ probes: { black: 'sleeve', red: 'centre' }, reads: '+9 V' });
  });

  it('joined in series: the sum; in parallel: the volts of each', () => {
    expect(checkOf('big-preamp').reads).toBe('+18 V');
    expect(checkOf('granular').reads).toBe('+9 V');
  });

  it('AC: another range, no polarity, and more than stated with nothing on it', () => {
    expect(checkOf('tube-delay')).toEqual({
      range: 'AC volts',
      probes: null,
      reads: '9 V',
      note: 'it may read somewhat more with no pedal on it',
    });
  });

  it('an unregulated output: its volts with nothing on it, since no pedal is on yet', () => {
    expect(checkOf('survivor')).toMatchObject({
      reads: '+13.5 V',
      note: 'it falls to 9 V under full load: this output is unregulated',
    });
  });

  it('unregulated outputs in series: the open volts add up; AC that states them says so', () => {
    const rough = { settings: [settingOf(9, 200, 13)] };
    const loose = inventoryOf(
      kitOf(
        boardOf([pedalOf('one')]),
        catalogueOf(
          [
            supplyOf('pair', [bankFrom(1, 2, { ...rough, joins: ['series'] })]),
            supplyOf('ac', [bankFrom(1, 1, { ...rough, power: 'AC', polarity: null })]),
          ],
          [partOf('stack', { kind: 'join', mode: 'series' })],
        ),
      ),
    );
    const joined = feedOf('one', 'pair', 1, {
      outputs: [1, 2],
      settings: [millivolts(9000), millivolts(9000)],
      join: { mode: 'series', part: partOf('stack', { kind: 'adapter' }).id },
    });
    expect(meterCheck(loose, readOf(joined)).reads).toBe('+26 V');
    expect(meterCheck(loose, readOf(joined)).note).toMatch(/^it falls to 18 V/);
    const alternating = meterCheck(loose, readOf(feedOf('one', 'ac', 1, { polarity: null })));
    expect(alternating.reads).toBe('9 V');
    expect(alternating.note).toMatch(/^up to 13 V with no pedal on it/);
  });
});
