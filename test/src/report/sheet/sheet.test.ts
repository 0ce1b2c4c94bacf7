import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { millivolts } from '../../../../src/domain/quantities.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { reportText } from '../../../../src/report/formats.js';
import { sheetText } from '../../../../src/report/sheet/sheet.js';
import { handoutOf, type PlanHandout } from '../../../../src/report/words/handout.js';
import { elementsOf, type FoundElement } from '../../../support/elements.js';
import { allHandouts, movingPlan, planOf, plainPlan } from '../handouts.js';
import { boardOf, pedalOf, tideway } from '../samples.js';

const occasion = { shop: null, date: null };
const named = (elements: readonly FoundElement[], name: string): readonly FoundElement[] =>
  elements.filter((element) => element.name === name);
const headings = (handout: PlanHandout): readonly string[] =>
  named(elementsOf(sheetText(handout, occasion)), 'h2').map(({ text }) => text);
/** All that a person reads: no drawing, for its words are its own, and no style. */
const wordsOf = (sheet: string): string =>
  sheet
    .replace(/<(style|svg)\b[^]*?<\/\1>/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

describe('the sheet of a plan', () => {
  const read = 'Read at home, before you plug anything in';

  it('has what a person needs in its order, on one side where the pedals are few', async () => {
    const board = boardOf([
      pedalOf('drive', { highGain: true, assumed: { polarity: 'centre-negative' } }),
      pedalOf('wah', { kept: 'unread', unknown: ['volts'] }),
      pedalOf('nowhere', { accepts: { kind: 'listed', millivolts: [millivolts(24_000)] } }),
    ]);
    const kit = kitOf(board, tideway.catalogue);
    const sheet = sheetText(handoutOf({ kit, answer: await choose(kit, { partial: true }) }), occasion);
    const titles = named(elementsOf(sheet), 'h2').map(({ text }) => text);
    expect(titles).toEqual([
      ...['Left out', 'What to buy', 'Mind', read, 'Wiring'],
      ...['What the meter must show', 'Always', 'Notes'],
    ]);
    expect(named(elementsOf(sheet), 'div').filter(isSide)).toHaveLength(1);
  });

  it('has two sides rather than print that nobody can read, what is done at the shop on the first', () => {
    expect(headings(planOf())).toEqual([
      ...['Left out', 'What to buy', 'Mind', 'Wiring', 'Notes'],
      ...[read, 'What the meter must show', 'Always'],
    ]);
    expect(named(elementsOf(sheetText(planOf(), occasion)), 'div').filter(isSide)).toHaveLength(2);
    expect(headings(movingPlan()).slice(0, 3)).toEqual(['Left out', 'What changes', 'What to buy']);
  });

  it('of a board that is re-plugged numbers what is done, in the safe order of its steps', () => {
    const { steps } = movingPlan();
    const order = /<ol>[^]*?<\/ol>/.exec(sheetText(movingPlan(), occasion))?.[0] ?? '';
    expect(named(elementsOf(order), 'b').map(({ text }) => text)).toEqual(steps.map(({ title }) => title));
    expect(wordsOf(order)).toMatch(/Measure every new plug : Plug .* Leads 1a, 1b, 2, 5, 6, 7 and 8, as below\./);
    expect(headings(movingPlan())).toContain('In this order');
    expect(headings(planOf())).not.toContain('In this order');
  });

  it('has one side as long as that has room, however many the pedals are, in the largest print that it has room for', async () => {
    const sheetFor = async (pedals: number) => {
      const board = boardOf(Array.from({ length: pedals }, (_, at) => pedalOf(`pedal-${at}`)));
      const kit = kitOf(board, tideway.catalogue);
      const text = reportText('sheet', { kit, answer: await choose(kit) });
      const print = /<main class="([^"]*)"/.exec(text)?.[1];
      return { sides: named(elementsOf(text), 'div').filter(isSide).length, print };
    };
    expect(await sheetFor(1)).toEqual({ sides: 1, print: 'largest' });
    expect(await sheetFor(11)).toMatchObject({ sides: 1 });
  });

  const isSide = ({ attributes }: FoundElement): boolean => attributes.get('class') === 'side';

  it('adds up: what is together is units times each, and the total is their sum', () => {
    const amount = (text = ''): number => Number(text.replace(/\sEUR$/, '').replace('.', ''));
    for (const handout of [planOf(), movingPlan()]) {
      const sheet = sheetText(handout, occasion);
      const spans = named(elementsOf(sheet), 'span').map(({ text }) => text);
      const together = handout.shopping.map(({ name, units }) => {
        const at = spans.indexOf(`${units} × ${name}`);
        expect(at).toBeGreaterThanOrEqual(0);
        expect(amount(spans[at + 2])).toBe(amount(spans[at + 1]) * units);
        return amount(spans[at + 2]);
      });
      expect(together.length).toBeGreaterThan(2);
      const total = /Total<\/th><td[^>]*>([^<]*)</.exec(sheet)?.[1];
      expect(amount(total)).toBe(together.reduce((sum, one) => sum + one, 0));
    }
  });

  it('speaks of no file, no key and no command', () => {
    const all = [...allHandouts(), plainPlan()];
    for (const handout of all) {
      const words = wordsOf(sheetText(handout, occasion));
      expect(words.length).toBeGreaterThan(100);
      expect(words).not.toMatch(
        /\bfiles?\b|\bcatalogue\b|\brun\b (it )?again|--[a-z]|`|\bYAML\b|\bJSON\b|boardfeed [a-z]|\b(owned|wiring|policy):/i,
      );
    }
  });

  it('tells the shop and the day where they are given, and the seller where the shop gives no name', () => {
    const head = (given: Parameters<typeof sheetText>[1]): string =>
      /<header>[^]*<\/header>/.exec(sheetText(plainPlan(), given))?.[0] ?? '';
    const both = head({ shop: 'Corner <i>shop', date: '28 November 2026' });
    expect(both).toContain('<b>Corner &lt;i&gt;shop</b><span>28 November 2026</span>');
    expect(head(occasion)).toContain(`<b>${tideway.catalogue.name}</b>`);
    expect(head(occasion)).not.toContain('2026');
  });

  it('has a box for each plug to measure, none for a place that is kept, and where that is', async () => {
    const board = boardOf([pedalOf('echo'), pedalOf('wah', { kept: 'unread', unknown: ['volts'] })]);
    const kit = kitOf(board, tideway.catalogue);
    const text = reportText('sheet', { kit, answer: await choose(kit) });
    expect(text.match(/Lead \S+ reads right/g)).toHaveLength(1);
    expect(wordsOf(text)).toMatch(/Plug nothing in here yet: Quay 6, output \d: for wah \(label unread\)\./);
  });
});
