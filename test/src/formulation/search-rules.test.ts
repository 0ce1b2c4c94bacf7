import { describe, expect, it } from 'vitest';

import { compactSearch } from '../../../bench/rival/formulation/compact-search.js';
import { optimise } from '../../../src/formulation/optimise.js';
import type { Question } from '../../../src/formulation/question.js';
import { allCases } from '../../acceptance/cases/all.js';
import { readCase } from '../../acceptance/cases/read-case.js';
import { sharedEngines } from '../../support/engines.js';
import { expectTrue, figuresOf, questionFor, type Saying } from './second-opinion.js';

const engines = sharedEngines();
type Search = (question: Question) => Promise<Saying>;
const patience = { remainingMs: () => Infinity };
const searches: readonly (readonly [string, Search])[] = [
  ['loadouts', (question) => optimise(question, patience)],
  ['the compact program', (question) => compactSearch(question, { engines, ...patience })],
];

/** Batteries the compact program does not know. */
const isCompact = ({ supplies }: Question): boolean =>
  supplies.every(({ supply }) => !['battery', 'fed'].includes(supply.source.kind));

describe('by every search', () => {
  it.each(Object.entries(allCases))('%s: as worked out by hand', async (_, cases) => {
    for (const one of cases) {
      const { truth, ...asked } = readCase(one);
      const question = questionFor(asked);
      for (const [by, search] of searches) {
        if (by === 'the compact program' && !isCompact(question)) continue;
        const outcome = await search(question);
        expect(outcome.kind, `${one.says}, by ${by}`).toBe(truth === null ? 'impossible' : 'proven');
        expectTrue(outcome, truth === null ? null : figuresOf(truth, asked), asked);
      }
    }
  });
});
