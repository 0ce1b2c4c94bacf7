import { describe, expect, it } from 'vitest';

import { withKeys } from '../../../../src/reading/drafts/set-keys.js';

const block = `# mine
pedals:
  - name: Echo    # the old one
    volts: unknown              # look for it beside the inlet
    milliamps: unknown
  # between
  - {name: Fuzz, volts: unknown, milliamps: 4} # worn
owned: {supplies: []}
`;
const first = { list: 'pedals', index: 0 };
const second = { list: 'pedals', index: 1 };

describe('values are written into an entry', () => {
  it('in the place of what is there, without the remark that told where to look', () => {
    expect(withKeys(block, first, { volts: 9, milliamps: 30 })).toBe(
      block
        .replace('volts: unknown              # look for it beside the inlet', 'volts: 9')
        .replace('milliamps: unknown', 'milliamps: 30'),
    );
  });

  it('after the others where they are new, each on a line of its own', () => {
    expect(withKeys(block, first, { milliamps: 30, figure: 'measured' })).toContain(
      '    milliamps: 30\n    figure: measured\n  # between\n',
    );
  });

  it('behind a text of several lines', () => {
    const text = 'pedals:\n  - name: >-\n      Estuary\n      echo\n  - {name: Fuzz}\n';
    expect(withKeys(text, first, { volts: 9 })).toBe(text.replace('echo\n', 'echo\n    volts: 9\n'));
  });

  it('and go from it where there is no value', () => {
    expect(withKeys(block, first, { volts: undefined })).toBe(
      block.replace('    volts: unknown              # look for it beside the inlet\n', ''),
    );
    expect(withKeys(block, second, { milliamps: undefined })).toBe(block.replace(', milliamps: 4', ''));
    expect(withKeys(block, second, { digital: undefined })).toBe(block);
    // What names the entry stays.
    expect(withKeys(block, second, { name: undefined })).toBeNull();
  });

  it('in brackets', () => {
    expect(withKeys(block, second, { volts: [9, 12], digital: true })).toContain(
      '  - {name: Fuzz, volts: [9, 12], milliamps: 4, digital: true} # worn\n',
    );
  });

  it('in JSON', () => {
    const json = '{"pedals": [{"name": "Echo", "volts": "unknown"}]}';
    expect(withKeys(json, first, { volts: { from: 9, to: 18 }, figure: 'manual' })).toBe(
      '{"pedals": [{"name": "Echo", "volts": {"from":9,"to":18}, "figure": "manual"}]}',
    );
  });

  it('with the line ends that the file has, up to its very end', () => {
    const text = 'pedals:\r\n  - name: Echo\r\n    volts: unknown';
    expect(withKeys(text, first, { volts: 9 })).toBe('pedals:\r\n  - name: Echo\r\n    volts: 9');
    expect(withKeys('pedals:\n- name: Echo', first, { volts: 9 })).toBe('pedals:\n- name: Echo\n  volts: 9');
  });
});

it.each([
  ['not there', 'pedals: []\n'],
  ['an alias', 'x: &x {name: Echo, volts: unknown}\npedals: [*x]\n'],
  ['no YAML', 'pedals: ['],
])('nothing is written into an entry that is %s', (_name, text) => {
  expect(withKeys(text, first, { volts: 9 })).toBeNull();
});
