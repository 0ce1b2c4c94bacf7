import { describe, expect, it } from 'vitest';

import { allCases } from '../acceptance/cases/all.js';
import type { Case } from '../acceptance/cases/case.js';
import { readCase } from '../acceptance/cases/read-case.js';
import { bruteForce } from './brute-force.js';

/** Those for which trying everything does not take long. */
const small = ({ pedals }: Case): boolean => pedals.length <= 4;

// Numbers that outgrow an integer are none for brute force, which refuses them.
const { exactness, ...cases } = allCases;

describe('trying everything finds what was worked out by hand', () => {
  it.each(Object.entries(cases))('%s', (_, all) => {
    for (const one of all.filter(small)) {
      const { of, aim, partial, truth } = readCase(one);
      const found = bruteForce(of.board, of.catalogue, { aim, partial });
      expect(found.kind === 'plan' ? found.score : null, one.says).toEqual(truth);
    }
  });

  it('in nearly all cases', () => {
    expect(Object.values(cases).flat().filter(small).length).toBeGreaterThan(380);
  });

  it('and refuses to be inexact', () => {
    const [large] = exactness ?? [];
    if (large === undefined) throw new Error('no such case');
    const { of, aim, partial } = readCase(large);
    expect(() => bruteForce(of.board, of.catalogue, { aim, partial })).toThrow('is not a safe integer');
  });
});
