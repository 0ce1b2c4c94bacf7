import { describe, expect, it } from 'vitest';

import { ownedFound, takenText } from '../../../../src/web/supplies/owned-found.js';
import type { ToldThing } from '../../../../src/web/worker/told-shelf.js';

const box: ToldThing = {
  ...{ kind: 'supply', id: 'old-box', name: 'Old box', price: null, outputs: 6, remark: '', units: 0, taken: '' },
};
const typed = 'old box 6 isolated 9v 150';

describe('a name that is there already', () => {
  it('leads to the button beside it where it is owned', () => {
    const { taken, found } = ownedFound(typed, [{ ...box, units: 1 }]);
    expect(found).toEqual([]);
    expect(taken === null ? null : takenText(taken)).toMatch(/: press \+ for more of it, or add a word/);
  });

  it('where it is described only, there is no button: its name alone is offered, and found by that', () => {
    const { taken } = ownedFound(typed, [box]);
    expect(taken === null ? null : takenText(taken)).toMatch(/: write Old box alone to have it, or add a word/);
    expect(ownedFound('Old box', [box])).toMatchObject({ found: [box], taken: null });
  });
});
