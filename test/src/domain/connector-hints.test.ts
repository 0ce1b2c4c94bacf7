import { describe, expect, it } from 'vitest';

import { connectorHints } from '../../../src/domain/connector-hints.js';
import { boardWithPedals, catalogueText, readOf } from '../reading/texts.js';

describe('connectorHints', () => {
  it('names inlets that no plug and no lead fits, with a near spelling', () => {
    const pedals = ['barrel-2.1', 'barel-2.1', 'jack-3.5', 'screw'].map(
      (inlet, index) => `{name: P${index}, volts: 9, milliamps: 1, inlet: ${inlet}}`,
    );
    const parts = 'parts: [{name: Jack, price: 1, fits: barrel-2.1, gives: jack-3.5}]';
    const kit = readOf(boardWithPedals(...pedals), catalogueText({ parts }));
    expect(connectorHints(kit)).toEqual([
      { pedal: 'p1', inlet: 'barel-2.1', near: 'barrel-2.1' },
      { pedal: 'p3', inlet: 'screw', near: null },
    ]);
  });

  it('knows the gear when there is no catalogue', () => {
    const kit = readOf(
      `${boardWithPedals('{name: P, volts: 9, milliamps: 1, inlet: screw}')}gear: {parts: [{name: L, fits: a, gives: screw}]}\n`,
    );
    expect(connectorHints(kit)).toEqual([]);
  });
});
