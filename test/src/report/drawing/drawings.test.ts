import { describe, expect, it } from 'vitest';

import { boardDrawing, boardDrawings } from '../../../../src/report/drawing/drawings.js';
import { elementsOf } from '../../../support/elements.js';
import { planOf, plainPlan } from '../handouts.js';

const textsOf = (drawing: { readonly markup: string }): readonly string[] =>
  elementsOf(drawing.markup)
    .filter(({ name }) => name === 'text')
    .map(({ text }) => text);

describe('a drawing of the board', () => {
  it.each(['wide', 'narrow', 'sheet', 'dense', 'small'] as const)(
    'has every pedal and every output in it, %s, each with its identity',
    (size) => {
      const plan = planOf();
      const elements = elementsOf(boardDrawing(plan, size, 'board').markup);
      expect(elements[0]?.attributes.get('class')).toBe(size);
      const marked = (name: string): readonly (string | undefined)[] =>
        elements.filter(({ attributes }) => attributes.has(name)).map(({ attributes }) => attributes.get(name));
      expect(marked('data-pedal')).toEqual(plan.speech.board.pedals.map(({ id }) => id));
      const outputs = plan.hookup.flatMap(({ unit: { supply, unit } }) =>
        supply.banks.flatMap((bank) =>
          Array.from({ length: bank.outputs }, (_, at) => `${supply.id} ${unit} ${bank.firstOutput + at}`),
        ),
      );
      expect([...marked('data-output')].sort()).toEqual(outputs.sort());
      expect(new Set(marked('data-lead')).size).toBe(plan.hookup.flatMap(({ leads }) => leads).length);
    },
  );

  it.each(['wide', 'narrow', 'sheet'] as const)('says, %s, what is asked of an output at switch-on', (size) => {
    const texts = textsOf(boardDrawing(plainPlan(), size, 'board')).join(' ');
    expect(texts).toContain('216 of 400 mA');
    expect(texts).toContain('350 mA at switch-on');
  });

  it('tells all of it to those who do not see it', () => {
    const [svg, title, description] = elementsOf(boardDrawing(planOf(), 'wide', 'board').markup);
    expect(svg?.attributes.get('role')).toBe('img');
    expect(title?.text).toBe('Wiring of board');
    for (const { pedal, mark } of planOf().rows)
      expect(description?.text).toMatch(new RegExp(`Lead ${mark}: .* to ${pedal},`));
    expect(description?.text).toContain(
      'old-wah, 9 V DC, centre-positive; marked plus on the pin, reverses, chain, shared ground.',
    );
    expect(description?.text).toContain('nowhere is without power: needs 24 V');
  });

  it('says in words what each is, how full it is and what is yours', () => {
    const texts = textsOf(boardDrawing(planOf(), 'wide', 'board'));
    const all = texts.join(' | ');
    expect(all).toContain(
      'shared | yours | mains socket 1 | outputs 1–5: 165 of 1000 mA | 17 % | shared ground | 1 | free | 9 V 300 mA',
    );
    expect(all).toContain('lead-drive | 9 V DC, 12 mA | exposed to noise | high gain');
    expect(all).toContain('nowhere | without power');
    expect(all).toContain('fan | 2 of 5 tails | chain | shared ground');
    expect(all).toContain('stack | volts add to');
    expect(all).toContain('set 9 V DC | 120 of 500 mA | 24 % | joined with output 2');
    expect(textsOf(boardDrawing(plainPlan(), 'wide', 'board')).join(' | ')).toContain(
      'Chapel drive | 18 V DC, 15 mA | high gain | over 9 V',
    );
  });
});

describe('a board in parts', () => {
  it('is one drawing as long as it is small', () => {
    expect(boardDrawings(planOf(), 'wide', 'board')).toHaveLength(1);
    expect(boardDrawings(planOf(), 'narrow', 'board')).toHaveLength(1);
    expect(boardDrawings(planOf(), 'wide', 'board')[0]?.markup).toBe(boardDrawing(planOf(), 'wide', 'board').markup);
  });
});
