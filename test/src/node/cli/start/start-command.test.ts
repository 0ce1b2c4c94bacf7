import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import { describe, expect, it } from 'vitest';

import { boardTemplate, catalogueTemplate } from '../../../../../src/reading/drafts/templates.js';
import { fileFor } from '../../../../../src/node/cli/start/start-command.js';
import { spawned } from '../command.js';
import { scratchFolder } from './starting.js';

describe('boardfeed start without a terminal', () => {
  const folder = scratchFolder();
  const at = (name: string): string => join(folder(), name);

  it('prints a board to fill in', async () => {
    expect(await spawned(['start'])).toMatchObject({ code: 0, errors: '', output: boardTemplate });
  });

  it('prints a catalogue to fill in', async () => {
    expect(await spawned(['start', '--catalogue'])).toMatchObject({ code: 0, errors: '', output: catalogueTemplate });
  });

  it('writes it to the file that is named', async () => {
    const path = at('tour.yaml');
    const ended = await spawned(['start', path]);
    expect(ended).toMatchObject({ code: 0, output: '' });
    expect(ended.errors).toContain('written to be filled in');
    expect(await readFile(path, 'utf8')).toBe(boardTemplate);
  });

  it('says why it is not written, and leaves a file that is there alone', async () => {
    const path = at('tour.yaml');
    await writeFile(path, 'mine');
    const ended = await spawned(['start', path]);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toContain('Without a terminal nothing can be asked');
    expect(await readFile(path, 'utf8')).toBe('mine');
    expect(await spawned(['start', at('no/such.yaml')])).toMatchObject({ code: 3, output: '' });
    expect(await spawned(['start', at('tour.csv')])).toMatchObject({ code: 3, output: '' });
  });
});

describe('the file of boardfeed start', () => {
  it.each([
    [undefined, false, 'board.yaml'],
    [undefined, true, 'shop.yaml'],
    ['tour.yaml', false, 'tour.yaml'],
  ])('%s, of a catalogue: %s, on a terminal is %s', (path, catalogue, file) => {
    expect(fileFor(path, { catalogue }, true)).toBe(file);
  });

  it('is none where what is printed goes somewhere', () => {
    expect(fileFor(undefined, { catalogue: false }, false)).toBeUndefined();
  });
});
