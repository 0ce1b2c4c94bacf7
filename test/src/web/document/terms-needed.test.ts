import { parse } from 'yaml';
import { expect, test } from 'vitest';

import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';
import { statedPedals, boardData } from '../../../../src/web/document/board-data.js';
import { sayingOf } from '../../../../src/web/document/change-pedal.js';
import { documentOf, type PageDocument } from '../../../../src/web/document/page-document.js';
import { withRows } from '../../../../src/web/document/paste-rows.js';
import { withTermsNeeded } from '../../../../src/web/document/terms-needed.js';
import { withLineEntered } from '../../../../src/web/document/type-pedal.js';

/** Says of a pedal, and of the policy, no more than this one needs. */
const strict = `# from elsewhere
board: Strict
currency: EUR
policy: {headroom: {alone: 1.2, chained: 2, supply: 1.2}, chains: allow} # as agreed
pedals:
  - {name: Moss drive, power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative, volts: 9, milliamps: 8, highGain: true}
`;
const strictDocument = documentOf({ board: { file: 'strict.yaml', text: strict }, shop: null });
const isRight = ({ board }: PageDocument): boolean => inputsFromText(board, null).kind === 'read';
const termsOf = ({ board }: PageDocument): unknown => {
  const { assume, policy } = parse(board.text) as Record<string, unknown>;
  return { assume, policy };
};
const policy = { headroom: { alone: 1.2, chained: 2, supply: 1.2 }, chains: 'allow' };

test('a pedal of which nothing is known is planned for on a board that says nothing of such pedals', () => {
  const document = withLineEntered({ ...strictDocument, line: 'Ruff tuner' });
  expect(isRight(document)).toBe(true);
  expect(termsOf(document)).toEqual({
    assume: { power: 'DC', inlet: 'barrel-2.1', volts: 9 },
    policy: { ...policy, guess: 1.5, noisePrice: 20 },
  });
  expect(document.board.text).toContain('# from elsewhere');
  expect(document.board.text).toContain('# as agreed');
});

test('so are pasted rows', () => {
  const { document, refused } = withRows(
    strictDocument,
    'name\tvolts\tmilliamps\nRuff tuner\t?\t30\nHeron delay\t9\t40',
  );
  expect(refused).toEqual([]);
  expect(isRight(document)).toBe(true);
});

test('so is a pedal of which more is said later', () => {
  const [pedal] = statedPedals(boardData(strict));
  if (pedal === undefined) throw new Error('there is no pedal');
  const document = sayingOf(pedal, { figure: 'guess', volts: 'unknown' })(strictDocument);
  expect(isRight(document)).toBe(true);
  expect(termsOf(document)).toEqual({ assume: { volts: 9 }, policy: { ...policy, guess: 1.5 } });
});

test('what a board says stays, and what no pedal needs is not said', () => {
  const stated = strict
    .replace(
      'chains: allow}',
      'chains: allow, guess: 2, noisePrice: 5}\nassume: {power: AC, inlet: jack-3.5, volts: 12}',
    )
    .concat(
      '  - {name: Ruff, power: unknown, polarity: unknown, inlet: unknown, ground: unknown, volts: unknown, milliamps: unknown, circuit: tuner, digital: true}\n',
    );
  expect(withTermsNeeded(stated)).toBe(stated);
  expect(withTermsNeeded(strict)).toBe(strict);
});
