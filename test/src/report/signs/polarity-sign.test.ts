import { describe, expect, it } from 'vitest';

import { polarities } from '../../../../src/domain/pedal.js';
import { signsFor } from '../../../../src/node/cli/start/label-help.js';
import { labelSheet } from '../../../../src/report/labels/sheet.js';
import { polaritySign, polaritySignText } from '../../../../src/report/signs/polarity-sign.js';
import { planOf } from '../handouts.js';

/** What stands left and right of the ring: a plus has an upright stroke. */
function ends(drawn: string): readonly string[] {
  const upright = (x: number): string => (drawn.includes(`M${x} 6V14`) ? '+' : '−');
  return [upright(9), upright(51)];
}

describe('the sign for polarity', () => {
  it('has the sleeve to the left and the pin to the right, drawn and in text alike', () => {
    for (const polarity of polarities) {
      const text = polaritySignText(polarity, true);
      expect(text).toMatch(/^\([+−]\)──C•──\([+−]\)$/);
      expect(ends(polaritySign(polarity).markup)).toEqual([text[1], text.at(-2)]);
      expect(polaritySignText(polarity, false)).toBe(text.replaceAll('−', '-').replaceAll('─', '-').replace('•', '.'));
    }
  });

  it('has minus on the pin for centre-negative, plus for centre-positive', () => {
    expect(ends(polaritySign('centre-negative').markup)).toEqual(['+', '−']);
    expect(ends(polaritySign('centre-positive').markup)).toEqual(['−', '+']);
  });

  it('is the same on labels and in questions', () => {
    expect(signsFor(true).negative).toBe(polaritySignText('centre-negative', true));
    expect(signsFor(false).positive).toBe(polaritySignText('centre-positive', false));
    for (const polarity of polarities) expect(labelSheet(planOf())).toContain(polaritySign(polarity).markup);
  });
});
