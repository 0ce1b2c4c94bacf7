import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import { wayTexts } from '../../../../src/report/words/explain-folded-ways.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { toldWays } from '../../../../src/web/worker/told-ways.js';
import { listed, partOf, pedalOf } from '../../../support/builders.js';
import { ownedOf, quay, small, wired } from '../rewire/wired-board.js';

const unsold = { price: null, stock: 0 };
const fan = partOf('fan', 0, { kind: 'chain', tails: 2 }, { name: 'Chain of two', ...unsold });
const flip = partOf('flip', 0, { kind: 'adapter' }, { name: 'Reversing lead', reverses: true, ...unsold });
const onChain = [quay('drive', 1, { chain: fan.id }), quay('chorus', 1, { chain: fan.id })];
const pedals = [pedalOf('drive', 10), pedalOf('chorus', 20)];
const gear = { supplies: [], parts: [fan, flip] };
const owned = ownedOf({ quay: 1 }, { flip: 1 });

async function explained(board: ReturnType<typeof wired>) {
  const kit = kitOf(board, null);
  const explanation = await explain(kit, { shrinkMs: 100_000 });
  if (explanation.kind !== 'impossible') throw new Error(`it is ${explanation.kind}`);
  return { kit, explanation };
}

describe('leads that are plugged today and not owned', () => {
  it('are the first way out where with them there is a plan', async () => {
    const { kit, explanation } = await explained(wired(pedals, [small(1)], onChain, { gear, owned }));
    expect(wayTexts(speechOf(kit), explanation.ways)[0]).toBe(
      'Add 1 × Chain of two to what you own, if you have it: it is plugged today. Then there is a plan that buys nothing.',
    );
    expect(toldWays(kit, explanation).ways[0]?.edits).toEqual([
      { kind: 'set', path: ['owned', 'parts'], value: { flip: 1, fan: 1 } },
    ]);
  });

  it('are no way out where they would not do either', async () => {
    const odd = [...pedals, pedalOf('odd', 10, { accepts: listed(24) })];
    const { explanation } = await explained(wired(odd, [small(1)], onChain, { gear, owned }));
    expect(explanation.ways.map(({ change }) => change.kind)).not.toContain('unowned');
  });
});
