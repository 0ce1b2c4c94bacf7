import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import { planCautions } from '../../../../src/report/words/cautions.js';
import { inventoryOf } from '../../../../src/report/words/inventory.js';
import { groundRemarks } from '../../../../src/report/words/remarks.js';
import { exposedText } from '../../../../src/report/words/shared-grounds.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { bankFrom, boardOf, catalogueOf, feedOf, pedalOf, planOf, supplyOf } from '../samples.js';

/** Each pedal on an output of its own; all outputs are on one common ground, or on none. */
function told(pedals: readonly Pedal[], isolated = false) {
  const bank = { isolated, settings: [] };
  const { settings } = bankFrom(1, 1);
  const banks = pedals.map(({ power, polarity }, at) =>
    bankFrom(at + 1, 1, { ...bank, settings, power, polarity: polarity === 'unknown' ? 'either' : polarity }),
  );
  const board = boardOf(pedals);
  const shop = catalogueOf([supplyOf('quay', banks)]);
  const feeds = pedals.map(({ id, polarity }, at) => ({ ...feedOf(id, 'quay', at + 1), polarity }));
  const plan = planOf(board, shop, feeds);
  const speech = speechOf(kitOf(board, shop));
  const inventory = inventoryOf(kitOf(board, shop));
  return {
    exposed: exposedText(inventory, plan),
    cautions: planCautions(inventory, plan),
    grounds: groundRemarks(speech, plan).map(({ text, care }) => `${care ? '! ' : ''}${text}`),
  };
}

const digital = (id: string): Pedal => pedalOf(id, { digital: true });

describe('digital pedals on one ground', () => {
  const words =
    'echo and loop, both digital, share a ground: quay common ground. They may whine by one another; if they do, give them ' +
    'outputs of their own.';

  it('are named, and none is called unexposed without the rule that says so', () => {
    const found = told([digital('echo'), pedalOf('drive'), digital('loop')]);
    expect(found.exposed).toBe('none exposed by the rule of high gain beside digital');
    expect(found.cautions).toEqual([words]);
    expect(found.grounds).toContain(`! ${words}`);
  });

  it('are all of them where they are more than two', () => {
    expect(told(['echo', 'loop', 'hall'].map(digital)).cautions[0]).toMatch(/^echo, loop and hall, all digital, share/);
  });

  it('beside others that are not high-gain are told by the rule, too, though none is there to name', () => {
    const found = told([digital('echo'), pedalOf('drive')]);
    expect(found.exposed).toBe('none exposed by the rule of high gain beside digital');
    expect(found.cautions).toEqual([]);
  });

  it('are of no account where each has a ground of its own, or where pedals are exposed anyway', () => {
    const found = told([digital('echo'), digital('loop')], true);
    expect([found.exposed, found.cautions]).toEqual(['none exposed to digital noise', []]);
    expect(told([digital('echo'), pedalOf('fuzz', { highGain: true })]).exposed).toBe('1 exposed to digital noise');
  });
});

describe('AC and DC on one common ground', () => {
  const alternating = pedalOf('valve', { power: 'AC', polarity: null });
  const words =
    'valve on AC and drive on DC share a ground: quay common ground. Audio leads between them may short a rectifier: ask ' +
    'the makers first, and pull the mains at any hum or heat.';

  it('are a thing to mind, and not where each has a ground of its own', () => {
    expect(told([alternating, pedalOf('drive')]).cautions).toContain(words);
    expect(told([alternating, pedalOf('drive')], true).cautions).not.toContain(words);
    expect(told([alternating, pedalOf('other', { power: 'AC', polarity: null })]).cautions.join()).not.toMatch(/on DC/);
  });
});
