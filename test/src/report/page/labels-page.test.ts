import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { decisiveLabels } from '../../../../src/planning/ask/decisive-labels.js';
import { labelsPage } from '../../../../src/report/page/labels-page.js';
import { labelsText } from '../../../../src/report/screen/labels-screen.js';
import { microamps } from '../../../../src/domain/quantities.js';
import { elementsOf } from '../../../support/elements.js';
import { boardOf, pedalOf, tideway } from '../samples.js';

const board = boardOf([
  pedalOf('birch', { name: 'Birch <b>&', figure: 'guess', assumed: { power: 'DC' } }),
  pedalOf('cedar', { name: 'Cedar' }),
]);
const kit = kitOf(board, tideway.catalogue);
const answer = await decisiveLabels(kit);

describe('the page of which labels decide', () => {
  it('has boxes to tick, a chart of each guess, and the same figures in a table', () => {
    const page = labelsPage({ kit, answer });
    const draw = answer.kind === 'labels' ? answer.labels.find((label) => label.draw !== null)?.draw : null;
    const elements = elementsOf(page);
    expect(elements.filter(({ name }) => name === 'input').length).toBeGreaterThan(0);
    expect(elements.filter(({ attributes }) => attributes.get('class') === 'reach')).toHaveLength(1);
    const spans = elements.filter(({ name }) => name === 'span').map(({ text }) => text);
    expect(spans).toContain(String((draw?.asWired.microamps ?? 0) / 1000));
    expect(page).not.toContain('Birch <b>');
    expect(page.replace(/<(style|svg)\b[^]*?<\/\1>/g, '').replace(/<[^>]*>/g, ' ')).not.toMatch(/\bfiles?\b|--[a-z]/);
  });

  it('says why where there is nothing to ask about', async () => {
    const none = await decisiveLabels(
      kitOf(
        boardOf([pedalOf('echo', { alone: true, draw: { kind: 'flat', microamps: microamps(9_000_000) } })]),
        tideway.catalogue,
      ),
    );
    expect(none.kind).toBe('impossible');
    expect(labelsPage({ kit, answer: none })).toContain('Not known: no plan powers every pedal.');
    expect(labelsPage({ kit, answer: { kind: 'stopped' } })).toContain('before there was a plan.');
    const text = labelsText(kit, none, { width: 100, colour: false });
    expect(text).toContain('Test board: which labels decide is not known\nNo plan powers every pedal: ask boardfeed');
  });
});
