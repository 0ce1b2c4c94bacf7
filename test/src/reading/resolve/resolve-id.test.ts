import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { idFromName } from '../../../../src/reading/resolve/resolve-id.js';
import { idPattern, longestText } from '../../../../src/reading/schema/schema-fields.js';
import { trying } from '../../../support/runs.js';

describe('idFromName', () => {
  it.each([
    ['Estuary echo', 'estuary-echo'],
    ['  Crème  Brûlée!! ', 'creme-brulee'],
    ['No. 5 (blue)', 'no-5-blue'],
    ['Quay 6.5', 'quay-6-5'],
    ['ÅNGSTRÖM', 'angstrom'],
    ['Straße', 'straße'],
    ['ファズ', 'ファズ'],
    ['ガ', 'ガ'],
    ['Йод', 'йод'],
    ['퍼즈', '퍼즈'],
    ['हिन्दी', 'हिन्दी'],
    ['ﬁlter²', 'filter2'],
    ['İstanbul', 'istanbul'],
    ['Tiếng vọng', 'tieng-vong'],
    ['--Quay--6--', 'quay-6'],
    ['!?', null],
    ['', null],
    ['\u001b[31mRed', '31mred'],
  ])('%s makes %s', (name, id) => {
    expect(idFromName(name)).toBe(id);
  });

  it('makes an id that is no longer than an id may be', () => {
    expect(idFromName('n'.repeat(200))).toBe('n'.repeat(200));
    expect(idFromName('n'.repeat(201))).toBe('n'.repeat(200));
    expect(idFromName('ﷺ'.repeat(100))).toHaveLength(200);
  });

  it('makes an id that is allowed, or none', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (name) => {
        const id = idFromName(name);
        if (id === null) return;
        expect(id).toMatch(idPattern);
        expect(id.length).toBeLessThanOrEqual(longestText);
      }),
      trying(300),
    );
  });
});
