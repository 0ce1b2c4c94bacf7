import { describe, expect, it } from 'vitest';

import type { Proof } from '../../../src/domain/proof.js';
import { verifyImpossible } from '../../../src/proof/verify-proof.js';
import { limitedTo, withTags } from './hand-made.js';

const openCase = expect.stringContaining('a case is left open') as string;
const unlimited = expect.stringContaining('the board does not limit') as string;
const wrongSign = expect.stringContaining('the wrong sign') as string;

describe('a tag', () => {
  it.each([
    ['bricks', 'sockets', 'the mains sockets'],
    ['sockets', 'bricks', 'the bricks'],
  ] as const)('of the limit on %s counts for that limit alone', (limit, other, name) => {
    const { board: of, catalogue: from, proof } = limitedTo(limit, 1);
    const reason = (changed: Proof, on = of) => verifyImpossible(on, from, changed);
    expect(reason(proof)).toMatchObject({ kind: 'holds', unpowered: 1 });
    expect(reason(proof, limitedTo(limit, 2).board)).toMatchObject({ reason: openCase });
    expect(reason(proof, limitedTo(other, 1).board)).toMatchObject({ reason: unlimited });
    expect(reason(limitedTo(other, 1).proof)).toMatchObject({
      reason: `it has a tag for ${name}, which the board does not limit`,
    });
    expect(reason(withTags(proof, { [limit]: -1 }))).toMatchObject({ reason: openCase });
    expect(reason(withTags(proof, { [limit]: 0 }))).toMatchObject({ reason: openCase });
    expect(reason(withTags(proof, { [limit]: 2 }))).toMatchObject({ reason: wrongSign });
    // Where both are limited, each has a tag of its own.
    const both = { ...of, policy: { ...of.policy, bricks: 1, sockets: 1 } };
    expect(reason(withTags(proof, { [limit]: -1, [other]: -1 }), both)).toMatchObject({ kind: 'holds' });
    const loose = { ...both, policy: { ...both.policy, [other]: 2 } };
    expect(reason(withTags(proof, { [limit]: -1, [other]: -1 }), loose)).toMatchObject({ reason: openCase });
  });
});
