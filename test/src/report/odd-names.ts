import fc from 'fast-check';

const oddLetters = fc.constantFrom(
  '\u001b[31m',
  '\u001b]8;;x\u0007',
  '\u202e',
  '\r',
  '\n',
  '\t',
  '\u0085',
  '日',
  '本',
  '🎸',
  'e\u0301',
  ' ',
  '  ',
  '-',
  'w',
);
/** Names with terminal escapes, marks that turn the reading direction, wide letters and much white space. */
export const oddName = fc.string({
  unit: fc.oneof(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }), oddLetters),
  minLength: 1,
  maxLength: 60,
});
