import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { labelsOf } from '../../../../src/planning/ask/decisive-labels.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { readAtHome } from '../../../../src/report/words/read-at-home.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { bankFrom, boardOf, catalogueOf, partOf, pedalOf, settingOf, supplyOf } from '../samples.js';
import { microamps } from '../../../../src/domain/quantities.js';

const milliamps = (value: number) => ({ kind: 'flat', microamps: microamps(value * 1000) }) as const;

const board = boardOf([
  pedalOf('alder', { assumed: { power: 'DC', inlet: 'barrel-2.1' } }),
  pedalOf('birch', { draw: milliamps(40), figure: 'guess', assumed: { power: 'DC' } }),
  pedalOf('cedar', { unknown: ['polarity'], polarity: 'unknown' }),
  pedalOf('dogwood', { assumed: { power: 'DC', inlet: 'barrel-2.1' } }),
  pedalOf('elder'),
]);
const shop = catalogueOf(
  [
    supplyOf('five', [bankFrom(1, 4), bankFrom(5, 1, { settings: [settingOf(9, 200)] })], {
      assumed: { power: 'DC', polarity: 'centre-negative' },
    }),
  ],
  [partOf('flip', { kind: 'adapter' }, { reverses: true })],
);
const kit = kitOf(board, shop);
const answer = await choose(kit);
if (answer.kind !== 'plan') throw new Error('no plan');
const { wiring } = answer;

describe('what is to be read at home', () => {
  it('says first what decides what to buy, then what decides the wiring, then what was taken to be so', async () => {
    const labels = await labelsOf(kit, wiring);
    expect(readAtHome(speechOf(kit), wiring, labels)).toEqual({
      groups: [
        {
          title: 'These decide what to buy',
          looks: [
            {
              names: ['birch'],
              text: expect.stringMatching(
                /^the draw \(guessed 40 mA; good up to \d+ mA.*\)\. Taken to be so: runs on DC$/,
              ) as string,
            },
          ],
        },
        { title: 'These decide how it is wired', looks: [{ names: ['cedar'], text: 'the polarity' }] },
        {
          title: 'Taken to be so: see whether the label agrees',
          looks: [
            { names: ['alder', 'dogwood'], text: 'runs on DC, inlet 2.1 mm barrel' },
            { names: ['five'], text: 'gives DC, centre-negative (minus on the pin)' },
          ],
        },
      ],
      where: 'the draw: “mA” on the label or in the manual; the polarity: the sign of pin and sleeve beside the inlet.',
    });
  });

  it('puts before all else what may leave no plan, whatever else it decides', async () => {
    const unread = pedalOf('fir', { unknown: ['volts'], kept: 'unread' });
    const nowhere = supplyOf('far', [bankFrom(1, 1, { settings: [settingOf(12, 1)] })]);
    const one = kitOf(boardOf([...board.pedals, unread]), catalogueOf([...shop.supplies, nowhere], shop.parts));
    const chosen = await choose(one);
    if (chosen.kind !== 'plan') throw new Error('no plan');
    const { groups } = readAtHome(speechOf(one), chosen.wiring, await labelsOf(one, chosen.wiring));
    expect(groups.map(({ title }) => title).slice(0, 2)).toEqual([
      'Read these first: with some readings there is no plan',
      'These decide what to buy',
    ]);
    expect(groups[0]?.looks).toEqual([{ names: ['fir (label unread)'], text: 'the volts' }]);
  });

  it('never promises a draw more than is good, to the microamp', async () => {
    const [draw] = (await labelsOf(kit, wiring)).flatMap(({ draw: one }) => one ?? []);
    const text = JSON.stringify(readAtHome(speechOf(kit), wiring, await labelsOf(kit, wiring)));
    const told = [...text.matchAll(/up to (\d+) mA/g)].map(([, figure]) => Number(figure) * 1000);
    expect(told.length).toBeGreaterThan(0);
    const reaches = [draw?.asWired.microamps ?? 0, draw?.samePurchase?.microamps ?? 0];
    told.forEach((figure, at) => {
      expect(figure).toBeLessThanOrEqual(reaches[at] ?? 0);
      expect(figure + 1000).toBeGreaterThan(reaches[at] ?? 0);
    });
  });

  it('has all of it where nobody asked what decides, and nothing where all is known', () => {
    const { groups } = readAtHome(speechOf(kit), wiring, null);
    expect(groups.map(({ title, looks }) => [title, looks.flatMap(({ names }) => names)])).toEqual([
      ['Nobody has read these', ['birch', 'cedar']],
      ['Taken to be so: see whether the label agrees', ['alder', 'dogwood', 'five']],
    ]);
    const known = kitOf(boardOf([pedalOf('elder')]), catalogueOf([]));
    expect(readAtHome(speechOf(known), { feeds: [], inlets: [] }, null)).toEqual({ groups: [], where: null });
  });
});
