import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { microamps, minorUnits } from '../../../../src/domain/quantities.js';
import type { AskedLabel, ReadingOutcome } from '../../../../src/planning/ask/decisive-labels.js';
import { labelText } from '../../../../src/report/words/label-words.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { mostText } from '../../../../src/report/words/words.js';
import { boardOf, catalogueOf, pedalOf, planOf } from '../samples.js';

const pedal = pedalOf('ruff', { name: 'Ruff tuner', polarity: 'unknown', unknown: ['polarity'] });
const board = boardOf([pedal]);
const shop = catalogueOf([]);
const plan = planOf(board, shop, []);
const wiring = { ...plan, score: { ...plan.score, money: minorUnits(7480) } };
const textOf = (label: Omit<AskedLabel, 'pedal' | 'decides' | 'isToReadFirst'>): string =>
  labelText(speechOf(kitOf(board, shop)), { wiring }, [{ pedal, decides: 'purchase', isToReadFirst: false, ...label }]);

describe('a label that decides', () => {
  it('has limits of a guess in whole milliamps, rounded down', () => {
    const reach = (most: number) => ({ microamps: microamps(most), isMost: false });
    const draw = { planned: microamps(66_666), asWired: reach(166_666), samePurchase: reach(416_666) };
    expect(textOf({ field: 'milliamps', standing: 'guessed', draw, readings: [] })).toMatch(
      /planned with 66\.666 mA, a guess; .* up to 166 mA, and wired in another way .* up to 416 mA;/,
    );
    expect([999_999, 10_000, 9999, 8333, 0].map(mostText)).toEqual(['999 mA', '10 mA', '9.999 mA', '8.333 mA', '0 mA']);
  });

  it('by which less has to be spent calls that no other purchase: it may be a lead less', () => {
    const readingAt = (money: number) =>
      textOf({
        ...{ field: 'polarity', standing: 'unknown', draw: null },
        readings: [
          {
            reads: 'centre-negative',
            decides: 'purchase',
            money: minorUnits(money),
            noPlan: false,
          } satisfies ReadingOutcome,
        ],
      });
    expect(readingAt(7080)).toContain('(minus on the pin): 4.00 EUR less to spend, 70.80 EUR in all;');
    expect(readingAt(7480)).toContain('something else to buy, for 74.80 EUR, as now;');
    expect(readingAt(7980)).toContain('something else to buy, for 79.80 EUR, 5.00 EUR more;');
  });
});
