import { describe, expect, it } from 'vitest';

import { typedIn } from '../../../../../src/node/cli/completion/words.js';

/** The cursor stands at the bar. */
const typed = (marked: string) => typedIn(marked.replace('|', ''), marked.indexOf('|'));

describe('a line is split as a shell does it', () => {
  it.each([
    ['boardfeed |', [''], 0],
    ['boardfeed ch|', ['ch'], 0],
    ['boardfeed choose |', ['choose', ''], 1],
    ['boardfeed  choose   a.yaml b|', ['choose', 'a.yaml', 'b'], 2],
    ['boardfeed choose "my board.yaml" |', ['choose', 'my board.yaml', ''], 2],
    ["boardfeed choose 'my b|", ['choose', 'my b'], 1],
    ['boardfeed choose my\\ board.yaml |', ['choose', 'my board.yaml', ''], 2],
    ['boardfeed choose "a\\"b" |', ['choose', 'a"b', ''], 2],
    ['boardfeed check --output quay-6:|', ['check', '--output', 'quay-6:'], 2],
    ['boardfeed choose --aim=q|', ['choose', '--aim=q'], 1],
    ['boardfeed choose a\\|', ['choose', 'a'], 1],
  ])('%s', (line, words, at) => {
    expect(typed(line)).toEqual({ words, at });
  });

  it('what stands behind the cursor is there as well, but for the rest of its word', () => {
    expect(typed('boardfeed check --pedal | board.yaml')).toEqual({
      words: ['check', '--pedal', '', 'board.yaml'],
      at: 2,
    });
    expect(typed('boardfeed check --pe|dal x board.yaml')).toEqual({
      words: ['check', '--pe', 'x', 'board.yaml'],
      at: 1,
    });
  });
});
