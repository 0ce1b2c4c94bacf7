import { describe, expect, test } from 'vitest';

import { boardfeed, complaints, fixture, printedObject, tideway } from '../command.js';

const asking = (...parameters: readonly string[]) => boardfeed(['ask', ...parameters]);

describe('which labels decide', () => {
  test('is told with what to look for, and what decides nothing in one sentence', async () => {
    const ended = await asking(...tideway);
    expect(ended.code).toBe(0);
    expect(complaints(ended)).toBe('');
    expect(ended.output).toContain('These decide what to buy');
    expect(ended.output).toMatch(/3\.5 mm jack on one of them: something else to buy, for 5\.00 EUR/);
    expect(ended.output).toMatch(/check them before plugging in all the\s+same: Estuary echo \(the ground\)/);
  });

  test('is one JSON object with --json, and needs no catalogue where the gear is described', async () => {
    const ended = await asking(...tideway, '--json');
    expect(printedObject(ended)).toMatchObject({
      format: 'boardfeed/ask/1',
      status: 'labels',
      basis: 'plan',
      complete: true,
    });
    expect((await asking(fixture('boards/new-pedal.yaml'))).code).toBe(0);
  });

  test('is not told where there is no plan', async () => {
    const ended = await asking(fixture('boards/impossible.yaml'), fixture('shops/marram-street.yaml'));
    expect(ended.code).toBe(4);
    expect(ended.output).not.toContain('decide what to buy');
  });
});
