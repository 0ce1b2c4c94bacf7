import { kitOf } from '../../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { pedalId } from '../../../../src/domain/quantities.js';
import { hookupOf } from '../../../../src/report/words/hookup.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { unitUses } from '../../../../src/report/words/usage.js';
import { planOf, plainPlan } from '../handouts.js';
import { bankFrom, boardOf, catalogueOf, feedOf, partOf, pedalOf, supplyOf, planOf as plugged } from '../samples.js';

describe('leads in the order of hooking up', () => {
  it('are numbered through all units, with a letter for each tail of a chain', () => {
    const marks = planOf().hookup.map(({ name, socket, leads }) => ({
      name,
      socket,
      ends: leads.map(({ ends }) => ends.map(({ mark, feed }) => `${mark} ${feed.pedal}`)),
    }));
    expect(marks).toEqual([
      {
        name: 'shared',
        socket: 1,
        ends: [['1a chorus', '1b old-wah'], ['2 looper'], ['3 lead-drive']],
      },
      { name: 'joiner, unit 1', socket: 2, ends: [['4 big-preamp'], ['5 granular']] },
      { name: 'joiner, unit 2', socket: 3, ends: [['6 synth']] },
      { name: 'ac', socket: 4, ends: [['7 tube-delay']] },
      { name: 'rough', socket: 5, ends: [['8 survivor']] },
    ]);
  });

  it('are as many as outputs are in use, joined ones counted once', () => {
    expect(plainPlan().hookup.flatMap(({ leads }) => leads.map(({ number }) => number))).toEqual([1, 2, 3]);
  });

  it('go on with two letters after the twenty-sixth tail', () => {
    const pedals = Array.from({ length: 28 }, (_, at) => pedalOf(`p${at}`));
    const board = boardOf(pedals);
    const fan = partOf('fan', { kind: 'chain', tails: 30 });
    const catalogue = catalogueOf([supplyOf('one', [bankFrom(1, 1)])], [fan]);
    const speech = speechOf(kitOf(board, catalogue));
    const { inventory } = speech;
    const feeds = pedals.map(({ id }) => feedOf(id, 'one', 1, { chain: fan.id }));
    const [unit] = hookupOf(speech, unitUses(board, inventory, plugged(board, catalogue, feeds)));
    const marks = unit?.leads[0]?.ends.map(({ mark }) => mark) ?? [];
    expect(marks.slice(24)).toEqual(['1y', '1z', '1aa', '1ab']);
    expect(unit?.leads[0]?.ends[0]?.feed.pedal).toBe(pedalId('p0'));
  });
});
