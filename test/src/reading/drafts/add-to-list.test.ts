import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { withEntries } from '../../../../src/reading/drafts/add-to-list.js';
import type { DraftEntry } from '../../../../src/reading/drafts/entry.js';
import { trying } from '../../../support/runs.js';

const whole: DraftEntry = {
  name: 'Echo',
  fields: [
    { key: 'name', value: 'Echo' },
    { key: 'milliamps', value: 300, remark: 'a guess' },
  ],
  missing: [],
};
const partly: DraftEntry = {
  name: 'Fuzz',
  fields: [
    { key: 'name', value: 'Fuzz' },
    { key: 'volts', value: null },
  ],
  missing: [{ key: 'volts', lookFor: 'the volts' }],
};

const extended = (text: string, ...entries: readonly DraftEntry[]): string => {
  const result = withEntries(text, 'pedals', entries);
  if (result.kind === 'closed') throw new Error('it is closed');
  return result.text;
};

const echo = '- name: Echo\n  milliamps: 300              # a guess\n';
const fuzz =
  '#\n# Left out of every plan until this is known: Fuzz\n#   volts: look for the volts.\n' +
  '# Then write it for each …, and take the signs # off these lines:\n# - name: Fuzz\n#   volts: …\n';
const indented = (text: string, columns: number): string => text.replace(/^(?=.)/gm, ' '.repeat(columns));

describe('entries are put at the end of the list, all else stays', () => {
  it.each([
    [
      'an indented list',
      'a: 1   # one\npedals:\n  - {name: A}   # first\nz: 2 # two\n',
      'a: 1   # one\npedals:\n  - {name: A}   # first\n@z: 2 # two\n',
      2,
    ],
    ['a list at the margin', 'pedals:\n- name: A\n# next\nz: 2\n', 'pedals:\n- name: A\n@# next\nz: 2\n', 0],
    [
      'a deep list',
      'pedals:\n      - name: A\n        volts: 9\n\nz: 2',
      'pedals:\n      - name: A\n        volts: 9\n@\nz: 2',
      6,
    ],
    ['the end of the file', 'pedals:\n  - name: A', 'pedals:\n  - name: A\n@', 2],
    [
      'remarks below the last',
      'pedals:\n  - name: A\n    # of A\n\n  # of all\n\n# next\nz: 2\n',
      'pedals:\n  - name: A\n    # of A\n\n  # of all\n@\n# next\nz: 2\n',
      2,
    ],
    [
      'a block of text',
      'pedals:\n  - name: |\n      A\n      B\nz: 2\n',
      'pedals:\n  - name: |\n      A\n      B\n@z: 2\n',
      2,
    ],
    ['nothing under the key', '# top\npedals:   # none yet\nz: 2\n', '# top\npedals:   # none yet\n@z: 2\n', 2],
    ['an empty list', 'pedals: []   # none\nz: 2\n', 'pedals:   # none\n@z: 2\n', 2],
    ['no key', 'z: 2\n', 'z: 2\npedals:\n@', 2],
  ])('%s', (name, before, after, columns) => {
    expect(extended(before, whole)).toBe(after.replace('@', indented(echo, columns)));
    expect(extended(before, whole, partly)).toBe(after.replace('@', indented(`${echo}${fuzz}`, columns)));
    const kept = name === 'an empty list' ? before.replace('none\n', 'none\n@') : after;
    expect(extended(before, partly)).toBe(kept.replace('@', indented(fuzz, columns)));
  });

  it('with the line ends of the file', () => {
    const before = 'pedals:\r\n  - name: A\r\nz: 2\r\n';
    expect(extended(before, whole)).toBe(
      `pedals:\r\n  - name: A\r\n${indented(echo, 2).replaceAll('\n', '\r\n')}z: 2\r\n`,
    );
  });

  it('in brackets when the list is written so', () => {
    expect(extended('pedals: [{name: A}, {name: B} ] # all\n', whole)).toBe(
      'pedals: [{name: A}, {name: B}, {name: Echo, milliamps: 300} ] # all\n',
    );
  });

  it.each([
    ['{"pedals": [{"name": "A"}], "z": 2}\n', '{"pedals": [{"name": "A"}, {"name":"Echo","milliamps":300}], "z": 2}\n'],
    ['{"pedals": []}', '{"pedals": [{"name":"Echo","milliamps":300}]}'],
  ])('in JSON: %s', (before, after) => {
    expect(withEntries(before, 'pedals', [whole, partly])).toEqual({ kind: 'extended', text: after, untold: [partly] });
  });

  it.each([
    ['an alias', 'a: &a [{name: A}]\npedals: *a\n'],
    ['no list', 'pedals: many\n'],
    ['no map', '- 1\n'],
    ['no YAML', 'pedals: [\n'],
    ['JSON without the key', '{"z": 2}'],
  ])('%s is left alone', (_name, text) => {
    expect(withEntries(text, 'pedals', [whole])).toEqual({ kind: 'closed' });
  });
});

describe('the fixtures', () => {
  it.each([
    ['boards/first-board.yaml', 'pedals'],
    ['boards/gig-board.yaml', 'pedals'],
    ['boards/studio-wall.yaml', 'pedals'],
    ['shops/marram-street.yaml', 'supplies'],
    ['shops/marram-street.yaml', 'parts'],
  ])('%s: %s grow, and lose no line', async (path, key) => {
    const text = await readFile(join(import.meta.dirname, '../../../../fixtures', path), 'utf8');
    const result = withEntries(text, key, [whole, partly]);
    const lines = result.kind === 'extended' ? result.text.split('\n') : [];
    const old = text.split('\n');
    const added = lines.length - old.length;
    expect(added).toBe(8);
    const at = lines.findIndex((line, index) => line !== old[index]);
    expect([...lines.slice(0, at), ...lines.slice(at + added)]).toEqual(old);
  });
});

it('whatever a name holds, the file stays a file', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (name) => {
      const fields = [{ key: 'name', value: name, remark: name }];
      const text = extended('pedals:\n  - name: A\n', { name, fields, missing: [] }, { ...partly, name });
      expect(parse(text)).toEqual({ pedals: [{ name: 'A' }, { name }] });
    }),
    trying(500),
  );
});
