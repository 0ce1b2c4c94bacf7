import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import type { WiredFeed } from '../../../../src/domain/board.js';
import { partId } from '../../../../src/domain/quantities.js';
import { entryData, inOrder, withWiring } from '../../../../src/reading/drafts/record-wiring.js';
import { mapIn } from '../../../../src/reading/text/text-edits.js';
import { trying } from '../../../support/runs.js';
import { wiredOn } from '../../../support/wired.js';

const wired = (pedal: string, output: number, more: Partial<WiredFeed> = {}) => wiredOn('quay-6', pedal, output, more);

const recorded = (text: string, before: readonly WiredFeed[], after: readonly WiredFeed[]): string =>
  withWiring(text, mapIn(text), { before, after }) ?? 'no room';

const echo = '{pedal: echo, supply: quay-6, unit: 1, output: 5, volts: 9}';

describe('a wiring is put into a board file, all else stays', () => {
  it.each([
    ['where there is none', 'board: A   # mine\n', 'board: A   # mine\nwiring:\n  - @\n'],
    ['where it is empty', 'wiring: []   # none\nz: 1\n', 'wiring:   # none\n  - @\nz: 1\n'],
    ['where it has no value', 'wiring:   # none\nz: 1\n', 'wiring:   # none\n  - @\nz: 1\n'],
    ['in JSON', '{"board": "A"}', '{"board": "A", "wiring": [@]}'],
    ['in JSON with lines', '{\n  "board": "A"\n}\n', '{\n  "board": "A",\n  "wiring": [\n    @\n  ]\n}\n'],
    ['with the line ends that there are', 'board: A\r\n', 'board: A\r\nwiring:\r\n  - @\r\n'],
  ])('%s', (_, text, expected) => {
    const added = recorded(text, [], [wired('echo', 5)]);
    const entry = text.startsWith('{') ? JSON.stringify(parse(echo)) : echo;
    expect(added).toBe(expected.replace('@', entry));
  });

  const before = [wired('echo', 5), wired('fuzz', 1), wired('chorus', 2, { adapters: [partId('flip')] })];
  const text = [
    'wiring:             # today',
    '  # the loud one',
    '  - {pedal: echo, supply: quay-6, unit: 1, output: 5, volts: 9}   # by the door',
    '  # the next',
    '  - pedal: fuzz     # mine',
    '    supply: quay-6',
    '    output: 1       # the first',
    '    volts: 9',
    '    # below',
    '  - {pedal: chorus, supply: quay-6, unit: 1, output: 2, volts: 9, parts: [flip]}',
    'owned: {}           # nothing',
    '',
  ].join('\n');

  it('an entry that stays true is not touched, though it says less than could be said', () => {
    expect(recorded(text, before, before)).toBe(text);
  });

  it('an entry in brackets is written anew, and its comments stay', () => {
    const [first, ...others] = before;
    const moved = { ...first, ...wired('echo', 6, { lead: 4 }) };
    expect(recorded(text, before, [moved, ...others])).toBe(
      text.replace('output: 5, volts: 9}   #', 'output: 6, volts: 9, lead: 4}   #'),
    );
  });

  it('an entry of lines is changed key by key', () => {
    const chained = wired('fuzz', 3, { chain: partId('fan'), lead: 2 });
    expect(recorded(text, before, [wired('echo', 5), chained, ...before.slice(2)])).toBe(
      text
        .replace('output: 1       #', 'output: 3       #')
        .replace('volts: 9\n    #', 'volts: 9\n    chain: fan\n    lead: 2\n    #'),
    );
    const joined = wired('fuzz', 1, { outputs: [1, 2], join: { mode: 'series', part: partId('stack') } });
    expect(recorded(text, before, [wired('echo', 5), joined, ...before.slice(2)])).toBe(
      text
        .replace('    output: 1       # the first\n', '')
        .replace('volts: 9\n    #', 'volts: 9\n    outputs: [1, 2]\n    join: {mode: series, part: stack}\n    #'),
    );
  });

  it('an entry whose pedal is not plugged any more goes, with what stands on its lines', () => {
    expect(recorded(text, before, [wired('echo', 5)])).toBe(
      text.replace(/ {2}- pedal: fuzz[^]*?volts: 9\n/, '').replace(/ {2}- \{pedal: chorus.*\n/, ''),
    );
  });

  it('new entries come last', () => {
    expect(recorded(text, before, [wired('wah', 4), ...before])).toBe(
      text.replace('owned', '  - {pedal: wah, supply: quay-6, unit: 1, output: 4, volts: 9}\nowned'),
    );
  });
});

/** Each pedal on some output in some way, or not plugged. */
const wirings = fc
  .array(
    fc.record({
      output: fc.integer({ min: 1, max: 6 }),
      chain: fc.constantFrom(null, partId('fan')),
      adapters: fc.constantFrom([], [partId('flip')], [partId('flip'), partId('mini')]),
      lead: fc.option(fc.integer({ min: 1, max: 9 }), { nil: undefined }),
      tail: fc.constantFrom(undefined, undefined, 'a', 'n', 'y'),
      there: fc.boolean(),
    }),
    { minLength: 4, maxLength: 4 },
  )
  .map((drawn) =>
    drawn.flatMap(({ output, there, lead, tail, ...more }, at) =>
      there
        ? [
            wired(`p${at}`, output, {
              ...more,
              ...(lead === undefined ? {} : { lead }),
              ...(tail === undefined ? {} : { tail }),
            }),
          ]
        : [],
    ),
  );

const inLines = (feed: WiredFeed): string =>
  Object.entries(entryData(feed))
    .map(
      ([key, value], at) => `${at === 0 ? '  - ' : '    '}${key}: ${JSON.stringify(value)} # ${key} of ${feed.pedal}\n`,
    )
    .join('');
const onOneLine = (feed: WiredFeed): string => `  - ${JSON.stringify(entryData(feed))} # all of ${feed.pedal}\n`;

describe('whatever is plugged before and after', () => {
  it.each([
    ['entries of lines', (feeds: readonly WiredFeed[]) => `wiring:\n${feeds.map(inLines).join('')}`],
    ['entries on one line', (feeds: readonly WiredFeed[]) => `wiring:\n${feeds.map(onOneLine).join('')}`],
    ['a list in brackets', (feeds: readonly WiredFeed[]) => `wiring: ${JSON.stringify(feeds.map(entryData))}\n`],
    ['JSON', (feeds: readonly WiredFeed[]) => JSON.stringify({ a: 1, wiring: feeds.map(entryData), z: 2 }, null, 1)],
  ])('%s: the file says just what is plugged after', (form, textOf) => {
    fc.assert(
      fc.property(wirings, wirings, (before, after) => {
        const text = form === 'JSON' ? textOf(before) : `a: 1 # first\n${textOf(before)}# between\nz: 2 # last\n`;
        const written = recorded(text, before, after);
        const expected =
          after.length + before.length === 0
            ? (parse(text) as object)
            : { a: 1, wiring: inOrder(before, after).map(entryData), z: 2 };
        const found = parse(written) as { readonly wiring?: unknown };
        expect({ ...found, wiring: found.wiring ?? [] }).toEqual({
          wiring: [],
          ...expected,
          ...(after.length === 0 ? { wiring: [] } : {}),
        });
        if (form === 'JSON') expect(JSON.parse(written)).toEqual(found);
        else for (const comment of ['# first', '# between', '# last']) expect(written).toContain(comment);
      }),
      trying(300),
    );
  });
});
