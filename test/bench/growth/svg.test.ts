import { expect, it } from 'vitest';

import { element, escaped, textElement } from '../../../bench/growth/svg.js';

it('escapes what would end a text or an attribute', () => {
  expect(escaped('a < b & "c" > d')).toBe('a &lt; b &amp; &quot;c&quot; &gt; d');
  expect(textElement('text', { class: 'a"b' }, '<5')).toBe('<text class="a&quot;b">&lt;5</text>');
});

it('writes elements with and without children', () => {
  expect(element('line', { x1: 1.25, x2: 2 })).toBe('<line x1="1.3" x2="2"/>');
  expect(element('g', {}, ['<a/>', '<b/>'])).toBe('<g>\n<a/>\n<b/>\n</g>');
});
