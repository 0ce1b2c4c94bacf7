import { describe, expect, it } from 'vitest';

import { labelsOf } from '../../../../src/report/labels/label.js';
import { labelSheet } from '../../../../src/report/labels/sheet.js';
import { elementsOf } from '../../../support/elements.js';
import { allHandouts, planOf } from '../handouts.js';

const labels = labelsOf(planOf());

describe('labels', () => {
  it('are one for each end of each lead: each output in use, and each fed pedal', () => {
    const { wiring } = planOf();
    const outputs = new Set(
      wiring.feeds.flatMap(({ supply, unit, outputs: all }) => all.map((one) => `${supply} ${unit} ${one}`)),
    );
    expect(labels.filter(({ end }) => end === 'supply')).toHaveLength(outputs.size);
    expect(labels.filter(({ end }) => end === 'pedal')).toHaveLength(wiring.feeds.length);
  });

  it('say where an end goes, what it gives and where the other end is', () => {
    expect(labels.slice(0, 3)).toEqual([
      {
        mark: '1',
        end: 'supply',
        here: 'shared, output 2',
        volts: '9 V DC',
        polarity: null,
        hazards: ['plus pin', 'reverses', 'chain', 'shared ground'],
        there: 'to 2 pedals by fan',
      },
      {
        mark: '1a',
        end: 'pedal',
        here: 'chorus',
        volts: '9 V DC',
        polarity: 'centre-negative',
        hazards: ['chain', 'shared ground'],
        there: 'from shared, output 2',
      },
      {
        mark: '1b',
        end: 'pedal',
        here: 'old-wah',
        volts: '9 V DC',
        polarity: 'centre-positive',
        hazards: ['plus pin', 'reverses', 'chain', 'shared ground'],
        there: 'from shared, output 2',
      },
    ]);
  });

  it('tell both outputs of a join, and AC without a polarity', () => {
    expect(labels.filter(({ mark }) => mark === '4')).toMatchObject([
      { here: 'joiner, unit 1, output 1', volts: '9 V DC', there: 'to big-preamp, joined with output 2' },
      { here: 'joiner, unit 1, output 2', volts: '9 V DC', there: 'to big-preamp, joined with output 1' },
      { here: 'big-preamp', volts: '18 V DC', there: 'from joiner, unit 1, outputs 1 and 2' },
    ]);
    expect(labels.filter(({ mark }) => mark === '7').map(({ volts, polarity }) => [volts, polarity])).toEqual([
      ['9 V AC', null],
      ['9 V AC', null],
    ]);
  });

  it('carry the marks of what hangs on them, each as a shape beside its word', () => {
    expect(labels.filter(({ mark }) => mark === '4').map(({ hazards }) => hazards)).toEqual(
      Array.from({ length: 3 }, () => ['over 9 V']),
    );
    const elements = elementsOf(labelSheet(planOf()));
    const words = elements.filter(({ name, attributes }) => name === 'span' && attributes.get('class') !== 'unseen');
    expect(words.slice(0, 4).map(({ text }) => text)).toEqual([
      'plus on the pin',
      'reverses',
      'chain',
      'shared ground',
    ]);
    expect(words).toHaveLength(labels.flatMap(({ hazards }) => hazards).length);
    const shapes = elements.filter(({ attributes }) => attributes.get('class') === 'icon');
    const signs = labels.filter(({ polarity }) => polarity !== null);
    expect(shapes).toHaveLength(words.length + signs.length);
  });

  it('fill a sheet, which says so where there is nothing to label', () => {
    const items = elementsOf(labelSheet(planOf())).filter(({ name }) => name === 'li');
    expect(items).toHaveLength(labels.length);
    for (const handout of allHandouts().slice(2, 5)) expect(labelSheet(handout)).toContain('<p>No labels.</p>');
  });
});
