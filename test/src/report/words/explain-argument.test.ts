import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import { argumentTexts } from '../../../../src/report/words/explain-argument.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { pedalOf } from '../../../support/builders.js';
import { box, caseOf, fan, twin, type Given } from '../../planning/given.js';

async function whyNot(given: Given): Promise<readonly string[]> {
  const { board, catalogue } = caseOf(given);
  const kit = kitOf(board, catalogue);
  const explanation = await explain(kit, { shrinkMs: 100_000 });
  if (explanation.kind !== 'impossible') throw new Error(`it is ${explanation.kind}`);
  return explanation.conflicts.flatMap((argument) => argumentTexts(speechOf(kit), argument));
}

describe('labels that nobody has read', () => {
  it('are named where a ground that nobody knows may be shared with nobody', async () => {
    const unread = { ground: 'unknown', unknown: ['ground'] } as const;
    const texts = await whyNot({
      pedals: [pedalOf('alder', 20, unread), pedalOf('birch', 30, unread)],
      supplies: [box(2, { isolated: false }, { stock: 1 })],
    });
    expect(texts).toContain('Nobody knows the ground of alder and birch, which may be shared with no other pedal.');
  });

  it('are named where no lead serves either polarity', async () => {
    const texts = await whyNot({
      pedals: [pedalOf('alder', 20, { polarity: 'unknown', unknown: ['polarity'] })],
      supplies: [box(1)],
    });
    expect(texts).toContain('Plus and minus have to be the right way round: alder may be either.');
  });
});

describe('leads that reverse', () => {
  it('are named where plus and minus are in the way', async () => {
    const texts = await whyNot({
      pedals: [pedalOf('alder', 20), pedalOf('birch', 30)],
      supplies: [box(1, {}, { stock: 1 })],
      parts: [{ ...fan, reverses: true }],
    });
    expect(texts).toContain(
      'Plus and minus have to be the right way round: alder and birch are centre-negative; fan turns them round.',
    );
  });

  it('make the nearest miss that of the rule in the way, not of one that another place breaks', async () => {
    const texts = await whyNot({
      pedals: [pedalOf('alder', 150)],
      supplies: [box(2, { joins: ['parallel'] })],
      parts: [{ ...twin, reverses: true }],
    });
    expect(texts).toContainEqual(
      expect.stringMatching(/^The nearest miss is at box outputs 1 and 2, on the rule polarity: .* in parallel give/),
    );
    expect(texts).toContain('Other outputs fail on current.');
  });
});
