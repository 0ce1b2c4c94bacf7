import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { minorUnits } from '../../../../src/domain/quantities.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import { wayTexts } from '../../../../src/report/words/explain-folded-ways.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { pedalOf } from '../../../support/builders.js';
import { box, caseOf, type Given } from '../../planning/given.js';

async function waysOf(given: Given): Promise<readonly string[]> {
  const { board, catalogue } = caseOf(given);
  const kit = kitOf(board, catalogue);
  const explanation = await explain(kit, { shrinkMs: 100_000 });
  if (explanation.kind !== 'impossible') throw new Error(`it is ${explanation.kind}`);
  return wayTexts(speechOf(kit), explanation.ways);
}

/** One pedal more than the one box, of which there is no second, has outputs; no two are alike. */
const tooMany = (...names: readonly string[]): Given => ({
  pedals: names.map((name, at) => pedalOf(name, 20 + at, { alone: true })),
  supplies: [box(names.length - 1, {}, { stock: 1 })],
});

describe('many ways out of one sort', () => {
  it('share a text, with all that differs in it', async () => {
    const texts = await waysOf(tooMany('alder', 'birch', 'cedar'));
    expect(texts).toHaveLength(3);
    expect(texts[0]).toMatch(/^Get 1 × box more/);
    expect(texts.slice(1)).toEqual([
      'Find one more supply for any one of these pedals: ' +
        'alder, an isolated output of 9 V DC with 20 mA or more, centre-negative, plug 2.1 mm barrel; ' +
        'birch, an isolated output of 9 V DC with 21 mA or more, centre-negative, plug 2.1 mm barrel; ' +
        'cedar, an isolated output of 9 V DC with 22 mA or more, centre-negative, plug 2.1 mm barrel. ' +
        'Then the cheapest plan buys 1 × box besides, for 10.00 EUR.',
      'Leave out any one of alder, birch or cedar. Then the cheapest plan buys 1 × box, for 10.00 EUR.',
    ]);
  });

  it('are told one by one where they are two', async () => {
    const texts = await waysOf(tooMany('alder', 'birch'));
    expect(texts.filter((text) => text.startsWith('Leave out'))).toHaveLength(2);
    expect(texts.filter((text) => text.startsWith('Find one more supply for'))).toHaveLength(2);
  });
});

it('of which the plans differ tell from the cheapest, and what it is for, to the dearest', async () => {
  const { board, catalogue } = caseOf(tooMany('alder', 'birch', 'cedar'));
  const kit = kitOf(board, catalogue);
  const explanation = await explain(kit, { shrinkMs: 100_000 });
  if (explanation.kind !== 'impossible') throw new Error(`it is ${explanation.kind}`);
  const dearer = explanation.ways.map((way, at) => ({
    ...way,
    wiring: { ...way.wiring, score: { ...way.wiring.score, money: minorUnits(1000 + 100 * (7 - at)) } },
  }));
  const texts = wayTexts(speechOf(kit), dearer);
  expect(texts.at(-1)).toMatch(/Then there is a plan for 11\.00 EUR \(cedar\) to 13\.00 EUR\.$/);
});
