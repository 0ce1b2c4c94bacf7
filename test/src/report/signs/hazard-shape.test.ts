import { describe, expect, it } from 'vitest';

import { hazardShapes, hazardShapeSize } from '../../../../src/report/signs/hazard-shape.js';
import { hazards, hazardWords } from '../../../../src/report/words/hazards.js';

describe('the marks of hazards', () => {
  it('have a shape and a word of their own each', () => {
    expect(hazards).toHaveLength(8);
    expect(new Set(hazards.map((hazard) => hazardShapes[hazard])).size).toBe(hazards.length);
    expect(new Set(hazards.map((hazard) => hazardWords[hazard])).size).toBe(hazards.length);
  });

  it('stay in their square', () => {
    for (const hazard of hazards)
      for (const [number] of hazardShapes[hazard].matchAll(/\d*\.?\d+/g)) {
        expect(Number(number), hazard).toBeGreaterThanOrEqual(0);
        expect(Number(number), hazard).toBeLessThanOrEqual(hazardShapeSize);
      }
  });
});
