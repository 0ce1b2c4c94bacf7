import { describe, expect, it } from 'vitest';

import { boardTemplate, catalogueTemplate } from '../../../../../src/reading/drafts/templates.js';
import { spawned } from '../command.js';

describe('boardfeed start without a terminal', () => {
  it('prints a board to fill in', async () => {
    expect(await spawned(['start'])).toMatchObject({ code: 0, errors: '', output: boardTemplate });
  });

  it('prints a catalogue to fill in', async () => {
    expect(await spawned(['start', '--catalogue'])).toMatchObject({ code: 0, errors: '', output: catalogueTemplate });
  });
});
