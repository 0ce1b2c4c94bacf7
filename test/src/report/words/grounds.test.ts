import { describe, expect, it } from 'vitest';

import { exposures, groundDomains, positiveGrounds } from '../../../../src/report/words/grounds.js';
import { inventoryOf } from '../../../../src/report/words/inventory.js';
import { everything } from '../everything.js';
import { tideway } from '../samples.js';

const all = everything((id) => id);
const inventory = inventoryOf(all.board, all.catalogue);

describe('grounds', () => {
  it('joins all outputs that are not isolated, over the whole supply unit', () => {
    const [common, ...others] = groundDomains(inventory, all.wiring.feeds);
    expect(common).toEqual({
      supply: 'shared',
      unit: 1,
      outputs: null,
      pedals: ['chorus', 'old-wah', 'looper', 'lead-drive'],
    });
    expect(others.map(({ pedals }) => pedals)).toEqual([
      ['big-preamp'],
      ['granular'],
      ['tube-delay'],
      ['survivor'],
      ['synth'],
    ]);
  });

  it('names the digital pedals that expose another', () => {
    expect(exposures(inventory, all.wiring)).toEqual([{ pedal: 'lead-drive', by: ['looper'] }]);
  });

  it('finds the fed pedals of positive ground', () => {
    expect(positiveGrounds(tideway.board, tideway.wiring)).toEqual(['tarn-fuzz']);
    expect(positiveGrounds(tideway.board, { ...tideway.wiring, feeds: [] })).toEqual([]);
  });
});
