import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { microamps, minorUnits } from '../../../../src/domain/quantities.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { impossibleText } from '../../../../src/report/screen/impossible.js';
import { screenFor } from '../../../../src/report/screen/screen.js';
import { sheetText } from '../../../../src/report/sheet/sheet.js';
import { handoutOf } from '../../../../src/report/words/handout.js';
import { bankFrom, boardOf, catalogueOf, pedalOf, policy, supplyOf } from '../samples.js';

const shop = catalogueOf([supplyOf('quay', [bankFrom(1, 2)], { price: minorUnits(2090) })]);
const [echo, drive] = [pedalOf('echo', { name: 'Echo' }), pedalOf('drive', { name: 'Drive' })];
const strong = pedalOf('strong', { name: 'Strong', draw: { kind: 'flat', microamps: microamps(9_000_000) } });

async function noPlan(pedals: Parameters<typeof boardOf>[0], budget: number) {
  const kit = kitOf(boardOf(pedals, { policy: { ...policy, budget: minorUnits(budget) } }), shop);
  const answer = await choose(kit);
  const handout = handoutOf({ kit, answer });
  if (answer.kind !== 'impossible' || handout.kind !== 'none') throw new Error('there is a plan');
  return { kit, answer, handout };
}

describe('why there is no plan', () => {
  it('is money where nothing but the budget is in the way, with what the cheapest plan buys and powers', async () => {
    const { kit, answer, handout } = await noPlan([echo, drive], 300);
    expect(handout.title).toBe('Test board: no plan is within the budget');
    const screen = impossibleText(screenFor(kit, { width: 200, colour: false, unicode: true }), answer.reasons);
    expect(screen[0]).toBe(handout.title);
    expect(handout.lead).toBe(
      '17.90 EUR over the budget: the cheapest plan for both pedals costs 20.90 EUR. Nothing has been bought or plugged.',
    );
    expect(handout.passages.find(({ title }) => title === 'Beyond your limits')?.entries[0]?.below).toEqual([
      '1 × quay: 20.90 EUR',
      'That powers Echo and Drive.',
    ]);
    const sheet = sheetText(handout, { shop: null, date: 'today' }).replaceAll('\u00a0', ' ');
    for (const told of ['17.90 EUR over the budget', '1 × quay: 20.90 EUR', 'Echo and Drive'])
      expect(sheet).toContain(told);
  });

  it('is money for pedals, too, that are plugged later, for which the cheapest plan keeps a place', async () => {
    const belowFor = async (...kept: Parameters<typeof noPlan>[0]) => {
      const { handout } = await noPlan([echo, ...kept], 300);
      return handout.passages.find(({ title }) => title === 'Beyond your limits')?.entries[0]?.below.at(-1);
    };
    const tuner = pedalOf('tuner', { name: 'Tuner', unknown: ['volts'], kept: 'unread' });
    expect(await belowFor(tuner)).toBe('That powers Echo, and keeps a place for Tuner (label unread).');
    expect(await belowFor(tuner, { ...drive, kept: 'later' })).toBe(
      'That powers Echo, and keeps places for Tuner (label unread) and Drive (bought later).',
    );
  });

  it('is not money where a pedal can never have power', async () => {
    const { handout } = await noPlan([echo, strong], 0);
    expect(handout.title).toBe('Test board: no plan exists');
    expect(handout.lead).toContain('cannot power both pedals by the rules');
  });

  it('names a partial plan only where a command gives one', async () => {
    const { kit, answer, handout } = await noPlan([echo, drive], 0);
    expect(JSON.stringify(handout.passages)).not.toContain('partial');
    expect(JSON.stringify(handout.passages)).toContain('Or take pedals off the board');
    const screen = impossibleText(screenFor(kit, { width: 200, colour: false, unicode: true }), answer.reasons);
    expect(screen.join('\n')).toContain('Or ask for a partial plan');
  });
});
