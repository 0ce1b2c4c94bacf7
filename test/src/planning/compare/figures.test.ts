import { expect, it } from 'vitest';

import type { Pedal } from '../../../../src/domain/pedal.js';
import { kitOf } from '../../../../src/domain/kit.js';
import { check } from '../../../../src/planning/check/check.js';
import { figuresOf } from '../../../../src/planning/compare/figures.js';
import { bankOf, boardOf, catalogueOf, pedalOf, settingOf, supplyOf } from '../../../support/builders.js';
import { wiredOn } from '../../../support/wired.js';

/** Four outputs, of which the first two share a ground or not; two pedals, on the first and the last. */
function spareOutputsOf(isolated: boolean, ground: Pedal['ground']): number {
  const box = supplyOf('box', 10, [bankOf(2, [settingOf(9, 100)], { isolated }), bankOf(2, [settingOf(9, 100)])]);
  const pedals = [pedalOf('one', 10, { ground }), pedalOf('other', 10)];
  const kit = kitOf(
    boardOf(pedals, { wiring: [wiredOn('box', 'one', 1), wiredOn('box', 'other', 4)] }),
    catalogueOf([box]),
  );
  return figuresOf(kit, check(kit).wiring, []).spareOutputs;
}

it('counts no output as spare on a common ground that a pedal of unknown ground has to itself', () => {
  expect(spareOutputsOf(false, 'negative')).toBe(2);
  expect(spareOutputsOf(true, 'unknown')).toBe(2);
  expect(spareOutputsOf(false, 'unknown')).toBe(1);
});
