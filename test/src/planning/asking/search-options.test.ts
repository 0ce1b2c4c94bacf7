import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { decisiveLabels } from '../../../../src/planning/ask/decisive-labels.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import { spare } from '../../../../src/planning/spare/spare.js';
import { bankOf, boardOf, catalogueOf, pedalOf, settingOf, supplyOf } from '../../../support/builders.js';

const kit = kitOf(
  boardOf([pedalOf('drive', 20), pedalOf('echo', 80)]),
  catalogueOf([supplyOf('brick', 50, [bankOf(3, [settingOf(9, 100)])])], []),
);

describe('what is told of a search', () => {
  it.each([
    ['spare', spare],
    ['ask', decisiveLabels],
    ['explain', explain],
  ] as const)('is the plan until it is known, and of what %s goes on to ask no plan', async (_, question) => {
    const tiers: (string | null)[] = [];
    const answer = await question(kit, { onProgress: ({ tier }) => tiers.push(tier) });
    expect(answer.kind).not.toBe('stopped');
    expect(tiers).toContain('cost');
    expect(tiers.at(-1)).toBeNull();
  });
});
