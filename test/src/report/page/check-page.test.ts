import { describe, expect, it } from 'vitest';

import type { Board, Catalogue } from '../../../../src/domain/board.js';
import { kitOf } from '../../../../src/domain/kit.js';
import { check } from '../../../../src/planning/check/check.js';
import { checkPage } from '../../../../src/report/page/check-page.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { unitLoads } from '../../../../src/report/words/unit-loads.js';
import { unitUses } from '../../../../src/report/words/usage.js';
import { percentOf } from '../../../../src/report/words/words.js';
import { elementsOf } from '../../../support/elements.js';
import { pluggedBadly, pluggedWell, weakTideway } from '../plugged.js';

const hostile = (id: string): string => `${id} <b onclick="x">&`;

function made({ board, catalogue }: { readonly board: Board; readonly catalogue: Catalogue | null }) {
  const kit = kitOf(board, catalogue);
  const answer = check(kit);
  const page = checkPage({ kit, answer });
  const words = page.replace(/<style>[^]*?<\/style>/, '').replace(/<[^>]*>/g, ' ');
  return { kit, answer, page, words };
}

describe('the page of a check', () => {
  it('tells the verdict and every broken rule, the worst first', () => {
    const { answer, words } = made(weakTideway);
    expect(words).toContain('Not safe. Hard rules are broken in 2 places');
    const at = answer.findings.map(({ rule }) => words.toLowerCase().indexOf(`${rule}:`));
    expect(at).toHaveLength(2);
    expect(at.every((one, index) => one > (at[index - 1] ?? 0))).toBe(true);
    expect(made(pluggedWell((id) => id)).words).toContain('if the figures are right: no hard rule is broken');
    const bare = pluggedWell((id) => id);
    expect(made({ ...bare, board: { ...bare.board, wiring: [] } }).words).toContain('Nothing is plugged.');
  });

  it('gives cells that say nothing no heading where rows are cards', () => {
    for (const page of [made(pluggedWell((id) => id)).page, made(weakTideway).page]) {
      const empty = [...page.matchAll(/<td[^>]*><span><\/span><\/td>/g)].map(([cell]) => cell);
      expect(empty.length).toBeGreaterThan(0);
      expect(empty.every((cell) => cell.includes('class="empty"'))).toBe(true);
      expect(page).toContain('.cards td.empty{display:none}');
    }
  });

  it('has a bar for each load, as long as its share of the limit', () => {
    for (const sample of [weakTideway, pluggedWell((id) => id), pluggedBadly((id) => id)]) {
      const { kit, answer, page } = made(sample);
      const speech = speechOf(kit);
      const loads = unitLoads(speech, unitUses(kit.board, speech.inventory, answer.wiring));
      const rects = elementsOf(page).filter(({ name }) => name === 'rect');
      const widths = (manner: string): readonly number[] =>
        rects
          .filter(({ attributes }) => attributes.get('class') === manner)
          .map(({ attributes }) => Number(attributes.get('width')));
      expect(loads.length).toBeGreaterThan(0);
      const [frame = 0] = widths('further');
      expect(widths('further')).toEqual(loads.map(() => frame));
      expect(widths('reach')).toEqual(
        loads.map(({ meter }) => Math.round((Math.min(percentOf(meter), 108) * frame) / 100)),
      );
    }
  });

  it('speaks of no file, key or command, and makes no element of a name', () => {
    for (const plugged of [pluggedWell, pluggedBadly]) {
      const { page, words } = made(plugged(hostile));
      expect(words).not.toMatch(/\bfiles?\b|--[a-z]|`|\bboardfeed [a-z]/);
      expect(page).not.toContain('<b ');
      expect(page).toContain('&lt;b onclick=');
    }
  });
});
