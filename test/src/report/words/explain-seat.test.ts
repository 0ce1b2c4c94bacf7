import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { pedalId, supplyId, type PedalId } from '../../../../src/domain/quantities.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import { elsewhereTexts, hereText } from '../../../../src/report/words/explain-seat.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { bankOf, pedalOf, settingOf, supplyOf } from '../../../support/builders.js';
import { onBlocks } from '../../../support/impossible-sources.js';
import { caseOf, type Given } from '../../planning/given.js';

async function elsewhere(given: Given, pedal: PedalId): Promise<readonly string[]> {
  const { board, catalogue } = caseOf(given);
  const kit = kitOf(board, catalogue);
  const explanation = await explain(kit, { pedal });
  if (explanation.kind !== 'plan' || explanation.seat === null) throw new Error(`it is ${explanation.kind}`);
  return elsewhereTexts(speechOf(kit), pedal, explanation.seat.elsewhere);
}

/** Supplies of one output for so many euros each, called after that. */
const dearer = (...prices: readonly number[]) =>
  prices.map((price) => supplyOf(`for-${price}`, price, [bankOf(1, [settingOf(9, 100)])]));

describe('where a pedal sits', () => {
  async function here(given: Given, pedal: string): Promise<string> {
    const { board, catalogue } = caseOf(given);
    const kit = kitOf(board, catalogue);
    const explanation = await explain(kit, { pedal: pedalId(pedal) });
    if (explanation.kind !== 'plan' || explanation.seat === null) throw new Error(`it is ${explanation.kind}`);
    return hereText(speechOf(kit), explanation.wiring, explanation.seat);
  }

  it('is an output with its volts', async () => {
    expect(await here({ pedals: [pedalOf('alder', 20)], supplies: dearer(10) }, 'alder')).toBe(
      'It sits on for-10 output 1 at 9 V.',
    );
  });

  it('is no place where it runs on batteries, or on the adapter that it came with', async () => {
    expect(await here(onBlocks(2, 550), 'wah')).toBe('It runs on 1 × block.');
    const own = supplyId('own-station');
    const station = pedalOf('station', 100, { adapter: { supply: own, only: true } });
    const adapter = supplyOf('own-station', 0, [bankOf(1, [settingOf(9, 100)])], {
      source: { kind: 'adapter', volts: null },
    });
    const given: Given = { pedals: [station], supplies: [], gear: { supplies: [adapter] }, owned: { [own]: 1 } };
    expect(await here(given, 'station')).toBe('It keeps its own adapter.');
  });
});

describe('other places for a pedal', () => {
  const pedals = [pedalOf('alder', 20)];
  const alder = pedalId('alder');

  it('are told one by one where they are few, the least harm first', async () => {
    expect(await elsewhere({ pedals, supplies: dearer(10, 40, 20, 30) }, alder)).toEqual([
      'for-20: 10.00 EUR more.',
      'for-30: 20.00 EUR more.',
      'for-40: 30.00 EUR more.',
    ]);
  });

  it('share a text beyond the best three, from the least to the most harm', async () => {
    expect(await elsewhere({ pedals, supplies: dearer(10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20) }, alder)).toEqual([
      'for-11: 1.00 EUR more.',
      'for-12: 2.00 EUR more.',
      'for-13: 3.00 EUR more.',
      'for-14, for-15, for-16, for-17, for-18, for-19 and 1 more: 4.00 EUR more to 10.00 EUR more.',
    ]);
  });

  it('share a text where the same is said of them', async () => {
    const twins = [0, 1, 2].map((at) => supplyOf(`twin-${at}`, 10, [bankOf(1, [settingOf(9, 100)])]));
    expect(await elsewhere({ pedals, supplies: twins }, alder)).toEqual(['twin-1 and twin-2: as good.']);
  });
});
