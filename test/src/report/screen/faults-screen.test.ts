import { stripVTControlCharacters } from 'node:util';

import { describe, expect, it } from 'vitest';

import type { InputFault } from '../../../../src/reading/faults/input-fault.js';
import { faultsText } from '../../../../src/report/screen/faults-screen.js';

const fault: InputFault = {
  file: 'board.yaml',
  line: 12,
  column: 31,
  key: 'pedals[2].volts',
  message: 'found "9V", which is text.',
  remedy: 'Write 9.',
  excerpt: { before: '  - {name: Echo, volts: ', marked: '9V', after: ', milliamps: 100}' },
};
const plain = { width: Infinity, colour: false };
const faulty = (faults: readonly InputFault[], more = 0) => [{ kind: 'faulty', faults, more } as const];

describe('faults on a screen', () => {
  it('have the line itself with signs under the place, the remedy below, and a count at the end', () => {
    expect(faultsText(faulty([fault]), plain)).toBe(
      [
        'board.yaml:12:31 pedals[2].volts: found "9V", which is text.',
        '    12 |   - {name: Echo, volts: 9V, milliamps: 100}',
        '       |                         ^^',
        '  Write 9.',
        '1 fault in board.yaml.',
        '',
      ].join('\n'),
    );
  });

  it('say where else the same is wrong, and count it', () => {
    const alike = [13, 15].map((line) => ({ line, key: `pedals[${line - 10}].volts`, name: null }));
    const text = faultsText(faulty([{ ...fault, alike }], 4), plain);
    expect(text).toContain('  Write 9.\n  The same on 2 more lines: 13, 15.\n');
    expect(text).toMatch(/\n7 faults in board\.yaml; 4 of them not shown\.\n$/);
    const named = [{ line: 13, key: 'Fuzz, Voltage', name: 'Fuzz' }];
    expect(faultsText(faulty([{ ...fault, alike: named }]), plain)).toContain(
      'The same in 1 more row: Fuzz (line 13).',
    );
    const beside = [{ line: 12, key: 'pedals[3].volts', name: null }];
    expect(faultsText(faulty([{ ...fault, alike: beside }]), plain)).toContain(
      'The same in 1 more place: pedals[3].volts.',
    );
  });

  it('are counted for each file', () => {
    const other = { ...fault, file: 'shop.yaml' };
    expect(faultsText(faulty([fault, fault, other]), plain)).toMatch(
      /\n2 faults in board\.yaml, 1 fault in shop\.yaml\.\n$/,
    );
  });

  it('offer to leave out rows where a table would be of use without them', () => {
    const files = [{ kind: 'faulty', faults: [fault], more: 0, canSkipRows: true } as const];
    expect(faultsText(files, plain)).toContain('--skip-bad-rows');
    expect(faultsText(faulty([fault]), plain)).not.toContain('--skip-bad-rows');
  });

  it.each([60, 80, 120])('are no wider than a screen of %d columns, and the place is still marked', (width) => {
    const long = { before: `${'a'.repeat(150)} `, marked: '9V', after: ` ${'b'.repeat(150)}` };
    const lines = faultsText(faulty([{ ...fault, excerpt: long, message: 'found it. '.repeat(30) }]), {
      ...plain,
      width,
    }).split('\n');
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
    const at = lines.findIndex((line) => line.startsWith('    12 | '));
    const marks = lines[at + 1] ?? '';
    expect(lines[at]?.slice(marks.indexOf('^'), marks.indexOf('^') + 2)).toBe('9V');
  });

  it('mark wide characters and tabs where they stand', () => {
    const wide = { before: '音\t', marked: '9V', after: '' };
    const [, line = '', marks = ''] = faultsText(faulty([{ ...fault, excerpt: wide }]), plain).split('\n');
    // The wide character takes two columns, the tab one.
    expect(line).toBe('    12 | 音 9V');
    expect(marks).toBe(`       | ${' '.repeat(3)}^^`);
  });

  it('have colour where there is any, which changes no letter', () => {
    const text = faultsText(faulty([fault]), { ...plain, colour: true });
    expect(text).toContain('\u001b[31m^^');
    expect(stripVTControlCharacters(text)).toBe(faultsText(faulty([fault]), plain));
  });

  it('show nothing that a terminal could act on', () => {
    const bad = { ...fault, excerpt: { before: '\u001b[2J', marked: 'x\u0007', after: '\u202e' } };
    expect(faultsText(faulty([bad]), plain)).not.toMatch(/[\u001b\u0007\u202e]/);
  });
});
