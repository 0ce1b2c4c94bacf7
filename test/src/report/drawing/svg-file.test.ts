import { describe, expect, it } from 'vitest';

import { svgFile } from '../../../../src/report/drawing/svg-file.js';
import { elementsOf } from '../../../support/elements.js';
import { allHandouts, planOf } from '../handouts.js';

describe('the drawing as a file', () => {
  it('is well-formed, has a title, a description and a ground of its own', () => {
    for (const handout of [...allHandouts(), planOf((id) => `<${id}&"'\0\ufffe`)]) {
      const elements = elementsOf(svgFile(handout));
      const [svg, title, description] = elements;
      expect([svg?.name, title?.name, description?.name]).toEqual(['svg', 'title', 'desc']);
      expect(elements.filter(({ attributes }) => attributes.get('class') === 'ground')).toHaveLength(1);
      expect(elements.filter(({ name }) => ['script', 'image', 'use', 'a', 'foreignObject'].includes(name))).toEqual(
        [],
      );
    }
  });

  it('tells the reasons where there is no plan, and names every pedal without power', () => {
    const impossible = allHandouts()[3];
    if (impossible === undefined) throw new Error('no such answer');
    const texts = elementsOf(svgFile(impossible))
      .filter(({ name }) => name === 'text')
      .map(({ text }) => text);
    expect(texts.join(' ')).toContain('nearest miss: voltage at joiner outputs 1 and 2: needs 24 V');
    for (const { name } of impossible.speech.board.pedals) expect(texts).toContain(name);
  });
});
