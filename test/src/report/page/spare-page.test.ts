import { describe, expect, it } from 'vitest';

import type { Board, Catalogue } from '../../../../src/domain/board.js';
import { kitOf } from '../../../../src/domain/kit.js';
import { microamps, millivolts, partId, supplyId } from '../../../../src/domain/quantities.js';
import { spare } from '../../../../src/planning/spare/spare.js';
import { sparePage } from '../../../../src/report/page/spare-page.js';
import { spareText } from '../../../../src/report/screen/spare-screen.js';
import { elementsOf } from '../../../support/elements.js';
import { wiredOn } from '../../../support/wired.js';
import { bankFrom, boardOf, catalogueOf, pedalOf, settingOf, supplyOf } from '../samples.js';

/** A box of four outputs of 100 mA, 300 mA in all; two pedals on the first two, one of them digital. */
function box(named: (id: string) => string = (id) => id): { readonly board: Board; readonly catalogue: Catalogue } {
  const draw = { kind: 'flat', microamps: microamps(50_000) } as const;
  const pedals = ['echo', 'drive'].map((id) => pedalOf(id, { name: named(id), draw, digital: id === 'echo' }));
  const total = { kind: 'current', microamps: microamps(300_000) } as const;
  const supply = supplyOf('box', [bankFrom(1, 4, { settings: [settingOf(9, 100)] })], { name: named('box'), total });
  return {
    board: boardOf(pedals, {
      owned: { supplies: new Map([[supplyId('box'), 1]]), parts: new Map([[partId('flip'), 1]]) },
      wiring: [wiredOn('box', 'echo', 1), wiredOn('box', 'drive', 2)],
    }),
    catalogue: catalogueOf([supply], []),
  };
}

async function made({ board, catalogue }: ReturnType<typeof box>) {
  const kit = kitOf(board, catalogue);
  const answer = await spare(kit);
  const page = sparePage({ kit, answer });
  const words = page
    .replace(/<style>[^]*?<\/style>/, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');
  return { kit, answer, page, words };
}

describe('the page of what there is to spare', () => {
  it('tells what more fits in the words of the screen', async () => {
    const { kit, answer, words } = await made(box());
    const screen = spareText(kit, answer, { width: 130, colour: false }).replace(/\s+/g, ' ');
    const [, said = ''] = /• (More 9 V pedals of 100 mA.*?) • One more/.exec(screen) ?? [];
    expect(said).not.toBe('');
    expect(words).toContain(said);
    expect(words).toContain('As the board is plugged today: 2 pedals on 1 supply.');
  });

  it('has what is left of every output and total, and a bar for each load', async () => {
    const { page } = await made(box());
    const rows = elementsOf(page).filter(({ name }) => name === 'tr');
    const cells = page
      .split('<tr')
      .slice(2)
      .map((row) => [...row.matchAll(/<span>([^<]*)<\/span>/g)].map(([, text = '']) => text.replaceAll('\u00a0', ' ')));
    expect(rows).toHaveLength(5);
    // 50 mA × 1.2 = 60 mA of 100 mA each, and 120 mA of 300 mA.
    expect(cells).toEqual([
      ['box', '1', '9 V', 'echo', '60 of 100 mA, 60 %', '40 mA'],
      ['box', '2', '9 V', 'drive', '60 of 100 mA, 60 %', '40 mA'],
      ['box', '3–4', '', 'free', 'none', '9 V 100 mA each'],
      ['box', 'all', '', 'the whole supply', '120 of 300 mA, 40 %', '180 mA'],
    ]);
    expect(elementsOf(page).filter(({ attributes }) => attributes.get('class') === 'reach')).toHaveLength(3);
  });

  it('calls an output not free where a pedal of unknown ground has the ground to itself', async () => {
    const shared = bankFrom(1, 2, { settings: [settingOf(9, 100)], isolated: false });
    const { page } = await made({
      board: boardOf([pedalOf('unread', { ground: 'unknown' })], {
        owned: { supplies: new Map([[supplyId('box'), 1]]), parts: new Map() },
        wiring: [wiredOn('box', 'unread', 1)],
      }),
      catalogue: catalogueOf([supplyOf('box', [shared])], []),
    });
    const told = page.replace(/<[^>]*>/g, '|').replaceAll('\u00a0', ' ');
    expect(told).toMatch(/nothing beside a pedal of unknown ground/);
    expect(told).toMatch(/2\|[|\s]*not free\|[|\s]*none\|[|\s]*unread has this ground to itself/);
    expect(told).not.toMatch(/\|free\|/);
  });

  it('says why nothing is known where the wiring is broken or no plan is there', async () => {
    const { board, catalogue } = box();
    const crowded = await made({
      board: { ...board, wiring: [wiredOn('box', 'echo', 1), wiredOn('box', 'drive', 1)] },
      catalogue,
    });
    expect(crowded.words).toContain('Not known: the wiring breaks hard rules.');
    expect(crowded.words).toContain('Chain:');
    const tall = pedalOf('tall', { accepts: { kind: 'listed', millivolts: [millivolts(24_000)] } });
    const none = await made({ board: { ...board, pedals: [tall], wiring: [] }, catalogue });
    expect(none.words).toContain('no plan powers them all');
  });

  it('speaks of no file, key or command, and makes no element of a name', async () => {
    const { page, words } = await made(box((id) => `${id} <b onclick="x">&`));
    expect(words).not.toMatch(/\bfiles?\b|--[a-z]|`|\bboardfeed [a-z]/);
    expect(page).not.toContain('<b ');
    expect(page).toContain('&lt;b onclick=');
  });
});
