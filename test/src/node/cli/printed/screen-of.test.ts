import { describe, expect, test } from 'vitest';

import { columnsOf, screenOf } from '../../../../../src/node/cli/printed/screen-of.js';
import { runHere } from '../../../../support/run-here.js';
import { spawned, tideway } from '../command.js';

const terminal = { isTTY: true, columns: 100 };

describe('the width', () => {
  test.each([
    ['that of a terminal', terminal, 100],
    ['80 when a terminal says 0', { isTTY: true, columns: 0 }, 80],
    ['80 when a terminal says nothing', { isTTY: true }, 80],
    ['80 when it is no terminal', {}, 80],
    ['80 when it is no terminal, whatever is said', { isTTY: false, columns: 100 }, 80],
  ])('is %s', (_, stream, width) => {
    expect(screenOf(stream, {}).width).toBe(width);
  });

  test('of a terminal that does not know it is 80', () => {
    expect([columnsOf({}), columnsOf({ columns: 0 }), columnsOf({ columns: 1 })]).toEqual([80, 80, 1]);
  });
});

describe('colour', () => {
  test.each([
    ['is for terminals', terminal, {}, true],
    ['is not for files and pipes', {}, {}, false],
    ['is not for those who set NO_COLOR', terminal, { NO_COLOR: '1' }, false],
    ['is not switched off by an empty NO_COLOR', terminal, { NO_COLOR: '' }, true],
    ['is not for a dumb terminal', terminal, { TERM: 'dumb' }, false],
    ['is for any other terminal', terminal, { TERM: 'xterm-256color' }, true],
  ])('%s', (_, stream, environment, colour) => {
    expect(screenOf(stream, environment).colour).toBe(colour);
  });
});

describe('signs beyond ASCII', () => {
  test.each([
    [{}, true],
    [{ LANG: '' }, true],
    [{ LANG: 'en_GB.UTF-8' }, true],
    [{ LANG: 'de_AT.utf8' }, true],
    [{ LANG: 'C.UTF-8' }, true],
    [{ LANG: 'C' }, false],
    [{ LANG: 'POSIX' }, false],
    [{ LANG: 'de_DE' }, false],
    [{ LANG: 'de_DE.ISO-8859-1' }, false],
    [{ LANG: 'en_GB.UTF-8', LC_CTYPE: 'C' }, false],
    [{ LANG: 'C', LC_CTYPE: 'en_GB.UTF-8' }, true],
    [{ LANG: 'en_GB.UTF-8', LC_CTYPE: 'en_GB.UTF-8', LC_ALL: 'C' }, false],
    [{ LANG: 'C', LC_CTYPE: 'C', LC_ALL: 'C.UTF-8' }, true],
    [{ LANG: 'C', LC_ALL: '' }, false],
  ])('%j: %s', (environment, unicode) => {
    expect(screenOf(terminal, environment).unicode).toBe(unicode);
  });
});

describe('the command', () => {
  const escapes = /\u001b\[/;
  const onTerminal = 'process.stdout.isTTY = true; process.stdout.columns = 80;';
  const parameters = ['choose', ...tideway, '--time', '0.001'];
  const longestLine = (text: string): number => Math.max(...text.split('\n').map((line) => line.length));

  test('colours for a terminal only, and fills it', async () => {
    const plain = await runHere(parameters);
    expect(plain.output).not.toMatch(escapes);
    const coloured = await spawned(parameters, { before: onTerminal });
    expect(coloured.output).toMatch(escapes);
    expect(coloured.output.replace(/\u001b\[\d+m/g, '')).toBe(plain.output);
  });

  test.each([{ NO_COLOR: '1' }, { TERM: 'dumb' }])(
    'writes no escapes where they are not welcome: %j',
    async (environment) => {
      const { output } = await runHere(parameters, { columns: 100, environment });
      expect(output).not.toMatch(escapes);
      expect(longestLine(output)).toBeGreaterThan(80);
    },
  );

  test('lays out for 60 columns on a narrower terminal', async () => {
    const { output } = await runHere(parameters, { columns: 12, environment: { NO_COLOR: '1' } });
    expect(longestLine(output)).toBeLessThanOrEqual(60);
  });

  test('writes ASCII alone in a locale that knows no more', async () => {
    const { output } = await runHere(parameters, { environment: { LC_ALL: 'C' } });
    expect(output).toMatch(/^[\n -~]+$/);
    expect((await runHere(parameters)).output).toMatch(/[^\n -~]/);
  });
});
